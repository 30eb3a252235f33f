#include "core/drawing/section_picture.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/section_images.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.1;
constexpr double kHatch_mm = 1.6;
constexpr double kNameRoom_mm = 5;
constexpr double kTolerance_mm = 0.02;
constexpr double kAxisOver_mm = 5;  ///< a centre line runs on beyond the glass

/// Places around a point, first those that lie the farthest along the way, then all others.
std::vector<PaperPoint> places_round(PaperPoint at, double way, const std::vector<double>& aways) {
  std::vector<PaperPoint> places;
  for (const double away : aways) {
    for (const double turn : {0.0, 0.5, -0.5, 1.0, -1.0, 1.6, -1.6})
      places.push_back(
          {at.x + away * std::cos(way + turn), at.y + away * std::sin(way + turn) - 0.35 * kWords_mm});
  }
  return places;
}
std::vector<PaperPoint> places_near(PaperPoint at, double way, double first_mm) {
  return places_round(at, way, {first_mm, first_mm + 1.5, first_mm + 3.5, first_mm + 6});
}

/// The section with its scale and how far it reaches.
struct PictureLayout {
  std::vector<Profile> images;
  SectionPoint low{1e300, 1e300};
  SectionPoint high{-1e300, -1e300};
  PaperBox inside;  ///< room for the glass alone
  const DrawingScale* scale = nullptr;
};

PictureLayout layout_of(const SectionPicture& picture, const PaperBox& room) {
  PictureLayout layout;
  layout.images = {picture.profile};
  if (picture.both_sides && picture.profile.find(FaceRole::axis))
    layout.images.push_back(mirrored(picture.profile));
  for (const Profile& image : layout.images) {
    for (const SectionPoint p : polygon_of(image, kTolerance_mm)) {
      layout.low = {std::min(layout.low.r, p.r), std::min(layout.low.z, p.z)};
      layout.high = {std::max(layout.high.r, p.r), std::max(layout.high.z, p.z)};
    }
  }
  layout.inside = {{room.low.x + picture.rim_wide_mm, room.low.y + kNameRoom_mm + picture.rim_high_mm},
                   {room.high.x - picture.rim_wide_mm, room.high.y - picture.rim_high_mm}};
  layout.scale =
      &largest_scale(layout.high.r - layout.low.r, layout.high.z - layout.low.z,
                     layout.inside.high.x - layout.inside.low.x, layout.inside.high.y - layout.inside.low.y);
  return layout;
}

/// Draws the section on the sheet.
class PictureMaker {
 public:
  PictureMaker(SheetMaker& maker, const SectionPicture& picture, const PaperBox& room)
      : maker_(maker), picture_(picture), room_(room), layout_(layout_of(picture, room)) {
    const PaperBox& inside = layout_.inside;
    const double scale = layout_.scale->paper_per_mm;
    const PaperPoint middle = {(inside.low.x + inside.high.x) / 2, (inside.low.y + inside.high.y) / 2};
    map_ = {{middle.x - scale * (layout_.low.r + layout_.high.r) / 2,
             middle.y - scale * (layout_.low.z + layout_.high.z) / 2},
            scale};
  }

  const DrawingScale& draw() {
    for (const Profile& image : layout_.images) draw_glass(image);
    draw_name();
    letter_corners();
    write_face_words();
    return *layout_.scale;
  }

 private:
  void draw_glass(const Profile& image) {
    const std::vector<PaperPoint> outline = map_.at(polygon_of(image, kTolerance_mm));
    for (Stroke& line : hatch_lines(outline, kHatch_mm, false)) maker_.draw(std::move(line));
    for (std::size_t i = 0; i < outline.size(); ++i)
      maker_.keep_clear(outline[i], outline[(i + 1) % outline.size()]);
    const Face* axis = image.find(FaceRole::axis);
    if (!axis) {
      maker_.draw(outline_stroke(image, map_, kTolerance_mm));
      return;
    }
    maker_.draw(outline_stroke(without_axis(image), map_, kTolerance_mm, false));
    const double from = std::min(axis->start().r, axis->end().r);
    const double to = std::max(axis->start().r, axis->end().r);
    const double over = kAxisOver_mm / map_.paper_per_mm;
    const PaperPoint left = map_.at(SectionPoint{from - over, axis->start().z});
    const PaperPoint right = map_.at(SectionPoint{to + over, axis->start().z});
    maker_.line(left, right, LineClass::centre);
    maker_.keep_clear(left, right);
  }

