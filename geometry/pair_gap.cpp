#include "geometry/pair_gap.h"

#include <algorithm>

#include <BRepClass3d_SolidClassifier.hxx>
#include <TopLoc_Location.hxx>

#include "geometry/facing_flats.h"
#include "geometry/hole_fit.h"
#include "geometry/likeness.h"
#include "geometry/nearest_place.h"

namespace prismwright {
namespace {

constexpr double kNone_mm3 = 1e-6;
constexpr double kInside_mm = 1e-7;

SolidGap moved(SolidGap gap, const gp_Trsf& place) {
  gap.first_point.Transform(place);
  gap.second_point.Transform(place);
  return gap;
}

SolidGap swapped(SolidGap gap) {
  std::swap(gap.first_point, gap.second_point);
  return gap;
}

// Two parts, the second placed in the frame of the first.
class Pair {
 public:
  Pair(const MeasuredPart& first, const MeasuredPart& second, double no_farther_mm)
      : first_(first),
        second_(second),
        no_farther_mm_(no_farther_mm),
        place_(first.place.Inverted() * second.place) {}

  GapsFound measure() const {
    const bool own_rib = first_.prism && second_.plate && second_.panel == first_.panel;
    if (own_rib && second_.plate->has_floor()) {
      if (const auto found = at_pockets()) return *found;
    }
    const FacingFlats flats = facing_flats(*first_.form, *second_.form, place_);
    if (flats.gap) return {std::nullopt, flats.gap};
    if (flats.least_mm > no_farther_mm_) return {};
    if (const auto gap = coaxial()) return {std::nullopt, settled(*gap)};
    if (const auto gap = in_hole()) return {std::nullopt, gap};
    Told told = by_room();
    if (told.sure && !told.gap) return {};
    if (told.gap) return {std::nullopt, settled(*told.gap)};
    const SolidGap gap = of_kernel();
    return {std::nullopt, gap.gap_mm > 0 ? settled(gap) : gap};
  }

 private:
  [[nodiscard]] TopoDS_Shape second_shape() const {
    return second_.form->shape().Moved(TopLoc_Location(place_));
  }

  // The end and the sides of a prism in a rib's pockets.
  [[nodiscard]] std::optional<GapsFound> at_pockets() const {
    const gp_Trsf to_first = place_ * second_.plate->to_made();
    const gp_Trsf to_plate = to_first.Inverted();
    const PlateRoom::Found found = second_.plate->gaps_to(*first_.form, to_plate);
    if (!found.sure || !found.walls) return std::nullopt;
    const bool meets = (found.floor && found.floor->gap_mm < kMeets_mm) || found.walls->gap_mm < kMeets_mm;
    GapsFound gaps;
    if (found.floor) gaps.end = moved(*found.floor, to_first);
    gaps.side = moved(*found.walls, to_first);
    if (meets) {
      const bool at_end = gaps.end && gaps.end->gap_mm < gaps.side->gap_mm;
      SolidGap& worse = at_end ? *gaps.end : *gaps.side;
      const auto in_layers = second_.plate->overlap_mm3(*first_.form, to_plate, found.met);
      double overlap = in_layers.value_or(0);
      if (in_layers && overlap <= kNone_mm3)
        overlap = shallow_overlap_mm3(first_.form->shape(), second_shape());
      worse.gap_mm = overlap > kNone_mm3 || worse.gap_mm < kTouching_mm ? 0 : worse.gap_mm;
      worse.overlap_mm3 = overlap > kNone_mm3 ? overlap : 0;
    }
    return gaps;
  }

  [[nodiscard]] std::optional<SolidGap> coaxial() const {
    if (!first_.turned || !second_.turned) return std::nullopt;
    const gp_Trsf to_first = place_ * second_.turned->to_made();
    if (!is_at_rest(first_.turned->to_made().Inverted() * to_first)) return std::nullopt;
    const auto gap = second_.turned->gap_from_coaxial(*first_.turned);
    if (!gap) return std::nullopt;
    return moved(*gap, to_first);
  }

  // A screw, dowel or pin that fills a hole: the kernel's boolean of two like cylinders takes long.
  [[nodiscard]] std::optional<SolidGap> in_hole() const {
    const bool first_is_plate = first_.plate != nullptr;
    const MeasuredPart& plate = first_is_plate ? first_ : second_;
    const MeasuredPart& round = first_is_plate ? second_ : first_;
    if (!plate.plate || !round.turned || !round.turned->round()) return std::nullopt;
    const gp_Trsf plate_to_first = first_is_plate ? plate.plate->to_made() : place_ * plate.plate->to_made();
    const gp_Trsf round_to_first = first_is_plate ? place_ * round.turned->to_made() : round.turned->to_made();
    const auto touch =
        touch_in_hole(*round.turned->round(), plate.plate->part(), plate_to_first.Inverted() * round_to_first);
    if (!touch) return std::nullopt;
    return moved(first_is_plate ? swapped(*touch) : *touch, plate_to_first);
  }

  // What one look told: a gap, or that there is none within the reach; or nothing.
  struct Told {
    std::optional<SolidGap> gap;
    bool sure = false;
  };

  // The simpler solid is searched against the room round the other.
  [[nodiscard]] Told by_room() const {
    const bool first_is_simpler = first_.form->faces().size() <= second_.form->faces().size();
    for (const bool search_first : {first_is_simpler, !first_is_simpler}) {
      Told told =
          search_first ? searched(first_, second_, place_.Inverted()) : searched(second_, first_, place_);
      if (!told.sure) continue;
      if (told.gap) told.gap = search_first ? moved(*told.gap, place_) : swapped(*told.gap);
      return told;
    }
    return {};
  }

