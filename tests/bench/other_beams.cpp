#include "tests/bench/other_beams.h"

namespace prismwright::bench {

const std::vector<OtherBeam>& other_beams() {
  static const std::vector<OtherBeam> all = {};
  return all;
}

}  // namespace prismwright::bench
