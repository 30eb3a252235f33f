#include "core/lens/quantity_table.h"

namespace prismwright {

namespace {

using Rows = std::vector<QuantityRow>;

/// Adds rows on members of one group of the values.
template <class Group>
class GroupRows {
 public:
  GroupRows(Rows& rows, Group LensValues::*group) : rows_(rows), group_(group) {}

  void number(const char* key, const char* unit, double min, double max, const char* label, const char* meaning,
              double Group::*member) {
    rows_.push_back({number_quantity(key, unit, min, max, label, meaning), NumberPlace(place(member))});
  }
  void count(const char* key, double min, double max, const char* label, const char* meaning,
             int Group::*member) {
    rows_.push_back(
        {{key, QuantityForm::count, "", min, max, false, {}, label, meaning}, CountPlace(place(member))});
  }
  void text(const char* key, const char* label, const char* meaning, std::string Group::*member) {
    rows_.push_back({text_quantity(key, label, meaning), TextPlace(place(member))});
  }
  template <class Choice>
  void choice(const char* key, const char* label, const char* meaning, Choice Group::*member) {
    rows_.push_back(
        {choice_quantity(key, choice_words<Choice>(), label, meaning), choice_place<Choice>(place(member))});
  }

 private:
  template <class Member>
  auto place(Member Group::*member) const {
    return [group = group_, member](LensValues& v) -> Member& { return (v.*group).*member; };
  }

