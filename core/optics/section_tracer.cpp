#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/ray_meetings.h"

namespace prismwright {

namespace {

constexpr double kElevationSlack = 1e-10;  ///< radians, at corners shared by two prisms
constexpr std::size_t kMostMeetings = 10;

/// Follows one ray from face to face.
class Walk {
 public:
  Walk(const SectionPieces& section, TracedRay& ray, RayPath* record)
      : section_(section),
        input_(section.held.input),
        critical_(section.critical),
        traced_(ray),
        record_(record) {}

  void run(FoundFace entry, SectionDirection ray) {
    const FaceRole role = role_at(entry);
    way_ok_ = role == FaceRole::inner || role == FaceRole::entry;
    reach(entry.hit.place);
    if (role == FaceRole::land) return end(Fate::lost_land, LossCause::land);
    if (role == FaceRole::joint_lower || role == FaceRole::joint_upper)
      return end(Fate::stopped, LossCause::filled_gap);
    inside(entry, through(entry, ray, 1, input_.index).value_or(ray));
  }

  void stop(LossCause cause, SectionPoint place, const SectionRib* rib = nullptr) {
    reach(place);
    traced_.rib = rib;
    end(Fate::stopped, cause);
  }

 private:
  [[nodiscard]] FaceRole role_at(const FoundFace& at) const { return traced_.piece->faces[at.face].role(); }

  void end(Fate fate, LossCause cause) {
    traced_.fate = fate;
    traced_.cause = cause;
  }

  void reach(SectionPoint place) {
    if (record_) record_->points.push_back(place);
  }

  void note(const FoundFace& at, SectionDirection ray, std::optional<SectionDirection> refracted, double loss) {
    meetings_ += 1;
    if (!record_) return;
    RayMeeting meeting{traced_.piece->zone->mark,
                       role_at(at),
                       at.hit.place,
                       degrees(incidence(ray, at.hit.outward)),
                       {},
                       loss,
                       0};
    if (refracted) meeting.refraction_deg = degrees(incidence(*refracted, at.hit.outward));
    meeting.direction_deg = degrees((refracted ? *refracted : reflect(ray, at.hit.outward)).elevation());
    record_->meetings.push_back(meeting);
  }

  /// Passes the face, or answers nothing where the reflection is total.
  std::optional<SectionDirection> through(const FoundFace& at, SectionDirection ray, double n_from,
                                          double n_to) {
    const auto onward = refract(ray, at.hit.outward, n_from, n_to);
    const double loss =
        onward ? fresnel_at_cosine(std::abs(dot(ray, at.hit.outward)), n_from, n_to).unpolarised() : 0.0;
    traced_.through *= 1 - loss;
    note(at, ray, onward, loss);
    return onward;
  }

  /// Reflects at the reflecting face; what passes through it is lost there.
  SectionDirection mirror(const FoundFace& at, SectionDirection ray) {
    const double margin = incidence(ray, at.hit.outward) - critical_;
    traced_.least_margin = reflections_ > 0 ? std::min(traced_.least_margin, margin) : margin;
    reflections_ += 1;
    double loss = 0;
    if (margin < 0) {
      loss = 1 - fresnel_at_cosine(std::abs(dot(ray, at.hit.outward)), input_.index, 1).unpolarised();
      traced_.lost_at_reflection += (1 - traced_.lost_at_reflection) * loss;
    }
    note(at, ray, std::nullopt, loss);
    return reflect(ray, at.hit.outward);
  }

  void inside(FoundFace at, SectionDirection ray) {
    while (meetings_ < kMostMeetings) {
      const auto next = nearest_face(*traced_.piece, at.hit.place, ray, false, &at);
      if (!next) return end(Fate::stray, LossCause::off_aim);
      at = *next;
      reach(at.hit.place);
      switch (role_at(at)) {
        case FaceRole::land:
        case FaceRole::axis:
          return end(Fate::lost_land, LossCause::land);
        case FaceRole::joint_lower:
        case FaceRole::joint_upper:
          return end(Fate::lost_land, LossCause::joint);
        case FaceRole::reflecting:
          ray = mirror(at, ray);
          break;
        default:
          if (const auto onward = through(at, ray, input_.index, 1)) return leave(at, *onward);
          ray = reflect(ray, at.hit.outward);
          way_ok_ = false;
      }
    }
    end(Fate::stray, LossCause::off_aim);
  }

  void leave(const FoundFace& at, SectionDirection ray) {
    const PieceCurves& piece = *traced_.piece;
    const SectionPoint place = at.hit.place;
    const bool refracting = is_refracting(piece.zone->kind);
    traced_.regular = way_ok_ && (refracting ? role_at(at) == FaceRole::outer && reflections_ == 0
                                             : role_at(at) == FaceRole::exit && reflections_ == 1);
    traced_.departure_deg = degrees(ray.elevation() + piece.aim);
    traced_.beam_z_mm =
        piece.aim == 0 ? place.z : place.z - (section_.front_r_mm - place.r) * std::tan(piece.aim);
    if (traced_.lost_at_reflection > 0.5) return end(Fate::lost_reflecting, LossCause::reflection);
    end_outside(place, ray);
  }

