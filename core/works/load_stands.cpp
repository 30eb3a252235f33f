#include "core/works/load_stands.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kTouch_mm = 1e-9;

Stand stand_of(const MouldBox& box, Upward upward) {
  const auto stand = [upward](double high, double one, double other) {
    return Stand{upward, high, std::max(one, other), std::min(one, other)};
  };
  switch (upward) {
    case Upward::height:
      return stand(box.height_mm, box.length_mm, box.depth_mm);
    case Upward::depth:
      return stand(box.depth_mm, box.length_mm, box.height_mm);
    case Upward::length:
      return stand(box.length_mm, box.depth_mm, box.height_mm);
  }
  return {};
}

std::vector<Stand> all_stands(const LoadPiece& piece) {
  std::vector<Stand> stands = {stand_of(piece.mould, Upward::height)};
  if (!piece.any_side_up) return stands;
  stands.push_back(stand_of(piece.mould, Upward::depth));
  stands.push_back(stand_of(piece.mould, Upward::length));
  return stands;
}

double needed_diameter(const Stand& stand, const WorksSettings& works) {
  return std::hypot(stand.long_mm, stand.short_mm) + 2 * works.load_spacing_mm;
}

std::string lying_words(const LoadPiece& piece, const Stand& best, const UnfitPiece& unfit,
                        const WorksSettings& works) {
  return fmt::format(
      "{}: its mould of {:.0f} x {:.0f} x {:.0f} mm fits in no way into the vessel of {:g} mm inside and {:g} "
      "mm "
      "height. {}, it needs {:.0f} mm inside and {:.0f} mm height; thinner mould walls or a piece cast in "
      "parts "
      "may do.",
      piece.name, piece.mould.length_mm, piece.mould.depth_mm, piece.mould.height_mm, works.vessel_diameter_mm,
      works.vessel_height_mm,
      best.upward == Upward::height  ? "Standing"
      : best.upward == Upward::depth ? "On its back"
                                     : "On end",
      std::ceil(unfit.needs_diameter_mm), std::ceil(unfit.needs_height_mm));
}

std::string gate_up_words(const LoadPiece& piece, const UnfitPiece& unfit, const WorksSettings& works) {
  return fmt::format(
      "{}: with its gate up its mould stands {:.0f} mm high on {:.0f} x {:.0f} mm, and so it does not fit into "
      "the vessel of {:g} mm inside and {:g} mm height. It is not laid on its side, where the resin would run "
      "out of the gate. It needs {:.0f} mm inside and {:.0f} mm height; thinner mould walls or a piece cast in "
      "parts may do.",
      piece.name, piece.mould.height_mm, piece.mould.length_mm, piece.mould.depth_mm, works.vessel_diameter_mm,
      works.vessel_height_mm, std::ceil(unfit.needs_diameter_mm), std::ceil(unfit.needs_height_mm));
}

}  // namespace

std::vector<Stand> stands_of(const LoadPiece& piece, const WorksSettings& works) {
  std::vector<Stand> stands = all_stands(piece);
  std::erase_if(stands, [&](const Stand& stand) {
    return stand.high_mm > works.vessel_height_mm || needed_diameter(stand, works) > works.vessel_diameter_mm;
  });
  return stands;
}

std::optional<Stand> least_ground(const std::vector<Stand>& stands, double high_mm) {
  std::optional<Stand> best;
  for (const Stand& stand : stands) {
    if (stand.high_mm > high_mm + kTouch_mm) continue;
    if (!best || stand.long_mm * stand.short_mm < best->long_mm * best->short_mm) best = stand;
  }
  return best;
}

UnfitPiece unfit_piece(const LoadPiece& piece, std::size_t index, const WorksSettings& works) {
  const auto excess = [&](const Stand& stand) {
    return std::max(needed_diameter(stand, works) / works.vessel_diameter_mm,
                    stand.high_mm / works.vessel_height_mm);
  };
  const std::vector<Stand> stands = all_stands(piece);
  const Stand best = *std::ranges::min_element(stands, {}, excess);
  UnfitPiece unfit;
  unfit.piece = index;
  unfit.needs_diameter_mm = needed_diameter(best, works);
  unfit.needs_height_mm = best.high_mm;
  unfit.words = piece.any_side_up ? lying_words(piece, best, unfit, works) : gate_up_words(piece, unfit, works);
  return unfit;
}

}  // namespace prismwright
