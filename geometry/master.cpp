#include "geometry/master.h"

#include <cmath>
#include <map>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "core/lens/trimmed_volume.h"
#include "core/works/stock_profile.h"
#include "geometry/master_faces.h"
#include "geometry/prism_shape.h"
#include "geometry/solid_check.h"
#include "geometry/stretched_shape.h"

namespace prismwright {

namespace {

/// The kernel's quadrature over NURBS faces of whole rings was seen to be off by 1.6e-5.
constexpr double kVolumeShare = 1e-4;

Problem no_master(const std::string& name, std::string_view why) {
  return request_problem(
      "solid", name,
      fmt::format("{}: its master could not be made ({}). Change the sanding stock or a factor "
                  "of shrinkage by a hundredth.",
                  name, why));
}

Done stretch(MasterBody& master) {
  auto solid = sound_solid(stretched_shape(master.casting, master.stretch), master.name);
  if (!solid) return solid.problem();
  master.shape = *solid;
  master.master_mm3 = master.casting_mm3 * master.stretch.volume_factor();
  const double off = std::abs(measured(master.shape, master.master_mm3).volume_mm3 / master.master_mm3 - 1);
  if (off <= kVolumeShare) return {};
  return no_master(master.name, fmt::format("its volume is off by {:.2g}, {:g} is allowed", off, kVolumeShare));
}

/// All of a master but its name.
Outcome<MasterBody> made(const PlannedPrism& prism, const std::string& name, const WorksSettings& settings) {
  auto stocked = with_stock(prism, settings);
  if (!stocked) return stocked.problem();
  MasterBody master{name, prism, std::move(*stocked), {}, {}, master_stretch(prism, settings), 0, 0, 0, {}};
  auto casting = prism_shape(master.stocked);
  if (!casting) return casting.problem();
  master.casting = *casting;
  master.prism_mm3 = trimmed_volume_mm3(prism);
  master.casting_mm3 = measured(master.casting, trimmed_volume_mm3(master.stocked)).volume_mm3;
  master.faces = casting_faces(master.casting, master.stocked, settings);
  if (const Done done = stretch(master); !done) return done.problem();
  return master;
}

}  // namespace

Outcome<MasterBody> make_master(const PlannedPrism& prism, const std::string& name,
                                const WorksSettings& settings) {
  try {
    return made(prism, name, settings);
  } catch (const Standard_Failure& failure) {
    return no_master(name, failure.GetMessageString());
  }
}

std::string master_key(const PlannedPrism& prism, const WorksSettings& settings) {
  return fmt::format("{}|{}|{}|{}|{}|{}", prism.shape_key, settings.stock_mm,
                     settings.stock_faces == StockFaces::all, settings.shrink_depth_percent,
                     settings.shrink_length_percent, settings.shrink_height_percent);
}

struct MasterShop::Inside {
  std::map<std::string, std::shared_ptr<const MasterBody>> known;
  int made_anew = 0;
};

MasterShop::MasterShop() : inside_(std::make_unique<Inside>()) {}
MasterShop::~MasterShop() = default;

int MasterShop::made_anew() const { return inside_->made_anew; }

Outcome<std::shared_ptr<const MasterBody>> MasterShop::make(const PlannedPrism& prism, const std::string& name,
                                                            const WorksSettings& settings) {
  std::shared_ptr<const MasterBody>& known = inside_->known[master_key(prism, settings)];
  if (known && known->name == name && known->prism.mark == prism.mark) return known;
  if (!known) {
    auto master = make_master(prism, name, settings);
    if (!master) return master.problem();
    ++inside_->made_anew;
    known = std::make_shared<const MasterBody>(std::move(*master));
    return known;
  }
  // The same solid for another prism, or by another name.
  MasterBody other = *known;
  other.name = name;
  other.prism = prism;
  other.stocked.mark = prism.mark;
  other.stocked.panel = prism.panel;
  other.stocked.axis_deg = prism.axis_deg;
  return std::make_shared<const MasterBody>(std::move(other));
}

}  // namespace prismwright
