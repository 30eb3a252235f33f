#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "ui/models/colouring.h"

namespace prismwright {

/// How prisms look by the master that they are cast from: its name is their sign. The fill tells which master
/// of its piece it is, so that panels that share all of theirs look alike; mirror images are hatched.
class MasterLooks {
 public:
  MasterLooks() = default;
  explicit MasterLooks(const LensPlan& plan);

  [[nodiscard]] PrismLook look_of(const std::string& mark) const;
  [[nodiscard]] std::vector<LegendRow> legend() const;

 private:
  std::map<std::string, PrismLook> looks_;  ///< by mark
  std::vector<LegendRow> legend_;
};

/// Those of this plan, worked out when first asked for and kept until another plan is asked for. Null: of no
/// prism. In the window's thread.
const MasterLooks& master_looks(const std::shared_ptr<const LensPlan>& plan);

}  // namespace prismwright
