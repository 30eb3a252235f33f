#include "geometry/despatch/light_key.h"

#include "geometry/despatch/despatch_keys.h"

namespace prismwright {

PieceKey light_key(LensShop& shop, std::string_view what) {
  PieceKey key("light", kLightFormat);
  key << what;
  key << shop.glass_sum();
  key << shop.metal_sum();
  add_values(key, shop.values(),
             {"brief.order", "brief.focal_mm", "brief.work", "brief.panels", "brief.character",
              "brief.height_m", "panels", "material", "section", "lamp", "light"});
  return key;
}

}  // namespace prismwright
