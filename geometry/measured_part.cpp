#include "geometry/measured_part.h"

#include <algorithm>

#include <fmt/format.h>
#include <TopLoc_Location.hxx>

#include "core/frame/ring_part.h"
#include "geometry/likeness.h"
#include "geometry/rib_place.h"
#include "geometry/round_solid.h"

namespace prismwright {
namespace {

constexpr std::size_t kSolidsKept = 8000;

template <class Part>
const Part* find_mark(const std::vector<Part>& parts, const std::string& mark) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return p.mark == mark; });
  return found == parts.end() ? nullptr : &*found;
}

}  // namespace

TopoDS_Shape MeasuredPart::shape() const { return form->shape().Moved(TopLoc_Location(place)); }

std::vector<MeasuredPart> PartBook::parts_of(const LensPlan& plan, const LensBodies& bodies,
                                             const FramePlan& frame, const std::vector<FrameBody>& metal) {
  forget_unused();
  std::map<std::string_view, const PlannedPrism*> planned;
  for (const PlannedPrism& prism : plan.prisms) planned[prism.mark] = &prism;
  std::vector<MeasuredPart> parts;
  for (const PrismBody& body : bodies.prisms) {
    const auto found = planned.find(body.mark);
    if (found == planned.end()) continue;
    MeasuredPart part;
    part.mark = body.mark;
    part.prism = found->second;
    part.panel = found->second->panel;
    part.greatest_length_mm = body.greatest_length_mm;
    part.place = body.shape.Location().Transformation();
    part.form = form_of(body.shape.Located(TopLoc_Location()));
    part.turned = turned_prism(*part.prism, part.form);
    parts.push_back(std::move(part));
  }
  for (const FrameBody& body : metal) {
    MeasuredPart part;
    part.mark = body.mark;
    part.panel = body.panel;
    part.kind = body.kind;
    part.place = body.shape.Location().Transformation();
    part.form = form_of(body.shape.Located(TopLoc_Location()));
    add_metal_form(frame, part);
    parts.push_back(std::move(part));
  }
  return parts;
}

std::shared_ptr<const SolidForm> PartBook::form_of(const TopoDS_Shape& made) {
  Known& known = by_solid_[made.TShape().get()];
  if (!known.form) {
    known.made = made;
    std::shared_ptr<const SolidForm>& form = by_word_[form_word(made)];
    if (!form) form = std::make_shared<const SolidForm>(made);
    known.form = form;
  }
  return known.form;
}

// A flat part's solid is made in its plate's own frame, wherever that stands; a rib or a ring without a flat
// part in frames of their own.
void PartBook::add_metal_form(const FramePlan& frame, MeasuredPart& part) {
  if (const FlatPart* flat = find_mark(frame.flats, part.mark)) {
    part.plate = plate_of_part(*flat, gp_Trsf(), part.form);
  } else if (const RoundPart* round = find_mark(frame.rounds, part.mark)) {
    auto& turned = turned_["round " + part.form->word()];
    if (!turned) turned = TurnedPart::of(*round, gp_Trsf(), part.form);
    part.turned = turned;
  } else if (const TurnedBar* bar = find_mark(frame.bars, part.mark)) {
    auto& turned = turned_["bar " + part.form->word()];
    if (!turned) turned = TurnedPart::of(*bar, part.form);
    part.turned = turned;
  } else if (const RibPlan* rib = find_mark(frame.ribs, part.mark)) {
    part.plate = plate_of_part(flat_of(*rib), flat_to_rib(*rib), part.form);
  } else if (const RingPlan* ring = find_mark(frame.rings, part.mark)) {
    part.plate = plate_of_part(ring_part(*ring), gp_Trsf(), part.form);
  }
}

std::shared_ptr<const TurnedPart> PartBook::turned_prism(const PlannedPrism& prism,
                                                         const std::shared_ptr<const SolidForm>& form) {
  const std::string key = form->word() + prism.shape_key;
  const auto known = turned_.find(key);
  if (known != turned_.end()) return known->second;
  return turned_[key] = TurnedPart::of(prism, form);
}

std::shared_ptr<const PlateRoom> PartBook::plate_of_part(const FlatPart& flat, const gp_Trsf& to_made,
                                                         const std::shared_ptr<const SolidForm>& form) {
  const auto known = plates_.find(form->word());
  if (known != plates_.end()) return known->second;
  return plates_[form->word()] = PlateRoom::of(flat, to_made, *form);
}

void PartBook::forget_unused() {
  if (by_solid_.size() <= kSolidsKept) return;
  by_solid_.clear();
  by_word_.clear();
  turned_.clear();
  plates_.clear();
}

}  // namespace prismwright
