#include "geometry/despatch/light_key.h"

#include "geometry/despatch/despatch_keys.h"

namespace prismwright {

PieceKey light_key(LensShop& shop, std::string_view what) {
  PieceKey key("light", kLightFormat);
  key << what;
  add_glass(key, shop.plan());
  add_metal(key, shop.frame());
  add_values(key, shop.values(),
             {"brief.order", "brief.focal_mm", "brief.work", "brief.panels", "brief.character",
              "brief.height_m", "panels", "material", "section", "lamp", "light"});
  return key;
}

}  // namespace prismwright
