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
  Walk(const SectionInput& input, const PieceCurves& piece, RayPath& path)
      : input_(input), piece_(piece), path_(path), critical_(critical_angle(input.index)) {}

  void run(FoundFace entry, SectionDirection ray) {
    path_.zone = piece_.zone->mark;
    path_.points.push_back(entry.hit.place);
    const FaceRole role = piece_.faces[entry.face].role();
    way_ok_ = role == FaceRole::inner || role == FaceRole::entry;
    if (role == FaceRole::land) return end(Fate::lost_land);
    if (role == FaceRole::joint_lower || role == FaceRole::joint_upper) return end(Fate::stopped);
    ray = through(entry, ray, 1, input_.index).value_or(ray);
    inside(entry, ray);
  }

 private:
  void end(Fate fate) { path_.fate = fate; }

  /// Passes the face, or answers nothing where the reflection is total; records the meeting either way.
  std::optional<SectionDirection> through(const FoundFace& at, SectionDirection ray, double n_from,
                                          double n_to) {
    const double angle = incidence(ray, at.hit.outward);
    const auto onward = refract(ray, at.hit.outward, n_from, n_to);
    RayMeeting meeting{piece_.zone->mark, piece_.faces[at.face].role(), at.hit.place, degrees(angle), {}, 0, 0};
    if (onward) {
      meeting.refraction_deg = degrees(incidence(*onward, at.hit.outward));
      meeting.loss = fresnel(angle, n_from, n_to).unpolarised();
      path_.through *= 1 - meeting.loss;
    }
    meeting.direction_deg = degrees((onward ? *onward : reflect(ray, at.hit.outward)).elevation());
    path_.meetings.push_back(meeting);
    return onward;
  }

  /// Reflects at the reflecting face; what passes through it is lost there.
  SectionDirection mirror(const FoundFace& at, SectionDirection ray) {
    const double angle = incidence(ray, at.hit.outward);
    const double margin = degrees(angle - critical_);
    path_.least_margin_deg = mirrored_once_ ? std::min(path_.least_margin_deg, margin) : margin;
    mirrored_once_ = true;
    RayMeeting meeting{piece_.zone->mark, FaceRole::reflecting, at.hit.place, degrees(angle), {}, 0, 0};
    if (margin < 0) {
      meeting.loss = 1 - fresnel(angle, input_.index, 1).unpolarised();
      path_.lost_at_reflection += (1 - path_.lost_at_reflection) * meeting.loss;
    }
    const SectionDirection onward = reflect(ray, at.hit.outward);
    meeting.direction_deg = degrees(onward.elevation());
    path_.meetings.push_back(meeting);
    return onward;
  }

  void inside(FoundFace at, SectionDirection ray) {
    while (path_.meetings.size() < kMostMeetings) {
      const auto next = nearest(piece_, at.hit.place, ray, false, at.face);
      if (!next) return end(Fate::stray);
      at = *next;
      path_.points.push_back(at.hit.place);
      switch (piece_.faces[at.face].role()) {
        case FaceRole::land:
        case FaceRole::joint_lower:
        case FaceRole::joint_upper:
        case FaceRole::axis:
          return end(Fate::lost_land);
        case FaceRole::reflecting:
          ray = mirror(at, ray);
          reflections_ += 1;
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
    const FaceRole role = piece_.faces[at.face].role();
    const bool refracting = is_refracting(piece_.zone->kind);
    path_.regular = way_ok_ && (refracting ? role == FaceRole::outer && reflections_ == 0
                                           : role == FaceRole::exit && reflections_ == 1);
    path_.departure_deg = degrees(ray.elevation());
    const bool level = path_.regular && std::abs(path_.departure_deg) <= input_.settings.level_within_deg;
    end(level ? Fate::level : Fate::stray);
    if (path_.lost_at_reflection > 0.5) end(Fate::lost_reflecting);
  }

  const SectionInput& input_;
  const PieceCurves& piece_;
  RayPath& path_;
  double critical_;
  bool way_ok_ = true;
  bool mirrored_once_ = false;
  int reflections_ = 0;
};

}  // namespace

SectionPieces::SectionPieces(const Section& section) : held(section), band_top(0) {
  for (const Zone& zone : held.zones) {
    pieces.push_back(make_piece(zone, zone.profile, false));
    if (zone.kind == ZoneKind::ring) pieces.push_back(make_piece(zone, mirrored(zone.profile), true));
    if (is_refracting(zone.kind)) band_top = std::max(band_top, radians(zone.to_deg));
  }
}

RayPath SectionPieces::trace(double elevation, const PieceCurves* only) const {
  RayPath path;
  path.elevation_deg = degrees(elevation);
  path.points.push_back({});
  const SectionDirection ray = SectionDirection::at(elevation);
  const PieceCurves* taken = nullptr;
  FoundFace entry;
  for (const PieceCurves& piece : pieces) {
    if (only && &piece != only) continue;
    if (elevation < piece.low - kElevationSlack || elevation > piece.high + kElevationSlack) continue;
    const auto found = nearest(piece, {}, ray, true, {});
    if (found && (!taken || found->hit.along_mm < entry.hit.along_mm)) {
      taken = &piece;
      entry = *found;
    }
  }
  if (taken) {
    Walk(held.input, *taken, path).run(entry, ray);
  } else {
    // Between refracting rings the setting gap is filled with glazing compound; elsewhere nothing is in the
    // way.
    path.fate = std::abs(elevation) < band_top ? Fate::stopped : Fate::escaped;
  }
  return path;
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
  return inside_->pieces.trace(radians(elevation_deg));
}

}  // namespace prismwright
