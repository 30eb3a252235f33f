#include "core/lens/quantity_table.h"

#include <cmath>

#include "core/lens/orders.h"
#include "core/optics/medium.h"

namespace prismwright {

Quantity text_quantity(std::string key, const char* label, const char* meaning) {
  return {std::move(key), QuantityForm::text, "", 0, 0, true, {}, label, meaning};
}

Quantity number_quantity(std::string key, const char* unit, double min, double max, const char* label,
                         const char* meaning) {
  return {std::move(key), QuantityForm::number, unit, min, max, false, {}, label, meaning};
}

Quantity blank_quantity(std::string key, const char* unit, double min, double max, const char* label,
                        const char* meaning) {
  return {std::move(key), QuantityForm::number, unit, min, max, true, {}, label, meaning};
}

Quantity choice_quantity(std::string key, std::vector<std::string> choices, const char* label,
                         const char* meaning) {
  return {std::move(key), QuantityForm::choice, "", 0, 0, false, std::move(choices), label, meaning};
}

namespace {

std::vector<std::string> order_keys() {
  std::vector<std::string> keys;
  for (const Order& order : orders()) keys.emplace_back(order.key);
  return keys;
}

std::vector<std::string> medium_names() {
  std::vector<std::string> names;
  for (const Medium& medium : media()) names.push_back(medium.name());
  return names;
}

SpecialPlace order_place() {
  return {[](const LensValues& v) { return v.brief.order; },
          [](LensValues& v, const std::string& text) -> Done {
            if (v.brief.order == text) return {};
            const Order* order = find_order(text);
            v.brief.order = order->key;
            v.brief.focal_mm = order->focal_mm;
            v.section.edge_mm = order->edge_mm;
            v.section.ring_growth_mm = std::round(2.6 * order->focal_mm) / 100;  // in whole hundredths of a mm
            v.section.reflecting_chord_mm = order->reflecting_chord_mm;
            return {};
          }};
}

SpecialPlace material_place() {
  return {[](const LensValues& v) { return v.material.name; },
          [](LensValues& v, const std::string& text) -> Done {
            if (v.material.name == text) return {};
            v.material.name = text;
            v.material.index.reset();
            v.material.index_per_k.reset();
            v.material.density_g_cm3 = find_medium(text)->density_g_cm3();
            return {};
          }};
}

using Rows = std::vector<QuantityRow>;

void add_brief(Rows& rows) {
  rows.push_back({text_quantity("brief.title", "Title", "What the lens is called on every paper"),
                  TextPlace([](LensValues& v) -> std::string& { return v.brief.title; })});
  rows.push_back({text_quantity("brief.client", "Client", "Who ordered it"),
                  TextPlace([](LensValues& v) -> std::string& { return v.brief.client; })});
  rows.push_back(
      {choice_quantity(
           "brief.order", order_keys(), "Order",
           "Order of the lens; choosing one brings its focal distance, edge, ring growth and entry side"),
       order_place()});
  rows.push_back({number_quantity("brief.focal_mm", "mm", 50, 3000, "Focal distance",
                                  "From the focus to the flat inner face of the refracting band; orders: "
                                  "Encyclopaedia Britannica 1911"),
                  NumberPlace([](LensValues& v) -> double& { return v.brief.focal_mm; })});
  rows.push_back(
      {choice_quantity(
           "brief.work", choice_words<Work>(), "Work",
           "Bull's-eye work is turned about each panel's own axis, belt work about the upright lens axis"),
       choice_place<Work>([](LensValues& v) -> Work& { return v.brief.work; })});
  rows.push_back({{"brief.panels",
                   QuantityForm::count,
                   "",
                   2,
                   32,
                   false,
                   {},
                   "Panels",
                   "Number of panels; a new number makes them equal"},
                  panel_count_place()});
  rows.push_back(
      {text_quantity("brief.character", "Character", "As in a list of lights, for instance Fl(2) 10s"),
       TextPlace([](LensValues& v) -> std::string& { return v.brief.character; })});
  rows.push_back({number_quantity("brief.height_m", "m", 0, 2000, "Height over the sea",
                                  "Of the focal plane; the depression of the sea horizon follows from it"),
                  NumberPlace([](LensValues& v) -> double& { return v.brief.height_m; })});
  rows.push_back({text_quantity("brief.notes", "Notes", "Anything that whoever works on the lens should know"),
                  TextPlace([](LensValues& v) -> std::string& { return v.brief.notes; })});
}

void add_panels(Rows& rows) {
  rows.push_back({{"panels.widths_deg",
                   QuantityForm::number_list,
                   "deg",
                   1,
                   180,
                   false,
                   {},
                   "Panel widths",
                   "Width of each panel, anticlockwise from panel 1; they add to 360 deg"},
                  panel_widths_place()});
  rows.push_back(
      {{"panels.axis_shift_deg",
        QuantityForm::number_list,
        "deg",
        -90,
        90,
        true,
        {},
        "Axis shifts",
        "Azimuth of each panel's axis less that of its middle; the spacing of the axes makes the rhythm"},
       panel_shifts_place()});
  rows.push_back({{"panels.blind",
                   QuantityForm::flag_list,
                   "",
                   1,
                   32,
                   true,
                   {},
                   "Blind panels",
                   "Numbers of the panels that hold no prisms"},
                  blind_panels_place()});
  const auto screened = [&rows](const char* key, const char* label, Screen screen) {
    rows.push_back({{key,
                     QuantityForm::flag_list,
                     "",
                     1,
                     32,
                     true,
                     {},
                     label,
                     "Numbers of the panels that have a screen of this colour before them"},
                    screened_panels_place(screen)});
  };
  screened("panels.red", "Red panels", Screen::red);
  screened("panels.green", "Green panels", Screen::green);
  screened("panels.yellow", "Yellow panels", Screen::yellow);
}

void add_material(Rows& rows) {
  rows.push_back({choice_quantity("material.name", medium_names(), "Material",
                                  "What the prisms are made of; choosing one brings its own index and density"),
                  material_place()});
  rows.push_back({blank_quantity("material.index", "", 1.3, 2.0, "Measured index",
                                 "Index of this batch at 587.6 nm; blank: by the material's formula"),
                  BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.material.index; })});
  rows.push_back(
      {number_quantity("material.density_g_cm3", "g/cm3", 0.5, 8, "Density", "For the mass of the prisms"),
       NumberPlace([](LensValues& v) -> double& { return v.material.density_g_cm3; })});
}

