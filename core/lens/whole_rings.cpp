#include "core/lens/whole_rings.h"

namespace prismwright {

std::set<std::string> whole_rings(const LensPlan& plan) {
  std::set<std::string> whole;
  std::set<std::string> halved;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.kind != ZoneKind::ring) continue;
    (prism.mark.ends_with('-' + prism.zone) ? whole : halved).insert(prism.zone);
  }
  for (const std::string& zone : halved) whole.erase(zone);
  return whole;
}

}  // namespace prismwright
