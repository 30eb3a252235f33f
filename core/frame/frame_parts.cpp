#include "core/frame/frame_parts.h"

namespace prismwright {

const char* name_of(PartKind kind) {
  switch (kind) {
    case PartKind::side_rib:
      return "side rib";
    case PartKind::cross_rib:
      return "cross rib";
    case PartKind::rail:
      return "rail";
    case PartKind::ring:
      return "ring";
    case PartKind::base_table:
      return "base table";
    case PartKind::finial_plate:
      return "finial plate";
    case PartKind::spacer:
      return "spacer";
    case PartKind::hinge_leaf:
      return "hinge leaf";
    case PartKind::hinge_pin:
      return "hinge pin";
    case PartKind::latch:
      return "latch";
    case PartKind::screw:
      return "screw";
    case PartKind::dowel:
      return "dowel";
  }
  return "";
}

const char* name_of(PartMaking making) {
  switch (making) {
    case PartMaking::cut_flat:
      return "cut flat";
    case PartMaking::machined:
      return "machined";
    case PartMaking::bought:
      return "bought";
  }
  return "";
}

const char* name_of(PartMetal metal) { return metal == PartMetal::brass ? "brass" : "stainless steel"; }

double density_g_cm3(PartMetal metal) { return metal == PartMetal::brass ? 8.49 : 7.9; }

}  // namespace prismwright