  Rows& rows_;
  Group LensValues::*group_;
};

void add_lamp_place(GroupRows<Lamp>& lamp) {
  lamp.choice("lamp.set", "Lamps",
              "One in the focus; a ring of them all alight; or a changer with one alight and the others, dark, "
              "in the way",
              &Lamp::set);
  lamp.count("lamp.count", 1, 64, "How many", "Lamps of a ring or changer, the one alight included",
             &Lamp::count);
  lamp.number("lamp.ring_mm", "mm", 0, 1000, "Ring radius", "Of the ring of lamps, or of the changer's disc",
              &Lamp::ring_mm);
  lamp.number("lamp.facing_deg", "deg", -360, 360, "Faces", "Azimuth that a single flat lamp faces",
              &Lamp::facing_deg);
  lamp.number("lamp.facing_up_deg", "deg", -90, 90, "Faces up",
              "Elevation that a flat lamp faces; 90: it lies flat and shines up", &Lamp::facing_up_deg);
  lamp.number("lamp.aside_x_mm", "mm", -500, 500, "Off, along panel 1",
              "Place error of the lamp towards the axis of panel 1", &Lamp::aside_x_mm);
  lamp.number("lamp.aside_y_mm", "mm", -500, 500, "Off, to its left",
              "Place error of the lamp square to that axis, to the left seen from above", &Lamp::aside_y_mm);
}

void add_lamp_light(GroupRows<Lamp>& lamp) {
  lamp.choice("lamp.known", "Known by", "Whether the lamp's flux or its luminance is given", &Lamp::known);
  lamp.number("lamp.flux_lm", "lm", 0, 1e9, "Flux", "Luminous flux of one lamp", &Lamp::flux_lm);
  lamp.number("lamp.luminance_cd_mm2", "cd/mm2", 0, 1e6, "Luminance", "Of the shining surface, every way alike",
              &Lamp::luminance_cd_mm2);
  lamp.choice("lamp.light", "Spectrum",
              "Black body, CIE illuminant A, a generic white LED, one line, or points", &Lamp::light);
  lamp.number("lamp.temperature_k", "K", 1000, 20000, "Temperature", "Of a black body", &Lamp::temperature_k);
  lamp.number("lamp.line_nm", "nm", 400, 700, "Line", "Wavelength of a single line", &Lamp::line_nm);
  lamp.text("lamp.spectrum", "Spectrum points",
            "Relative power by wavelength in nm, for instance 400:0.1, 500:0.8, 600:1", &Lamp::spectrum);
}

void add_judging(GroupRows<LightSettings>& light) {
  light.number("light.glazing_factor", "", 0.1, 1, "Lantern glazing",
               "Share that the lantern's panes let through; common practice, from memory",
               &LightSettings::glazing_factor);
  light.number(
      "light.service_factor", "", 0.1, 1, "Service factor",
      "For dirt and age; 0.75: CCNR article 1.06, a fifth is deducted by Encyclopaedia Britannica 1911",
      &LightSettings::service_factor);
  light.number("light.threshold_lux", "lx", 1e-9, 1, "Threshold",
               "Illuminance that the eye needs; 2e-7 by night: COLREG Annex I, 33 CFR 84.14",
               &LightSettings::threshold_lux);
  light.number("light.visibility_nmi", "nmi", 0.05, 100, "Visibility",
               "Distance over which a twentieth of the light is left; nominal range: 10",
               &LightSettings::visibility_nmi);
  light.number("light.eye_height_m", "m", 0, 1000, "Eye height", "Of the observer over the sea",
               &LightSettings::eye_height_m);
  light.number("light.integration_s", "s", 0.01, 1, "Eye's constant",
               "The a of effective intensity; 0.2 by night: 33 CFR 66", &LightSettings::integration_s);
}

void add_screens(GroupRows<LightSettings>& light) {
  const char* meaning =
      "Transmittance by wavelength in nm, for instance 600:0.1, 620:0.7; blank: a generic screen";
  light.text("light.red_screen", "Red screen", meaning, &LightSettings::red_screen);
  light.text("light.green_screen", "Green screen", meaning, &LightSettings::green_screen);
  light.text("light.yellow_screen", "Yellow screen", meaning, &LightSettings::yellow_screen);
}

void add_errors(GroupRows<LightSettings>& light) {
  light.number("light.board_mm", "mm", 100, 1e5, "Board at",
               "Distance of the laser bench's board from the focus", &LightSettings::board_mm);
  light.number("light.tilt_error_deg", "deg", 0, 5, "Tilt error",
               "Standard deviation of a prism's tilt about its seat", &LightSettings::tilt_error_deg);
  light.number("light.shift_error_mm", "mm", 0, 20, "Shift error",
               "Standard deviation of a prism's place, outward and up", &LightSettings::shift_error_mm);
  light.number("light.face_error_deg", "deg", 0, 5, "Face error",
               "Standard deviation of the slope of each optical face", &LightSettings::face_error_deg);
  light.number("light.index_error", "", 0, 0.05, "Index error", "Standard deviation of the index",
               &LightSettings::index_error);
  light.number("light.lamp_error_mm", "mm", 0, 50, "Lamp error", "Standard deviation of the lamp's place",
               &LightSettings::lamp_error_mm);
  light.count("light.trials", 10, 10000, "Trials", "Of the Monte Carlo over the whole lens",
              &LightSettings::trials);
  light.count("light.seed", 0, 2147483647, "Seed", "Of its random numbers: the same seed, the same answer",
              &LightSettings::seed);
  light.number("light.sun_w_m2", "W/m2", 0, 1500, "Sunlight", "Square to its rays, for the heat at the focus",
               &LightSettings::sun_w_m2);
}

}  // namespace

void add_tint(Rows& rows) {
  GroupRows<Material> material(rows, &LensValues::material);
  material.number("material.absorption_per_m", "1/m", 0, 200, "Absorption",
                  "Natural logarithm of the light lost inside per metre of path; 0: clear",
                  &Material::absorption_per_m);
  material.text("material.tint", "Tint",
                "Transmittance inside by wavelength in nm, for instance 400:0.90, 700:0.99; blank: none",
                &Material::tint);
  material.number("material.tint_mm", "mm", 0.1, 1000, "Tint's thickness",
                  "Thickness for which the tint's points hold", &Material::tint_mm);
}

void add_lamp(Rows& rows) {
  GroupRows<Lamp> lamp(rows, &LensValues::lamp);
  lamp.choice("lamp.shape", "Lamp", "Upright cylinder, sphere, flat disc or flat tile", &Lamp::shape);
  lamp.number("lamp.height_mm", "mm", 0, 1000, "Lamp height",
              "Of what shines, upright on the lens axis (cylinder, tile); 0: a point", &Lamp::height_mm);
  lamp.number("lamp.width_mm", "mm", 0.1, 1000, "Lamp width", "Across what shines", &Lamp::width_mm);
  lamp.number("lamp.above_mm", "mm", -500, 500, "Lamp over focus",
              "Height of the lamp's middle over the principal focus", &Lamp::above_mm);
  add_lamp_place(lamp);
  add_lamp_light(lamp);
}

void add_light(Rows& rows) {
  GroupRows<LightSettings> light(rows, &LensValues::light);
  light.number("light.turn_s", "s", 0, 3600, "Turn", "Time of one turn of the lens; 0: it does not turn",
               &LightSettings::turn_s);
  light.choice("light.turn_way", "Turns", "Seen from above", &LightSettings::turn_way);
  add_judging(light);
  add_screens(light);
  add_errors(light);
}

}  // namespace prismwright