void add_material_light(Rows& rows) {
  rows.push_back(
      {number_quantity("material.temperature_c", "C", -60, 90, "Temperature",
                       "At which the lens will stand; the index changes with it. Formulas and measured "
                       "index hold at 20 C"),
       NumberPlace([](LensValues& v) -> double& { return v.material.temperature_c; })});
  rows.push_back(
      {blank_quantity("material.index_per_k", "", -1e-3, 1e-3, "Index per kelvin",
                      "Change of the index with temperature; blank: the material's (acrylic -1.05e-4)"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.material.index_per_k; })});
  rows.push_back(
      {number_quantity("material.wavelength_nm", "nm", 400, 1000, "Design wavelength",
                       "That the section is worked out for; 587.6: yellow helium line, the usual one"),
       NumberPlace([](LensValues& v) -> double& { return v.material.wavelength_nm; })});
}

void add_section_faces(Rows& rows) {
  rows.push_back(
      {choice_quantity("section.faces", {"true", "arc"}, "Curved faces",
                       "True curves send every focal ray level; arcs are the historic way and depart a little"),
       choice_place<Faces>([](LensValues& v) -> Faces& { return v.section.faces; })});
  rows.push_back({choice_quantity("section.joint", {"along_ray", "level"}, "Joints of rings",
                                  "Along the ray inside the glass no light is lost in the joint; level joints "
                                  "are older practice and lose some"),
                  choice_place<Joint>([](LensValues& v) -> Joint& { return v.section.joint; })});
  rows.push_back(
      {choice_quantity(
           "section.inner_face", choice_words<InnerFace>(), "Inner face of a belt",
           "Hollow about the lens axis, or flat in each panel at the focal distance: the curves are then "
           "right at each panel's middle and depart towards its sides. A band turned about the "
           "panel's axis is flat inside anyway"),
       choice_place<InnerFace>([](LensValues& v) -> InnerFace& { return v.section.inner_face; })});
  rows.push_back({number_quantity("section.edge_mm", "mm", 0.5, 60, "Edge thickness",
                                  "Thickness of a refracting ring at its thin upper edge, measured level"),
                  NumberPlace([](LensValues& v) -> double& { return v.section.edge_mm; })});
  rows.push_back(
      {number_quantity("section.ring_growth_mm", "mm", 0.5, 200, "Ring growth",
                       "How much thicker than its edge a ring may get where the band is divided automatically"),
       NumberPlace([](LensValues& v) -> double& { return v.section.ring_growth_mm; })});
  rows.push_back({number_quantity("section.land_mm", "mm", 0, 50, "Land",
                                  "Size of the flat or rounding on each corner of a reflecting prism: a sharp "
                                  "corner can be neither printed nor cast"),
                  NumberPlace([](LensValues& v) -> double& { return v.section.land_mm; })});
  rows.push_back(
      {number_quantity("section.gap_mm", "mm", 0, 20, "Setting gap", "Room between neighbouring prisms"),
       NumberPlace([](LensValues& v) -> double& { return v.section.gap_mm; })});
}

