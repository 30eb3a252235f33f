#include <fmt/format.h>

#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"

namespace prismwright {

namespace {

/// Raised when pictures come to look otherwise.
constexpr int kPictureFormat = 1;

ReadyPiece picture_piece(LensShop& shop, const LensPicture& picture) {
  const auto& [name, eye, words] = picture;
  PieceKey key("picture", kPictureFormat);
  key << eye.azimuth_deg << eye.elevation_deg << kPictureWide << kPictureHigh;
  key << shop.glass_sum();
  key << shop.metal_sum();
  DespatchPiece piece{DespatchGroup::pictures, name, words, key.text(), false, {}};
  return {std::move(piece),
          [&shop, eye, path = "pictures/" + name + ".png"](
              const std::string& folder, const Progress& progress) -> Outcome<std::vector<std::string>> {
            const auto image = shop.picture(eye, progress);
            if (!image) return image.problem();
            return one_file(folder, path, png_bytes(**image));
          }};
}

}  // namespace

const std::vector<LensPicture>& lens_pictures() {
  static const std::vector<LensPicture> pictures = {
      {"three-quarter", kThreeQuarters, "From the side and above"},
      {"from-sea", {0, 0}, "From the sea"},
      {"plan", {0, 90}, "From above"}};
  return pictures;
}

ReadyPieces picture_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  for (const LensPicture& picture : lens_pictures()) pieces.push_back(picture_piece(shop, picture));
  return pieces;
}

}  // namespace prismwright
