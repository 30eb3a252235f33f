#include "core/drawing/zone_tables.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/inches.h"
#include "core/drawing/arc_chain.h"
#include "core/drawing/length_sentences.h"
#include "core/drawing/round_words.h"
#include "core/optics/face_words.h"

namespace prismwright {

namespace {

using Kind = TableLine::Kind;

std::string area_words(double area, LengthWords lengths) {
  return lengths.inches ? decimals(area / kSquareInch_mm2, 4) : decimals(area, 2);
}

/// Tolerances are a few ten thousandths of a millimetre and more.
std::string tolerance_words(double mm, LengthWords lengths) {
  return lengths.inches ? decimals(mm / kInch_mm, 6) + " in" : shortest(mm) + " mm";
}

std::vector<std::string> corner_cells(SectionPoint p, LengthWords lengths) {
  return {lengths.exact(p.r), lengths.exact(p.z)};
}

TableLine face_row(const std::string& number, const std::string& face, const std::string& shape,
                   const ChainPiece& piece, LengthWords lengths) {
  TableLine row{Kind::row, {number, face, shape}};
  for (std::string& cell : corner_cells(piece.from, lengths)) row.cells.push_back(std::move(cell));
  add_round(row.cells, piece, lengths);
  return row;
}

void add_true_face(TableBlock& block, const std::string& number, const Face& face, LengthWords lengths,
                   double tolerance_mm) {
  const auto chain = arcs_of(face, tolerance_mm);
  TableLine row{Kind::row, {number, words_of(face.role), fmt::format("true curve: {} arcs", chain.size())}};
  for (std::string& cell : corner_cells(face.start(), lengths)) row.cells.push_back(std::move(cell));
  block.lines.push_back(std::move(row));
  for (std::size_t i = 0; i < chain.size(); ++i) {
    block.lines.push_back(face_row(
        "", "", fmt::format("{} of {}: {}", i + 1, chain.size(), round_words(chain[i])), chain[i], lengths));
  }
  const SingleArc single = best_arc(face);
  TableLine best{Kind::row, {"", "", "or one, off " + departure_words(single.departs_mm, lengths), "", ""}};
  add_round(best.cells, single.piece, lengths);
  block.lines.push_back(std::move(best));
}

/// A band's own focal point and aim, where it has them.
void add_band_words(TableBlock& block, const Section& section, Band band, LengthWords lengths) {
  const BandAim aim = band_aim(section.input, band);
  if (aim.focus_z_mm != 0) {
    add_words(block, fmt::format("The focal point of the {} band stands {} {} {} the principal focus; its "
                                 "limits are seen from there.",
                                 name_of(band), lengths.plain(std::abs(aim.focus_z_mm)), lengths.unit(),
                                 aim.focus_z_mm > 0 ? "above" : "below"));
  }
  if (aim.aim_deg != 0) {
    add_words(block, fmt::format("The beam of the {} band is aimed {} degrees {} level.", name_of(band),
                                 degrees_words(std::abs(aim.aim_deg)), aim.aim_deg > 0 ? "below" : "above"));
  }
}

std::string outline_heading(const SectionImage& image) {
  const Zone& zone = *image.zone;
  if (image.lower_image)
    return fmt::format("{}, below the focal plane, {} to {} deg", image.mark, degrees_words(image.from_deg),
                       degrees_words(image.to_deg));
  std::string below;
  if (zone.kind == ZoneKind::ring && !zone.lower_image) {
    below = image.mark == zone.mark
                ? "; below the focal plane its mirror image"
                : fmt::format("; {}b, below the focal plane, is its mirror image", zone.mark);
  }
  return fmt::format("{}   {}, {} to {} deg{}", image.mark, name_of(zone.kind), degrees_words(zone.from_deg),
                     degrees_words(zone.to_deg), below);
}

}  // namespace

TableBlock zone_list(const Section& section, const std::vector<SectionImage>& images, LengthWords lengths,
                     double tolerance_mm) {
  TableBlock block;
  block.columns = {{18}, {40}, {26, true}, {26, true}, {38, true}, {40, true}};
  block.lines.push_back({Kind::heading, {"Zones"}});
  block.lines.push_back({Kind::head,
                         {"zone", "kind", "from deg", "to deg", fmt::format("thickness {}", lengths.unit()),
                          lengths.inches ? "section area sq in" : "section area mm\u00B2"}});
  for (const Zone& zone : section.zones) {
    block.lines.push_back(
        {Kind::row,
         {zone.mark, std::string(name_of(zone.kind)), degrees_words(zone.from_deg), degrees_words(zone.to_deg),
          lengths.exact(zone.thickness_mm), area_words(area_mm2(zone.profile), lengths)}});
  }
  block.lines.push_back({Kind::words, {""}});
  add_words(block,
            "Thickness: the greatest along r of refracting zones, the reflecting face from corner to corner of "
            "the others.");
  if (std::ranges::any_of(images, [](const SectionImage& image) { return image.mark != image.zone->mark; })) {
    add_words(block,
              "A ring of two pieces has the letter a above the focal plane and b below it, as in the marks of "
              "prisms.");
  }
  add_words(block,
            fmt::format(
                "Outlines: r from the lens axis, z from the focal plane, in {}. Each face runs from its corner "
                "to the corner of the next, anticlockwise, the last one to the first. Full: bulges out of the "
                "glass; hollow: into it. True curves are given as arcs that touch each other, nowhere farther "
                "from the curve than {}, and as the one arc through both ends that departs least.",
                lengths.inches ? "inches" : "mm", tolerance_words(tolerance_mm, lengths)));
  for (const Band band : {Band::refracting, Band::upper, Band::lower})
    add_band_words(block, section, band, lengths);
  for (const std::string& note : section.notes) add_words(block, sentence_in(lengths, note));
  return block;
}

TableBlock outline_table(const SectionImage& image, LengthWords lengths, double tolerance_mm) {
  TableBlock block;
  block.columns = {{7}, {23}, {38}, {22, true}, {22, true}, {25, true}, {25, true}, {26, true}};
  block.lines.push_back({Kind::heading, {outline_heading(image)}});
  block.lines.push_back({Kind::head, {"", "face", "shape", "r", "z", "radius", "centre r", "centre z"}});
  int number = 0;
  for (const Face& face : image.profile.faces) {
    const std::string count = std::to_string(++number);
    if (face.kind == FaceKind::true_curve) {
      add_true_face(block, count, face, lengths, tolerance_mm);
      continue;
    }
    const ChainPiece piece = arcs_of(face).front();
    block.lines.push_back(face_row(count, words_of(face.role), round_words(piece), piece, lengths));
  }
  return block;
}

TableBlock rib_table(const SectionRib& rib, LengthWords lengths) {
  TableBlock block;
  block.columns = {{7}, {23}, {38}, {22, true}, {22, true}};
  block.lines.push_back({Kind::heading, {rib.mark + "   metal"}});
  block.lines.push_back({Kind::head, {"", "", "", "r", "z"}});
  int number = 0;
  for (const SectionPoint p :
       {rib.low, SectionPoint{rib.high.r, rib.low.z}, rib.high, SectionPoint{rib.low.r, rib.high.z}}) {
    block.lines.push_back(
        {Kind::row, {std::to_string(++number), "side", "straight", lengths.exact(p.r), lengths.exact(p.z)}});
  }
  return block;
}

}  // namespace prismwright
