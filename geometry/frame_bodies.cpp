#include "geometry/frame_bodies.h"

#include <map>
#include <new>
#include <set>
#include <utility>

#include <fmt/format.h>
#include <Standard_Failure.hxx>
#include <TopLoc_Location.hxx>

#include "geometry/part_solid.h"
#include "geometry/rib_place.h"
#include "geometry/round_solid.h"

namespace prismwright {
namespace {

// Congruent parts are made once and set in their places.
class PartShop {
 public:
  template <class Part>
  Outcome<PartSolid> make(const Part& part, const std::string& key) {
    const std::string own = key.empty() ? part.mark : key;
    const auto found = made_.find(own);
    if (found != made_.end()) return found->second;
    auto solid = guarded(part);
    if (solid) made_.emplace(own, *solid);
    return solid;
  }

 private:
  template <class Part>
  static Outcome<PartSolid> guarded(const Part& part) {
    try {
      return checked_solid(part);
    } catch (const Standard_Failure& failure) {
      return no_frame_solid(part.mark, failure.GetMessageString());
    } catch (const std::bad_alloc&) {
      return no_frame_solid(part.mark, "memory ran out");
    }
  }

  std::map<std::string, PartSolid> made_;
};

class FrameMaker {
 public:
  FrameMaker(const FramePlan& frame, const Progress& progress) : frame_(frame), progress_(progress) {
    for (const FlatPart& flat : frame.flats) flats_[flat.mark] = &flat;
    count_ = static_cast<double>(frame.ribs.size() + frame.rings.size() + frame.flats.size() +
                                 frame.bars.size() + frame.rounds.size());
  }

  Outcome<std::vector<FrameBody>> run() {
    for (const RibPlan& rib : frame_.ribs) add_rib(rib);
    for (const RingPlan& ring : frame_.rings) add_ring(ring);
    for (const FlatPart& flat : frame_.flats) add_flat(flat);
    for (const TurnedBar& bar : frame_.bars) {
      add(bar, "bar " + bar_key(bar), turn_about_lens(bar.shape.axis_deg), body_of(bar));
    }
    for (const RoundPart& part : frame_.rounds) {
      add(part, "round " + round_key(part), round_place(part), body_of(part));
    }
    if (trouble_) return *trouble_;
    return std::move(bodies_);
  }

 private:
  template <class Part>
  static FrameBody body_of(const Part& part) {
    return {part.mark, {}, 0, 0, part.kind, part.metal, part.making, part.panel};
  }
  static FrameBody bar_body(const TurnedBar& bar) { return body_of(bar); }

  void add_rib(const RibPlan& rib) {
    if (const auto flat = flats_.find(rib.mark); flat != flats_.end()) return add_flat(*flat->second);
    const std::string key =
        fmt::format("rib {} {} {:.6f}", rib.shape_key, static_cast<int>(rib.side), rib.set_back_mm);
    add(rib, rib.shape_key.empty() ? "" : key, rib_turn(rib) * rib_set_back(rib),
        {rib.mark, {}, 0, 0, PartKind::side_rib, PartMetal::brass, PartMaking::cut_flat, rib.panel});
  }

  void add_ring(const RingPlan& ring) {
    if (const auto flat = flats_.find(ring.mark); flat != flats_.end()) return add_flat(*flat->second);
    add(ring, "", gp_Trsf(), {ring.mark, {}, 0, 0, PartKind::ring, PartMetal::brass, PartMaking::cut_flat, 0});
  }

  void add_flat(const FlatPart& flat) {
    if (!done_.insert(flat.mark).second) return;
    add(flat, flat.shape_key.empty() ? "" : "flat " + flat.shape_key, frame_place(flat.place), body_of(flat));
  }

  static std::string bar_key(const TurnedBar& bar) {
    std::string key = bar.shape.shape_key;
    for (const PlateBore& bore : bar.bores) {
      key +=
          fmt::format(" {:.6f} {:.6f} {:.6f} {:.6f} {:.6f} {:.6f} {:.6f} {:.6f}", bore.from.x, bore.from.y,
                      bore.from.z, bore.along.x, bore.along.y, bore.along.z, bore.depth_mm, bore.diameter_mm);
    }
    return key;
  }

  static std::string round_key(const RoundPart& part) {
    return fmt::format("{:.6f} {:.6f} {:.6f} {:.6f}", part.length_mm, part.diameter_mm, part.bore_mm,
                       part.head_mm);
  }

  template <class Part>
  void add(const Part& part, const std::string& key, const gp_Trsf& place, FrameBody body) {
    if (trouble_) return;
    if (!goes_on(progress_, static_cast<double>(bodies_.size()) / count_, part.mark)) {
      trouble_ = Problem{Trouble::stopped, "stopped", part.mark,
                         "The frame was stopped before all its parts were made."};
      return;
    }
    const auto solid = shop_.make(part, key);
    if (!solid) {
      trouble_ = solid.problem();
      return;
    }
    const TopLoc_Location at(place);
    body.shape = at.IsIdentity() ? solid->shape : solid->shape.Moved(at);
    body.volume_mm3 = solid->volume_mm3;
    body.mass_g = solid->volume_mm3 * density_g_cm3(body.metal) / 1000;
    bodies_.push_back(std::move(body));
  }

  const FramePlan& frame_;
  const Progress& progress_;
  std::map<std::string, const FlatPart*> flats_;
  std::set<std::string> done_;
  double count_ = 1;
  PartShop shop_;
  std::vector<FrameBody> bodies_;
  std::optional<Problem> trouble_;
};

}  // namespace

Outcome<std::vector<FrameBody>> make_frame(const FramePlan& frame, const Progress& progress) {
  return FrameMaker(frame, progress).run();
}

}  // namespace prismwright
