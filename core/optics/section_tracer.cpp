#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/section_pieces.h"

namespace prismwright {

namespace {

constexpr double kElevationSlack = 1e-10;  ///< radians, at corners shared by two prisms
constexpr double kGrazing = 1e-10;         ///< a ray along a face does not meet it
constexpr std::size_t kMostMeetings = 10;
constexpr double kTouching_mm = 1e-7;

PieceCurves make_piece(const Zone& zone, Profile profile, bool image) {
  PieceCurves piece;
  piece.zone = &zone;
  piece.image = image;
  piece.low = kPi;
  piece.high = -kPi;
  for (const Face& face : profile.faces) {
    piece.faces.emplace_back(face);
    piece.corners.push_back(std::atan2(face.start().z, face.start().r));
    for (const SectionPoint p : face.points) {
      const double elevation = std::atan2(p.z, p.r);
      piece.low = std::min(piece.low, elevation);
      piece.high = std::max(piece.high, elevation);
    }
  }
  return piece;
}

struct FoundFace {
  std::size_t face = 0;
  FaceHit hit;
};

/// The face through which a ray enters (from outside) or next meets (from inside) a piece.
std::optional<FoundFace> nearest(const PieceCurves& piece, SectionPoint from, SectionDirection ray,
                                 bool entering, std::optional<std::size_t> leaving) {
  static thread_local std::vector<FaceHit> hits;
  std::optional<FoundFace> best;
  for (std::size_t i = 0; i < piece.faces.size(); ++i) {
    if (leaving && i == *leaving) continue;
    hits.clear();
    piece.faces[i].meet(from, ray, hits);
    for (const FaceHit& hit : hits) {
      const double against = dot(ray, hit.outward);
      if (entering ? against > -kGrazing : against < kGrazing) continue;
      if (hit.along_mm < -kTouching_mm) continue;
      if (!best || hit.along_mm < best->hit.along_mm) best = FoundFace{i, hit};
    }
  }
  return best;
}

/// Follows one ray from face to face.
class Walk {
 public:
  Walk(const SectionInput& input, double critical, TracedRay& ray, RayPath* record)
      : input_(input), critical_(critical), traced_(ray), record_(record) {}

  void run(FoundFace entry, SectionDirection ray) {
    const FaceRole role = role_at(entry);
    way_ok_ = role == FaceRole::inner || role == FaceRole::entry;
    reach(entry);
    if (role == FaceRole::land) return end(Fate::lost_land);
    if (role == FaceRole::joint_lower || role == FaceRole::joint_upper) return end(Fate::stopped);
    inside(entry, through(entry, ray, 1, input_.index).value_or(ray));
  }

 private:
  [[nodiscard]] FaceRole role_at(const FoundFace& at) const { return traced_.piece->faces[at.face].role(); }

  void end(Fate fate) { traced_.fate = fate; }

  void reach(const FoundFace& at) {
    traced_.exit_z_mm = at.hit.place.z;
    if (record_) record_->points.push_back(at.hit.place);
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
      const auto next = nearest(*traced_.piece, at.hit.place, ray, false, at.face);
      if (!next) return end(Fate::stray);
      at = *next;
      reach(at);
      switch (role_at(at)) {
        case FaceRole::land:
        case FaceRole::joint_lower:
        case FaceRole::joint_upper:
        case FaceRole::axis:
          return end(Fate::lost_land);
        case FaceRole::reflecting:
          ray = mirror(at, ray);
          break;
        default:
          if (const auto onward = through(at, ray, input_.index, 1)) return leave(at, *onward);
          ray = reflect(ray, at.hit.outward);
          way_ok_ = false;
      }
    }
    end(Fate::stray);
  }

  void leave(const FoundFace& at, SectionDirection ray) {
    const bool refracting = is_refracting(traced_.piece->zone->kind);
    traced_.regular = way_ok_ && (refracting ? role_at(at) == FaceRole::outer && reflections_ == 0
                                             : role_at(at) == FaceRole::exit && reflections_ == 1);
    traced_.departure_deg = degrees(ray.elevation());
    const bool level = traced_.regular && std::abs(traced_.departure_deg) <= input_.settings.level_within_deg;
    end(level ? Fate::level : Fate::stray);
    if (traced_.lost_at_reflection > 0.5) end(Fate::lost_reflecting);
  }

  const SectionInput& input_;
  double critical_;
  TracedRay& traced_;
  RayPath* record_;
  bool way_ok_ = true;
  int reflections_ = 0;
  std::size_t meetings_ = 0;
};

}  // namespace

SectionPieces::SectionPieces(const Section& section)
    : held(section), critical(critical_angle(section.input.index)) {
  for (const Zone& zone : held.zones) {
    pieces.push_back(make_piece(zone, zone.profile, false));
    if (zone.kind == ZoneKind::ring) pieces.push_back(make_piece(zone, lower_image_of(zone), true));
    if (is_refracting(zone.kind)) band_top = std::max(band_top, radians(zone.to_deg));
  }
}

TracedRay SectionPieces::trace(double elevation, RayPath* record) const {
  TracedRay traced;
  const SectionDirection ray = SectionDirection::at(elevation);
  FoundFace entry;
  for (const PieceCurves& piece : pieces) {
    if (elevation < piece.low - kElevationSlack || elevation > piece.high + kElevationSlack) continue;
    const auto found = nearest(piece, {}, ray, true, {});
    if (found && (!traced.piece || found->hit.along_mm < entry.hit.along_mm)) {
      traced.piece = &piece;
      entry = *found;
    }
  }
  if (traced.piece) {
    Walk(held.input, critical, traced, record).run(entry, ray);
  } else {
    // Between refracting rings the setting gap is filled with glazing compound; elsewhere nothing is in the
    // way.
    traced.fate = std::abs(elevation) < band_top ? Fate::stopped : Fate::escaped;
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

struct SectionTracer::Inside {
  SectionPieces pieces;
};

SectionTracer::SectionTracer(const Section& section) : inside_(new Inside{SectionPieces(section)}) {}
SectionTracer::~SectionTracer() = default;
SectionTracer::SectionTracer(SectionTracer&&) noexcept = default;
SectionTracer& SectionTracer::operator=(SectionTracer&&) noexcept = default;

RayPath SectionTracer::trace(double elevation_deg) const {
  RayPath path;
  path.elevation_deg = elevation_deg;
  path.points.push_back({});
  const TracedRay traced = inside_->pieces.trace(radians(elevation_deg), &path);
  path.fate = traced.fate;
  if (traced.piece) path.zone = traced.piece->zone->mark;
  path.departure_deg = traced.departure_deg;
  path.least_margin_deg = degrees(traced.least_margin);
  path.through = traced.through;
  path.lost_at_reflection = traced.lost_at_reflection;
  path.regular = traced.regular;
  return path;
}

}  // namespace prismwright
