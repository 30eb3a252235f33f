#include "geometry/mould.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "geometry/mould_block.h"
#include "geometry/mould_draw.h"
#include "geometry/mould_skin.h"
#include "geometry/mould_views.h"

namespace prismwright {

namespace {

constexpr double kChordShare = 2e-4;  ///< of the greatest size of a master
constexpr double kFinestChord_mm = 0.02;
constexpr double kCoarsestChord_mm = 0.15;

/// What is tried where the settings as they are give no sound mould: narrower vents, a narrower gate, a thicker
/// wall.
struct Easing {
  double vent = 1;
  double gate = 1;
  double wall = 1;
};
constexpr std::array<Easing, 4> kEasings = {{{1, 1, 1}, {0.5, 1, 1}, {0.5, 0.5, 1}, {0.5, 0.75, 1.3}}};

Problem no_draw(const MouldOrder& order, const ChosenDraw& draw) {
  const Undercut* worst = nullptr;
  for (const Undercut& undercut : draw.facts.undercuts) {
    if (worst == nullptr || undercut.depth_mm > worst->depth_mm ||
        (undercut.depth_mm == worst->depth_mm && undercut.area_mm2 > worst->area_mm2))
      worst = &undercut;
  }
  const std::string where =
      worst == nullptr ? std::string("a face turns from the one half to the other")
      : worst->kind == UndercutKind::hidden
          ? fmt::format("the face \"{}\" reaches {:.1f} mm under the rest", worst->face, worst->depth_mm)
          : fmt::format("the face \"{}\" turns from the one half to the other within itself", worst->face);
  return request_problem(
      "mould", order.prism.mark,
      fmt::format("{}: a mould in two parts cannot be drawn off it in any direction; in the best, {}. Make "
                  "a mould in three parts or of rubber, or divide the zone otherwise.",
                  order.prism.mark, where));
}

Done check(const WorksSettings& s, const std::string& mark) {
  const auto refuse = [&](const char* key, double value, const char* limit) {
    return Done(request_problem(
        "mould", mark,
        fmt::format("{}: {} is {:g}; it must be {}. Change the setting.", mark, key, value, limit)));
  };
  if (!(s.mould_wall_mm >= 1)) return refuse("works.mould_wall_mm", s.mould_wall_mm, "1 mm or more");
  if (!(s.gate_mm >= 1)) return refuse("works.gate_mm", s.gate_mm, "1 mm or more");
  if (!(s.vent_mm >= 0.5)) return refuse("works.vent_mm", s.vent_mm, "0.5 mm or more");
  if (!(s.pin_mm >= 1)) return refuse("works.pin_mm", s.pin_mm, "1 mm or more");
  if (!(s.pin_gap_mm >= 0)) return refuse("works.pin_gap_mm", s.pin_gap_mm, "0 or more");
  if (!(s.mould_draft_deg >= 0 && s.mould_draft_deg <= 20))
    return refuse("works.mould_draft_deg", s.mould_draft_deg, "0 to 20 deg");
  if (!(s.resin_head_percent >= 0))
    return refuse("works.resin_head_percent", s.resin_head_percent, "0 or more");
  return {};
}

void make_into(MouldAnswer& answer, const MouldOrder& order, const WorksSettings& settings) {
  const MouldSkin skin = mould_skin(order.master, order.prism, mould_chord_mm(order.prism));
  const ChosenDraw draw = chosen_draw(skin, settings.mould_draft_deg);
  answer.draw = draw.facts;
  if (!draw.one_sided || !draw.facts.drawable()) {
    answer.problem = no_draw(order, draw);
    return;
  }
  for (const Easing& easing : kEasings) {
    WorksSettings eased = settings;
    eased.vent_mm = std::max(0.5, easing.vent * settings.vent_mm);
    eased.gate_mm = std::max(1.0, easing.gate * settings.gate_mm);
    eased.mould_wall_mm *= easing.wall;
    auto made = mould_block(order, skin, draw.facts, eased);
    if (made) {
      answer.mould = std::move(made).value();
      answer.problem.reset();
      return;
    }
    if (!answer.problem) answer.problem = made.problem();  // of the settings as they are
  }
}

}  // namespace

double mould_chord_mm(const PlannedPrism& prism) {
  double most = 0;
  for (const Face& face : prism.profile.faces) {
    for (const SectionPoint& p : face.points) most = std::max({most, std::abs(p.r), std::abs(p.z)});
  }
  return std::clamp(kChordShare * most, kFinestChord_mm, kCoarsestChord_mm);
}

MouldAnswer make_mould(const MouldOrder& order, const WorksSettings& settings) {
  MouldAnswer answer;
  answer.mark = order.prism.mark;
  answer.shape_key = order.prism.shape_key;
  if (const Done well = check(settings, answer.mark); !well) {
    answer.problem = well.problem();
    return answer;
  }
  if (order.master.IsNull()) {
    answer.problem =
        request_problem("mould", answer.mark,
                        fmt::format("{}: there is no master to mould. Make its master first.", answer.mark));
    return answer;
  }
  try {
    make_into(answer, order, settings);
  } catch (const Standard_Failure& failure) {
    answer.problem = request_problem(
        "mould", answer.mark,
        fmt::format("{}: its skin could not be read ({}). Make its master anew with other stock.", answer.mark,
                    failure.GetMessageString()));
  }
  return answer;
}

}  // namespace prismwright
