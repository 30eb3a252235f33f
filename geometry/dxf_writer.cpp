#include "geometry/dxf_writer.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/text_box.h"

namespace prismwright {

namespace {

std::string pair_text(int number, const std::string& value) {
  return fmt::format("{:>3}\n{}\n", number, value);
}
std::string pair_text(int number, double value) { return pair_text(number, fmt::format("{:.12f}", value)); }
std::string pair_text(int number, int value) { return pair_text(number, std::to_string(value)); }

std::string section_text(const char* name, const std::string& body) {
  return pair_text(0, std::string("SECTION")) + pair_text(2, std::string(name)) + body +
         pair_text(0, std::string("ENDSEC"));
}

std::string table_text(const char* name, int count, const std::string& body) {
  return pair_text(0, std::string("TABLE")) + pair_text(2, std::string(name)) + pair_text(70, count) + body +
         pair_text(0, std::string("ENDTAB"));
}

std::string line_type(const char* name, const char* words, const std::vector<double>& dashes) {
  double length = 0;
  std::string body;
  for (const double dash : dashes) {
    length += std::abs(dash);
    body += pair_text(49, dash);
  }
  return pair_text(0, std::string("LTYPE")) + pair_text(2, std::string(name)) + pair_text(70, 0) +
         pair_text(3, std::string(words)) + pair_text(72, 65) + pair_text(73, static_cast<int>(dashes.size())) +
         pair_text(40, length) + body;
}

/// UTF-8 as ASCII with \U+XXXX. Letters beyond the first plane have no such form and become "?".
std::string ascii_words(const std::string& words) {
  std::string ascii;
  const std::string clean = clean_words(words);
  for (std::size_t i = 0; i < clean.size();) {
    const auto byte = [&](std::size_t k) {
      return static_cast<std::uint32_t>(static_cast<unsigned char>(clean[i + k]));
    };
    if (byte(0) < 0x80) {
      ascii += clean[i++];
    } else if (byte(0) < 0xE0) {
      ascii += fmt::format("\\U+{:04X}", (byte(0) & 0x1F) << 6 | (byte(1) & 0x3F));
      i += 2;
    } else if (byte(0) < 0xF0) {
      ascii += fmt::format("\\U+{:04X}", (byte(0) & 0x0F) << 12 | (byte(1) & 0x3F) << 6 | (byte(2) & 0x3F));
      i += 3;
    } else {
      ascii += '?';
      i += 4;
    }
  }
  return ascii;
}

double angle_deg(SectionPoint centre, SectionPoint place) {
  const double angle = degrees(std::atan2(place.z - centre.z, place.r - centre.r));
  return angle < 0 ? angle + 360 : angle;
}

}  // namespace

void DxfWriter::code(int number, const std::string& value) { entities_ += pair_text(number, value); }
void DxfWriter::code(int number, double value) { entities_ += pair_text(number, value); }

void DxfWriter::place(int number, SectionPoint p) {
  code(number, p.r);
  code(number + 10, p.z);
  code(number + 20, 0.0);
}

void DxfWriter::entity(const char* kind, const std::string& layer) {
  code(0, std::string(kind));
  code(8, layer);
}

void DxfWriter::add_layer(const std::string& name, int colour, bool centre_line) {
  layers_.push_back({name, colour, centre_line});
}

void DxfWriter::reach(SectionPoint p) {
  low_.r = std::min(low_.r, p.r);
  low_.z = std::min(low_.z, p.z);
  high_.r = std::max(high_.r, p.r);
  high_.z = std::max(high_.z, p.z);
}

void DxfWriter::add_line(const std::string& layer, SectionPoint from, SectionPoint to) {
  entity("LINE", layer);
  place(10, from);
  place(11, to);
  reach(from);
  reach(to);
}

void DxfWriter::add_piece(const std::string& layer, const ChainPiece& piece) {
  if (piece.straight()) return add_line(layer, piece.from, piece.to);
  entity("ARC", layer);
  place(10, piece.centre);
  code(40, piece.radius_mm);
  const double first = angle_deg(piece.centre, piece.from);
  const double last = angle_deg(piece.centre, piece.to);
  code(50, piece.turn > 0 ? first : last);
  code(51, piece.turn > 0 ? last : first);
  reach(piece.from);
  reach(piece.to);
}

void DxfWriter::add_circle(const std::string& layer, SectionPoint centre, double radius_mm) {
  entity("CIRCLE", layer);
  place(10, centre);
  code(40, radius_mm);
  reach(centre);
}

void DxfWriter::start_polyline(const std::string& layer, bool closed) {
  entity("POLYLINE", layer);
  entities_ += pair_text(66, 1);
  place(10, {});
  entities_ += pair_text(70, closed ? 1 : 0);
}

void DxfWriter::add_polygon(const std::string& layer, const std::vector<SectionPoint>& corners) {
  start_polyline(layer, true);
  for (const SectionPoint corner : corners) {
    entity("VERTEX", layer);
    place(10, corner);
    reach(corner);
  }
  entity("SEQEND", layer);
}

void DxfWriter::add_corner(const std::string& layer, PlatePoint corner, double bulge) {
  entity("VERTEX", layer);
  place(10, {corner.u, corner.v});
  if (bulge != 0) code(42, bulge);
  reach({corner.u, corner.v});
}

void DxfWriter::add_corners(const std::string& layer, const PlateChain& chain) {
  for (const PlateStep& step : chain) {
    // Half turns have the bulge 1; beyond them some programs lose the far side.
    const int parts = std::abs(step.turn) > kPi + 1e-9 ? 2 : 1;
    const double turn = step.turn / parts;
    add_corner(layer, step.from, std::tan(turn / 4));
    if (parts == 1) continue;
    const double du = step.from.u - step.centre.u;
    const double dv = step.from.v - step.centre.v;
    const PlatePoint middle = {step.centre.u + std::cos(turn) * du - std::sin(turn) * dv,
                               step.centre.v + std::sin(turn) * du + std::cos(turn) * dv};
    add_corner(layer, middle, std::tan(turn / 4));
  }
}

void DxfWriter::add_outline(const std::string& layer, const PlateChain& outline) {
  if (outline.empty()) return;
  start_polyline(layer, true);
  add_corners(layer, outline);
  entity("SEQEND", layer);
}

void DxfWriter::add_stroke(const std::string& layer, const PlateChain& stroke) {
  if (stroke.empty()) return;
  start_polyline(layer, false);
  add_corners(layer, stroke);
  add_corner(layer, stroke.back().to, 0);
  entity("SEQEND", layer);
}

void DxfWriter::add_text(const std::string& layer, SectionPoint where, double height_mm,
                         const std::string& words) {
  entity("TEXT", layer);
  place(10, where);
  code(40, height_mm);
  code(1, ascii_words(words));
  reach(where);
}

std::string DxfWriter::bytes() const {
  const auto corner = [](const char* name, SectionPoint p) {
    return pair_text(9, std::string(name)) + pair_text(10, p.r) + pair_text(20, p.z) + pair_text(30, 0.0);
  };
  const std::string header = pair_text(9, std::string("$ACADVER")) + pair_text(1, std::string("AC1009")) +
                             corner("$EXTMIN", low_) + corner("$EXTMAX", high_);
  std::string layers;
  for (const Layer& layer : layers_) {
    layers += pair_text(0, std::string("LAYER")) + pair_text(2, layer.name) + pair_text(70, 0) +
              pair_text(62, layer.colour) +
              pair_text(6, std::string(layer.centre_line ? "CENTER" : "CONTINUOUS"));
  }
  const std::string types =
      line_type("CONTINUOUS", "full", {}) + line_type("CENTER", "long and short", {24, -5, 3, -5});
  const std::string tables =
      table_text("LTYPE", 2, types) + table_text("LAYER", static_cast<int>(layers_.size()), layers);
  return section_text("HEADER", header) + section_text("TABLES", tables) + section_text("ENTITIES", entities_) +
         pair_text(0, std::string("EOF"));
}

}  // namespace prismwright
