#include "core/drawing/offset_table.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/inches.h"
#include "core/optics/face_curve.h"

namespace prismwright {

namespace {

constexpr double kLeastSteps = 20;
constexpr int kHalvings = 60;
constexpr int kSearched = 400;  ///< places among which the farthest is looked for before it is closed in on
/// The last step is left out where so small a share of a step would remain after it.
constexpr double kEndShare = 0.05;
constexpr std::size_t kGroups = 4;  ///< pairs of columns beside each other

/// A face over its chord, by one parameter from 0 to 1.
class FaceOverChord {
 public:
  explicit FaceOverChord(const Face& face)
      : face_(face), curve_(face), walk_(SectionDirection::along(face.end() - face.start())) {}

  [[nodiscard]] double chord() const { return distance(face_.start(), face_.end()); }

  [[nodiscard]] FaceOffset at_share(double share) const {
    const SectionOffset from_start = place(share) - face_.start();
    return {dot(from_start, walk_), cross(from_start, walk_)};
  }

  [[nodiscard]] FaceOffset at_along(double along) const {
    double low = 0, high = 1;
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = (low + high) / 2;
      (at_share(middle).along_mm < along ? low : high) = middle;
    }
    return {along, at_share((low + high) / 2).offset_mm};
  }

  /// The place farthest off the chord: the best of many, closed in on by thirds.
  [[nodiscard]] FaceOffset greatest() const {
    const auto off = [&](double share) { return std::abs(at_share(share).offset_mm); };
    int best = 0;
    for (int i = 1; i < kSearched; ++i) {
      if (off(static_cast<double>(i) / kSearched) > off(static_cast<double>(best) / kSearched)) best = i;
    }
    double low = std::max(0, best - 1) / static_cast<double>(kSearched);
    double high = (best + 1) / static_cast<double>(kSearched);
    for (int i = 0; i < kHalvings; ++i) {
      const double third = (high - low) / 3;
      (off(low + third) < off(high - third) ? low : high) =
          off(low + third) < off(high - third) ? low + third : high - third;
    }
    return at_share((low + high) / 2);
  }

 private:
  [[nodiscard]] SectionPoint place(double share) const {
    if (face_.kind == FaceKind::straight) return between(face_.start(), face_.end(), share);
    if (face_.kind == FaceKind::arc) return on_arc(share);
    const double at = share * static_cast<double>(curve_.pieces());
    const double piece = std::clamp(std::floor(at), 0.0, static_cast<double>(curve_.pieces()) - 1);
    return curve_.place(static_cast<std::size_t>(piece), at - piece);
  }

  [[nodiscard]] SectionPoint on_arc(double share) const {
    const SectionOffset first = face_.start() - face_.centre;
    const SectionOffset last = face_.end() - face_.centre;
    const double turn = share * std::atan2(cross(first, last), dot(first, last));
    const double c = std::cos(turn);
    const double s = std::sin(turn);
    return face_.centre + SectionOffset{c * first.r - s * first.z, s * first.r + c * first.z};
  }

  const Face& face_;
  FaceCurve curve_;
  SectionDirection walk_;
};

FaceOffsets offsets_between(const Face& face, double step_mm, bool from_middle) {
  const FaceOverChord over(face);
  FaceOffsets offsets;
  offsets.chord_mm = over.chord();
  offsets.step_mm = step_mm;
  offsets.from_middle = from_middle;
  const double start = from_middle ? offsets.chord_mm / 2 : 0;
  const double reach = offsets.chord_mm - start;
  const auto from_start = [&](FaceOffset place) { return FaceOffset{place.along_mm - start, place.offset_mm}; };
  for (int i = 0; i * step_mm < reach - kEndShare * step_mm; ++i)
    offsets.places.push_back(from_start(over.at_along(start + i * step_mm)));
  if (!from_middle) offsets.places.front() = {0, 0};
  offsets.places.push_back({reach, 0});
  offsets.greatest = from_start(over.greatest());
  return offsets;
}

}  // namespace

double round_step_mm(double chord_mm, bool inches) {
  const double unit = inches ? kInch_mm : 1;
  const double most = chord_mm / unit / kLeastSteps;
  const double power = std::pow(10, std::floor(std::log10(most)));
  const double lead = most / power;
  return unit * power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
}

FaceOffsets offsets_of(const Face& face, double step_mm) { return offsets_between(face, step_mm, false); }

FaceOffsets offsets_from_middle(const Face& face, double step_mm) {
  return offsets_between(face, step_mm, true);
}

TableBlock offset_block(const FaceOffsets& offsets, const std::string& heading, const std::string& from_words,
                        LengthWords lengths) {
  using Kind = TableLine::Kind;
  TableBlock block;
  TableLine head{Kind::head, {}};
  for (std::size_t i = 0; i < kGroups; ++i) {
    block.columns.push_back({23, true});
    block.columns.push_back({24, true});
    head.cells.insert(head.cells.end(), {"along chord", "offset"});
  }
  block.lines.push_back({Kind::heading, {heading}});
  block.lines.push_back(
      {Kind::words,
       {fmt::format(
           "Chord {} {}. Along it from {}; offsets square to it, + out of the glass. Farthest: {} at {}.",
           lengths.exact(offsets.chord_mm), lengths.unit(), from_words,
           lengths.exact(offsets.greatest.offset_mm), lengths.exact(offsets.greatest.along_mm))}});
  block.lines.push_back(std::move(head));
  // Read down the first pair of columns, then down the second.
  const std::size_t rows = (offsets.places.size() + kGroups - 1) / kGroups;
  for (std::size_t row = 0; row < rows; ++row) {
    TableLine line{Kind::row, {}};
    for (std::size_t i = row; i < offsets.places.size(); i += rows) {
      line.cells.push_back(lengths.exact(offsets.places[i].along_mm));
      line.cells.push_back(lengths.exact(offsets.places[i].offset_mm));
    }
    block.lines.push_back(std::move(line));
  }
  return block;
}

}  // namespace prismwright
