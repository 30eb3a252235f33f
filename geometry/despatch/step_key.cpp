#include "geometry/despatch/step_key.h"

#include <Standard_Version.hxx>

namespace prismwright {

PieceKey step_key(std::string_view what) {
  PieceKey key("step", kStepFormat);
  key << OCC_VERSION_COMPLETE << what;
  return key;
}

}  // namespace prismwright
