#include "geometry/despatch/despatch_keys.h"

#include <algorithm>

#include "core/lens/quantities.h"

namespace prismwright {

// Not in a namespace without a name, so that the list of anything finds what its members add.
template <class Item>
static PieceKey& operator<<(PieceKey& key, const std::vector<Item>& items) {
  key << items.size();
  for (const Item& item : items) key << item;
  return key;
}

static PieceKey& operator<<(PieceKey& key, SectionPoint p) { return key << p.r << p.z; }
static PieceKey& operator<<(PieceKey& key, SectionDirection d) { return key << d.r() << d.z(); }
static PieceKey& operator<<(PieceKey& key, PlatePoint p) { return key << p.u << p.v; }
static PieceKey& operator<<(PieceKey& key, SpacePoint p) { return key << p.x << p.y << p.z; }
static PieceKey& operator<<(PieceKey& key, SpaceVector v) { return key << v.x << v.y << v.z; }

static PieceKey& operator<<(PieceKey& key, const Face& face) {
  return key << face.role << face.kind << face.points << face.tangents << face.centre << face.radius_mm;
}

static PieceKey& operator<<(PieceKey& key, const Trim& trim) {
  return key << trim.clockwise_side_deg << trim.anticlockwise_side_deg << trim.set_back_mm << trim.half
             << trim.half_gap_mm << trim.flat_inner_mm.has_value() << trim.flat_inner_mm.value_or(0);
}

static PieceKey& operator<<(PieceKey& key, const PlateStep& step) {
  return key << step.from << step.to << step.turn << step.centre << step.radius_mm;
}

static PieceKey& operator<<(PieceKey& key, const PlateHole& hole) {
  return key << hole.centre << hole.diameter_mm << hole.sink_diameter_mm << hole.sunk_in_back << hole.use;
}

static PieceKey& operator<<(PieceKey& key, const PlatePocket& pocket) {
  return key << pocket.outline << pocket.depth_mm << pocket.marks;
}

static PieceKey& operator<<(PieceKey& key, const PlateBore& bore) {
  return key << bore.from << bore.along << bore.depth_mm << bore.diameter_mm << bore.use;
}

static PieceKey& operator<<(PieceKey& key, const SpaceFrame& frame) {
  return key << frame.origin << frame.first << frame.second << frame.third;
}

static PieceKey& operator<<(PieceKey& key, PaperPoint p) { return key << p.x << p.y; }

static PieceKey& operator<<(PieceKey& key, const PaperStep& step) {
  return key << step.to << step.turn << step.centre << step.radius_mm;
}

static PieceKey& operator<<(PieceKey& key, const Stroke& stroke) {
  key << stroke.start << stroke.steps << stroke.line << stroke.closed << stroke.filled
      << stroke.tone.has_value();
  if (stroke.tone) key << stroke.tone->red << stroke.tone->green << stroke.tone->blue;
  return key;
}

static PieceKey& operator<<(PieceKey& key, const DrawnText& text) {
  return key << text.words << text.place << text.size_mm << text.anchor << text.turned << text.bold;
}

static PieceKey& operator<<(PieceKey& key, const DrawnPicture& picture) {
  key << picture.low << picture.high << (picture.image != nullptr);
  if (!picture.image) return key;
  const auto& rgb = picture.image->rgb;
  return key << picture.image->wide << picture.image->high
             << std::string_view(reinterpret_cast<const char*>(rgb.data()), rgb.size());
}

static PieceKey& operator<<(PieceKey& key, const Sheet& sheet) {
  return key << sheet.size.paper << sheet.size.landscape << sheet.strokes << sheet.texts << sheet.pictures;
}

namespace {

template <class Part>
void add_metal_words(PieceKey& key, const Part& part) {
  key << part.mark << part.kind << part.panel;
}

template <class Parts>
void add_of_panel(PieceKey& key, const Parts& parts, int panel) {
  for (const auto& part : parts)
    if (panel == 0 || part.panel == panel) add_placed(key, part);
}

/// Ribs and rings that do not stand among the flat parts are made from their outlines alone.
bool stands_flat(const FramePlan& frame, const std::string& mark) {
  return std::ranges::any_of(frame.flats, [&](const FlatPart& flat) { return flat.mark == mark; });
}

void add_rib(PieceKey& key, const RibPlan& rib) {
  key << rib.mark << rib.panel << rib.side << rib.azimuth_deg << rib.thickness_mm << rib.pocket_mm << rib.edge
      << rib.outline << rib.set_back_mm << rib.pockets.size();
  for (const Pocket& pocket : rib.pockets) key << pocket.edge << pocket.outline << pocket.marks;
}

bool in_group(const std::string& key, const std::string& group) {
  return key == group || (key.size() > group.size() && key.starts_with(group) && key[group.size()] == '.');
}

}  // namespace

void add_solid(PieceKey& key, const PlannedPrism& prism) {
  key << prism.profile.faces << prism.turning << prism.axis_z_mm << prism.axis_dip_deg << prism.trim;
}

void add_placed(PieceKey& key, const PlannedPrism& prism) {
  key << prism.mark << prism.axis_deg;
  add_solid(key, prism);
}

void add_solid(PieceKey& key, const FlatPart& part) {
  key << part.making << part.metal << part.thickness_mm << part.outline << part.openings << part.holes
      << part.pockets << part.bores;
}

void add_solid(PieceKey& key, const RoundPart& part) {
  key << part.making << part.metal << part.length_mm << part.diameter_mm << part.bore_mm << part.head_mm;
}

void add_solid(PieceKey& key, const TurnedBar& part) {
  key << part.making << part.metal << part.bores;
  add_solid(key, part.shape);
}

void add_placed(PieceKey& key, const FlatPart& part) {
  add_metal_words(key, part);
  key << part.place;
  add_solid(key, part);
}

void add_placed(PieceKey& key, const RoundPart& part) {
  add_metal_words(key, part);
  key << part.from << part.along;
  add_solid(key, part);
}

void add_placed(PieceKey& key, const TurnedBar& part) {
  add_metal_words(key, part);
  key << part.shape.axis_deg;
  add_solid(key, part);
}

void add_glass(PieceKey& key, const LensPlan& plan) {
  key << plan.prisms.size();
  for (const PlannedPrism& prism : plan.prisms) add_placed(key, prism);
}

void add_metal(PieceKey& key, const FramePlan& frame, int panel) {
  for (const RibPlan& rib : frame.ribs)
    if ((panel == 0 || rib.panel == panel) && !stands_flat(frame, rib.mark)) add_rib(key, rib);
  for (const RingPlan& ring : frame.rings) {
    if (panel == 0 && !stands_flat(frame, ring.mark))
      key << ring.mark << ring.inner_radius_mm << ring.outer_radius_mm << ring.z_low_mm << ring.thickness_mm;
  }
  add_of_panel(key, frame.flats, panel);
  add_of_panel(key, frame.bars, panel);
  add_of_panel(key, frame.rounds, panel);
}

void add_drawing(PieceKey& key, const Drawing& drawing) { key << drawing.title << drawing.sheets; }

void add_values(PieceKey& key, const LensValues& values, const std::vector<std::string>& groups) {
  for (const Quantity& quantity : quantities()) {
    if (std::ranges::any_of(groups, [&](const std::string& group) { return in_group(quantity.key, group); }))
      key << quantity.key << value_text(values, quantity.key);
  }
}

void add_sheets(PieceKey& key, const FrameSettings& settings) {
  key << settings.sheet_width_mm << settings.sheet_height_mm << settings.sheet_spacing_mm;
}

}  // namespace prismwright