void add_section_limits(Rows& rows) {
  rows.push_back({number_quantity("section.refracting_to_deg", "deg", 2, 60, "Refracting band to",
                                  "Elevation to which the band reaches above and below level; 28.5: "
                                  "Encyclopaedia Britannica 1911, p. 639"),
                  NumberPlace([](LensValues& v) -> double& { return v.section.refracting_to_deg; })});
  rows.push_back(
      {{"section.refracting_margins_mm",
        QuantityForm::number_list,
        "mm",
        1,
        5000,
        true,
        {},
        "Ring margins",
        "Rising heights at the edge depth at which the centre and each ring end; blank: divided automatically"},
       NumbersPlace([](LensValues& v) -> std::vector<double>& { return v.section.refracting_margins_mm; })});
  rows.push_back(
      {number_quantity("section.upper_to_deg", "deg", 2, 85, "Upper prisms to",
                       "Elevation to which the upper reflecting prisms reach; equal to the band's limit: none"),
       NumberPlace([](LensValues& v) -> double& { return v.section.upper_to_deg; })});
  rows.push_back({number_quantity(
                      "section.lower_to_deg", "deg", 2, 85, "Lower prisms to",
                      "Depression to which the lower reflecting prisms reach; equal to the band's limit: none"),
                  NumberPlace([](LensValues& v) -> double& { return v.section.lower_to_deg; })});
  rows.push_back(
      {number_quantity("section.reflecting_chord_mm", "mm", 2, 500, "Entry side",
                       "Length of the entry side of a reflecting prism; only the last of a stack is cut short"),
       NumberPlace([](LensValues& v) -> double& { return v.section.reflecting_chord_mm; })});
  rows.push_back(
      {blank_quantity(
           "section.upper_start_r_mm", "mm", 10, 5000, "First upper corner, out",
           "Corner A of the first upper prism, distance from the lens axis; blank: from the last ring"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.section.upper_start_r_mm; })});
  rows.push_back(
      {blank_quantity(
           "section.upper_start_z_mm", "mm", 1, 5000, "First upper corner, up",
           "Corner A of the first upper prism, height over the focal plane; blank: from the last ring"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.section.upper_start_z_mm; })});
  rows.push_back(
      {number_quantity(
           "section.level_within_deg", "deg", 0.01, 5, "Counts as level within",
           "A ray that departs by no more counts as level; a lamp's own size spreads the beam by more"),
       NumberPlace([](LensValues& v) -> double& { return v.section.level_within_deg; })});
}

}  // namespace

const std::vector<QuantityRow>& quantity_rows() {
  static const Rows all = [] {
    Rows rows;
    add_brief(rows);
    add_panels(rows);
    add_material(rows);
    add_material_light(rows);
    add_section_faces(rows);
    add_lands(rows);
    add_section_limits(rows);
    add_bands(rows);
    add_ribs_and_aim(rows);
    add_tint(rows);
    add_lamp(rows);
    add_light(rows);
    add_frame(rows);
    add_works(rows);
    return rows;
  }();
  return all;
}

}  // namespace prismwright