  /// The faces of glass alone, in the order of the walk from the axis to the axis.
  static Profile without_axis(Profile profile) {
    const auto axis = std::ranges::find(profile.faces, FaceRole::axis, &Face::role);
    std::rotate(profile.faces.begin(), axis, profile.faces.end());
    profile.faces.erase(profile.faces.begin());
    return profile;
  }

  void draw_name() {
    const std::string name = fmt::format("{}, {}", picture_.name, layout_.scale->words);
    maker_.write({shortened(clean_words(name), kWords_mm, room_.high.x - room_.low.x),
                  {(room_.low.x + room_.high.x) / 2, room_.low.y + 1.2},
                  kWords_mm,
                  Anchor::middle});
  }

  /// Each letter along the line that halves its corner, outside the glass: so neighbours stand apart.
  void letter_corners() {
    const std::vector<SectionCorner>& corners = picture_.corners;
    const std::size_t count = corners.size();
    for (std::size_t i = 0; i < count; ++i) {
      const SectionPoint here = corners[i].place;
      const SectionDirection in = SectionDirection::along(here - corners[(i + count - 1) % count].place);
      const SectionDirection on = SectionDirection::along(corners[(i + 1) % count].place - here);
      // Walked anticlockwise, the outside lies on the right.
      const double way = std::atan2(in.z() + on.z(), in.r() + on.r()) - std::acos(0.0);
      DrawnText text{corners[i].letter, {}, kWords_mm, Anchor::middle};
      text.bold = true;
      maker_.write_at_free(std::move(text), places_near(map_.at(here), way, 2.2));
    }
  }

  void write_face_words() {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < picture_.face_words.size(); ++i) {
      if (!picture_.face_words[i].empty()) order.push_back(i);
    }
    const auto chord = [&](std::size_t i) {
      const Face& face = picture_.profile.faces[i];
      return distance(face.start(), face.end());
    };
    std::ranges::stable_sort(order, std::greater<>(), chord);
    for (const std::size_t i : order) write_beside(picture_.profile.faces[i], picture_.face_words[i]);
  }

  void write_beside(const Face& face, const std::string& words) {
    const PaperPoint from = map_.at(face.start());
    const PaperPoint to = map_.at(face.end());
    // Walked anticlockwise, the outside lies on the right.
    const double way = std::atan2(to.y - from.y, to.x - from.x) - std::acos(0.0);
    const PaperPoint middle = {(from.x + to.x) / 2, (from.y + to.y) / 2};
    const double half = text_width_mm(words, kWords_mm) / 2;
    const double off = 1.4 + half * std::abs(std::cos(way)) + kWords_mm / 2 * std::abs(std::sin(way));
    const DrawnText text{words, {}, kWords_mm, Anchor::middle};
    if (maker_.write_at_free(text, places_near(middle, way, off)) || !picture_.leaders) return;
    write_on_leader(text, middle, way, off);
  }

  void write_on_leader(const DrawnText& text, PaperPoint middle, double way, double off) {
    for (const PaperPoint place : places_round(middle, way, {off + 8, off + 11, off + 14, off + 18})) {
      if (!maker_.write_at_free(text, {place})) continue;
      const double half = text_width_mm(text.words, kWords_mm) / 2 + 0.6;
      const double aside = std::clamp(middle.x - place.x, -half, half);
      const double rise = middle.y > place.y ? kWords_mm + 0.3 : -0.6;
      const PaperPoint foot = {place.x + aside,
                               std::abs(aside) < half ? place.y + rise : place.y + 0.35 * kWords_mm};
      maker_.line(foot, middle, LineClass::hatch);
      maker_.keep_clear(foot, middle);
      return;
    }
  }

  SheetMaker& maker_;
  const SectionPicture& picture_;
  PaperBox room_;
  PictureLayout layout_;
  PaperMap map_;
};

}  // namespace

const DrawingScale& draw_section_picture(SheetMaker& maker, const SectionPicture& picture,
                                         const PaperBox& room) {
  return PictureMaker(maker, picture, room).draw();
}

SectionPlace section_place(const SectionPicture& picture, const PaperBox& room) {
  constexpr double kSlack_mm = 0.01;  ///< lest rounding take the scale away
  const PictureLayout layout = layout_of(picture, room);
  return {layout.scale, layout.scale->paper_per_mm * (layout.high.z - layout.low.z) + 2 * picture.rim_high_mm +
                            kNameRoom_mm + kSlack_mm};
}

}  // namespace prismwright