  // `place` takes the searched part to the frame in which the other was made; so are the points given.
  [[nodiscard]] Told searched(const MeasuredPart& part, const MeasuredPart& round, const gp_Trsf& place) const {
    std::optional<SolidGap> gap;
    if (round.plate) {
      const gp_Trsf to_plate = round.plate->to_made().Inverted() * place;
      if (!round.plate->gap_filled(*part.form, to_plate, no_farther_mm_)) return {std::nullopt, true};
      const PlateRoom::Found found = round.plate->gaps_to(*part.form, to_plate);
      if (!found.sure) return {};
      gap = !found.floor || (found.walls && found.walls->gap_mm < found.floor->gap_mm) ? found.walls
                                                                                       : found.floor;
      if (gap) gap = moved(*gap, round.plate->to_made());
    } else if (round.turned) {
      const gp_Trsf to_part = round.turned->to_made().Inverted() * place;
      gap = round.turned->gap_from(*part.form, to_part, no_farther_mm_);
      if (!gap) return {std::nullopt, !round.turned->has_bores()};
      gap = moved(*gap, round.turned->to_made());
    }
    if (!gap) return {};
    return {held(part, round, place, *gap), true};
  }

  // A part wholly within the searched one is met nowhere on its surface.
  static SolidGap held(const MeasuredPart& part, const MeasuredPart& round, const gp_Trsf& place,
                       SolidGap gap) {
    Bnd_Box outer = part.form->box();
    const Bnd_Box inner = round.form->box().Transformed(place.Inverted());
    if (outer.IsOut(inner.CornerMin()) || outer.IsOut(inner.CornerMax())) return gap;
    const gp_Pnt corner = round.form->corners().front().Transformed(place.Inverted());
    const BRepClass3d_SolidClassifier classifier(part.form->shape(), corner, kInside_mm);
    if (classifier.State() == TopAbs_IN) gap.gap_mm = 0;
    return gap;
  }

  [[nodiscard]] SolidGap of_kernel() const { return gap_between(first_.form->shape(), second_shape()); }

  // What is so near that it may overlap is settled by the common volume.
  [[nodiscard]] SolidGap settled(SolidGap gap) const {
    if (gap.gap_mm >= kMeets_mm) return gap;
    double overlap = common_volume_mm3(first_.form->shape(), second_shape());
    // Not of metal alone: very many such pairs rest on each other by design.
    if (overlap <= kNone_mm3 && (first_.prism || second_.prism))
      overlap = shallow_overlap_mm3(first_.form->shape(), second_shape());
    if (overlap > kNone_mm3) {
      gap.gap_mm = 0;
      gap.overlap_mm3 = overlap;
    } else if (gap.gap_mm < kTouching_mm) {
      gap.gap_mm = 0;
    }
    return gap;
  }

  const MeasuredPart& first_;
  const MeasuredPart& second_;
  double no_farther_mm_;
  gp_Trsf place_;
};

}  // namespace

std::string pair_word(const MeasuredPart& first, const MeasuredPart& second) {
  return first.form->word() + second.form->word() + place_word(first.place.Inverted() * second.place);
}

GapsFound pair_gap(const MeasuredPart& first, const MeasuredPart& second, double no_farther_mm) {
  return Pair(first, second, no_farther_mm).measure();
}

std::optional<SolidGap> gap_filled(const MeasuredPart& first, const MeasuredPart& second,
                                   double no_farther_mm) {
  const gp_Trsf place = first.place.Inverted() * second.place;
  if (parted_by_flats_mm(*first.form, *second.form, place) > no_farther_mm) return std::nullopt;
  const FacingFlats flats = facing_flats(*first.form, *second.form, place);
  if (flats.gap)
    return flats.gap->gap_mm < no_farther_mm ? std::optional(moved(*flats.gap, first.place)) : std::nullopt;
  const auto look = [&](const MeasuredPart& part, const MeasuredPart& round, const gp_Trsf& to_made) {
    const gp_Trsf to_round =
        (round.plate ? round.plate->to_made() : round.turned->to_made()).Inverted() * to_made;
    return round.plate ? round.plate->gap_filled(*part.form, to_round, no_farther_mm)
                       : round.turned->gap_from(*part.form, to_round, no_farther_mm);
  };
  const bool first_is_simpler = first.form->faces().size() <= second.form->faces().size();
  const bool room_of_first = first.plate || first.turned;
  const bool room_of_second = second.plate || second.turned;
  if (room_of_second && (first_is_simpler || !room_of_first)) {
    auto gap = look(first, second, place.Inverted());
    const gp_Trsf to_lens = second.place * (second.plate ? second.plate->to_made() : second.turned->to_made());
    return gap ? std::optional(moved(*gap, to_lens)) : gap;
  }
  if (room_of_first) {
    auto gap = look(second, first, place);
    const gp_Trsf to_lens = first.place * (first.plate ? first.plate->to_made() : first.turned->to_made());
    return gap ? std::optional(swapped(moved(*gap, to_lens))) : gap;
  }
  const SolidGap gap = gap_between(first.shape(), second.shape());
  return gap.gap_mm < no_farther_mm ? std::optional(gap) : std::nullopt;
}

GapsFound moved(GapsFound gaps, const gp_Trsf& place) {
  if (gaps.end) gaps.end = moved(*gaps.end, place);
  if (gaps.side) gaps.side = moved(*gaps.side, place);
  return gaps;
}

}  // namespace prismwright