  void end_outside(SectionPoint place, SectionDirection ray) {
    const bool level = traced_.regular && std::abs(traced_.departure_deg) <= input_.settings.level_within_deg;
    if (const RibHit metal = first_rib(section_.held.ribs, place, ray); metal.rib)
      return stop(LossCause::rib, place + metal.along_mm * ray, metal.rib);
    if (!level) {
      traced_.below_aim = traced_.regular && traced_.departure_deg < 0;
      return end(Fate::stray, LossCause::off_aim);
    }
    if (const auto glass = glass_before(*traced_.piece, place, ray)) {
      reach(glass->place);
      return end(Fate::stray, LossCause::other_glass);
    }
    end(Fate::level, LossCause::none);
  }

  const SectionPieces& section_;
  const SectionInput& input_;
  double critical_;
  TracedRay& traced_;
  RayPath* record_;
  bool way_ok_ = true;
  int reflections_ = 0;
  std::size_t meetings_ = 0;
};

}  // namespace

TracedRay SectionPieces::trace(const SectionView& view, double elevation, RayPath* record) const {
  TracedRay traced;
  const SectionPoint source{0, view.source_z_mm};
  const SectionDirection ray = SectionDirection::at(elevation);
  FoundFace entry;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const SeenSpan& span = view.pieces[i];
    if (elevation < span.low - kElevationSlack || elevation > span.high + kElevationSlack) continue;
    const auto found = nearest_face(pieces[i], source, ray, true);
    if (found && (!traced.piece || found->hit.along_mm < entry.hit.along_mm)) {
      traced.piece = &pieces[i];
      entry = *found;
    }
  }
  const RibHit metal = first_rib(held.ribs, source, ray);
  Walk walk(*this, traced, record);
  // Between refracting rings the setting gap is filled with glazing compound; nothing passes there.
  const bool refracted = traced.piece && is_refracting(traced.piece->zone->kind);
  if (!refracted && elevation > view.band.low && elevation < view.band.high) {
    const SectionOffset face = band_head - band_foot;
    const double along = cross(band_foot - source, face) / cross(ray, face);
    const bool gap_first = !(metal.rib && metal.along_mm < along);
    if (gap_first && !(traced.piece && entry.hit.along_mm < along)) {
      traced.piece = nullptr;
      walk.stop(LossCause::filled_gap, source + along * ray);
      return traced;
    }
  }
  if (metal.rib && !(traced.piece && entry.hit.along_mm < metal.along_mm)) {
    traced.piece = nullptr;
    walk.stop(LossCause::rib, source + metal.along_mm * ray, metal.rib);
  } else if (traced.piece) {
    walk.run(entry, ray);
  }
  return traced;
}

std::string_view name_of(Fate fate) {
  switch (fate) {
    case Fate::level:
      return "level";
    case Fate::stray:
      return "stray";
    case Fate::escaped:
      return "escaped between prisms";
    case Fate::stopped:
      return "stopped by metal";
    case Fate::lost_reflecting:
      return "lost at a reflecting face";
    case Fate::lost_land:
      return "lost in a land";
  }
  return "stray";
}

std::string_view words_of(LossCause cause) {
  switch (cause) {
    case LossCause::none:
      return "not lost";
    case LossCause::off_aim:
      return "leaves off its aim";
    case LossCause::other_glass:
      return "runs into another prism";
    case LossCause::between_prisms:
      return "passes between the prisms";
    case LossCause::filled_gap:
      return "in a filled setting gap";
    case LossCause::rib:
      return "on a horizontal rib";
    case LossCause::reflection:
      return "through a reflecting face";
    case LossCause::land:
      return "in a land";
    case LossCause::joint:
      return "in a joint";
  }
  return "not lost";
}

/// The pieces, and how they are seen from the focal point of each band.
struct SectionTracer::Inside {
  explicit Inside(const Section& section) : pieces(section) {
    for (int band = 0; band < kBands; ++band)
      views[band] = pieces.seen_from(band_aim(pieces.held.input, static_cast<Band>(band)).focus_z_mm);
  }
  SectionPieces pieces;
  SectionView views[kBands];
};

SectionTracer::SectionTracer(const Section& section) : inside_(new Inside(section)) {}
SectionTracer::~SectionTracer() = default;
SectionTracer::SectionTracer(SectionTracer&&) noexcept = default;
SectionTracer& SectionTracer::operator=(SectionTracer&&) noexcept = default;

std::vector<SweepRange> SectionTracer::sweeps() const {
  std::vector<SweepRange> ranges;
  for (const BandSweep& sweep : inside_->pieces.sweeps)
    ranges.push_back({sweep.band, degrees(sweep.span.low), degrees(sweep.span.high)});
  return ranges;
}

RayPath SectionTracer::trace(double elevation_deg) const {
  return trace(elevation_deg, inside_->pieces.band_at(radians(elevation_deg)));
}

RayPath SectionTracer::trace(double elevation_deg, Band band) const {
  const SectionView& view = inside_->views[static_cast<int>(band)];
  RayPath path;
  path.elevation_deg = elevation_deg;
  path.points.push_back({0, view.source_z_mm});
  const TracedRay traced = inside_->pieces.trace(view, radians(elevation_deg), &path);
  path.fate = traced.fate;
  path.cause = traced.cause;
  if (traced.piece) {
    path.zone = traced.piece->zone->mark;
    band = band_of(traced.piece->zone->kind);
  }
  if (traced.rib) path.rib = traced.rib->mark;
  path.aim_deg = band_aim(inside_->pieces.held.input, band).aim_deg;
  path.departure_deg = traced.departure_deg;
  path.least_margin_deg = degrees(traced.least_margin);
  path.through = traced.through;
  path.lost_at_reflection = traced.lost_at_reflection;
  path.regular = traced.regular;
  return path;
}

}  // namespace prismwright
