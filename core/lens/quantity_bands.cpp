#include <fmt/format.h>

#include <algorithm>

#include "core/lens/quantity_table.h"
#include "core/lens/zone_rows.h"

namespace prismwright {

namespace {

using Rows = std::vector<QuantityRow>;

std::string key_of(Band band, const char* name) { return fmt::format("section.{}_{}", name_of(band), name); }

bool locked(const ZoneRow& row) { return row.locked; }

/// A rule keeps the locked rows only: the others were zones by hand.
SpecialPlace division_place(Band band) {
  const auto member = [band](LensValues& v) -> Division& { return v.section.of(band).division; };
  SpecialPlace place = choice_place<Division>(member);
  place.write = [band, write = place.write](LensValues& v, const std::string& text) -> Done {
    const Done done = write(v, text);
    BandSettings& settings = v.section.of(band);
    if (settings.division != Division::by_hand) std::erase_if(settings.rows, std::not_fn(locked));
    return done;
  };
  return place;
}

/// Rows that are not all locked are a band by hand.
SpecialPlace rows_place(Band band) {
  return {[band](const LensValues& v) { return rows_text(v.section.of(band).rows); },
          [band](LensValues& v, const std::string& text) -> Done {
            auto rows = read_rows(text);
            if (!rows) {
              Problem problem = rows.problem();
              problem.where = key_of(band, "rows");
              return problem;
            }
            BandSettings& settings = v.section.of(band);
            settings.rows = std::move(*rows);
            if (!std::all_of(settings.rows.begin(), settings.rows.end(), locked))
              settings.division = Division::by_hand;
            return {};
          }};
}

std::vector<std::string> divisions_of(Band band) {
  std::vector<std::string> words = choice_words<Division>();
  if (band == Band::refracting) std::erase(words, word_of(Division::side));
  return words;
}

void add_division(Rows& rows, Band band) {
  const bool refracting = band == Band::refracting;
  rows.push_back(
      {choice_quantity(key_of(band, "division"), divisions_of(band), "Divided by",
                       refracting ? "Rule that divides the band: greatest glass thickness, or so many zones "
                                    "equally thick (count), of equal section area or height; by_hand: its rows"
                                  : "Rule that divides the prisms: one entry side, greatest section thickness, "
                                    "or so many of equal entry sides (count), section area or height; by_hand: "
                                    "its rows"),
       division_place(band)});
  Quantity count{key_of(band, "count"),
                 QuantityForm::count,
                 "",
                 1,
                 60,
                 false,
                 {},
                 "Zones",
                 "How many, for division by count, area or height; locked ones included"};
  rows.push_back({count, CountPlace([band](LensValues& v) -> int& { return v.section.of(band).count; })});
  if (!refracting) {
    rows.push_back({blank_quantity(key_of(band, "side_mm"), "mm", 2, 500, "Entry side",
                                   "Of these prisms, for division by side; blank: section.reflecting_chord_mm"),
                    BlankNumberPlace([band](LensValues& v) -> std::optional<double>& {
                      return v.section.of(band).side_mm;
                    })});
    rows.push_back(
        {number_quantity(key_of(band, "thickness_mm"), "mm", 1, 300, "Thickest section",
                         "What the caster allows, as the circle inside a prism's section; for division by "
                         "thickness"),
         NumberPlace([band](LensValues& v) -> double& { return v.section.of(band).section_thickness_mm; })});
  }
  Quantity list =
      text_quantity(key_of(band, "rows"), "Zones by hand",
                    refracting ? "One by one from the axis: to 12.5; margin 139.7; locked ones say from "
                                 "which elevation"
                               : "One by one outward: side 30; to 45; thick 18; locked ones say where "
                                 "corner A stands");
  rows.push_back({list, rows_place(band)});
}

void add_shape(Rows& rows, Band band) {
  if (band != Band::refracting) {
    rows.push_back({choice_quantity(key_of(band, "power"), choice_words<Power>(), "Power in",
                                    "Face that carries the power, the others being straight; hollow_entry and "
                                    "hollow_exit: the historic pair of one radius with a reflecting arc"),
                    choice_place<Power>([band](LensValues& v) -> Power& { return v.section.of(band).power; })});
  }
  rows.push_back(
      {choice_quantity(key_of(band, "faces"), choice_words<BandFaces>(), "Curves",
                       "True curves or historic arcs in this band; as_section: as the whole section"),
       choice_place<BandFaces>([band](LensValues& v) -> BandFaces& { return v.section.of(band).faces; })});
  rows.push_back(
      {choice_quantity(
           key_of(band, "turning"), choice_words<BandTurning>(), "Turned about",
           "The panel's own level axis or the upright lens axis; as_work: as bull's-eye or belt work has "
           "it"),
       choice_place<BandTurning>(
           [band](LensValues& v) -> BandTurning& { return v.section.of(band).turning; })});
}

void add_band_aim(Rows& rows, Band band) {
  rows.push_back(
      {number_quantity(key_of(band, "focus_mm"), "mm", -300, 300, "Own focal point",
                       "Height of this band's focal point over the principal focus; historic practice "
                       "raised it for flames"),
       NumberPlace([band](LensValues& v) -> double& { return v.section.of(band).focus_z_mm; })});
  rows.push_back({blank_quantity(key_of(band, "aim_deg"), "deg", -5, 5, "Own aim",
                                 "Depression of this band's beam; blank: as the whole section"),
                  BlankNumberPlace(
                      [band](LensValues& v) -> std::optional<double>& { return v.section.of(band).aim_deg; })});
}

void add_land(Rows& rows, const char* name, const char* label, const char* place,
              CornerLand SectionSettings::*member) {
  rows.push_back({blank_quantity(fmt::format("section.land_{}_mm", name), "mm", 0, 50, label, place),
                  BlankNumberPlace([member](LensValues& v) -> std::optional<double>& {
                    return (v.section.*member).size_mm;
                  })});
  rows.push_back(
      {choice_quantity(fmt::format("section.land_{}_shape", name), choice_words<LandShape>(), "Its shape",
                       "A flat of that width, or a rounding of that radius"),
       choice_place<LandShape>([member](LensValues& v) -> LandShape& { return (v.section.*member).shape; })});
}

}  // namespace

void add_lands(Rows& rows) {
  add_land(rows, "a", "Land, outer lower", "Corner A of a prism, between entry and exit; blank: as Land",
           &SectionSettings::land_a);
  add_land(rows, "b", "Land, inner", "Corner B, between entry and reflecting face; blank: as Land",
           &SectionSettings::land_b);
  add_land(rows, "c", "Land, outer upper", "Corner C, between reflecting face and exit; blank: as Land",
           &SectionSettings::land_c);
}

void add_bands(Rows& rows) {
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    add_division(rows, band);
    add_shape(rows, band);
    add_band_aim(rows, band);
  }
  rows.push_back(
      {blank_quantity(
           "section.pair_radius_mm", "mm", 20, 100000, "Radius of the pair",
           "Of the hollow and the full side; blank: 4000 mm of the first order (Stevenson 1848), scaled "
           "to this focal distance"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.section.pair_radius_mm; })});
}

void add_ribs_and_aim(Rows& rows) {
  rows.push_back(
      {number_quantity("section.upper_rib_mm", "mm", 0, 100, "Upper rib",
                       "Thickness of the level metal between refracting band and upper prisms; 0: none"),
       NumberPlace([](LensValues& v) -> double& { return v.section.upper_rib_mm; })});
  rows.push_back({number_quantity("section.lower_rib_mm", "mm", 0, 100, "Lower rib",
                                  "The same between refracting band and lower prisms; 0: none"),
                  NumberPlace([](LensValues& v) -> double& { return v.section.lower_rib_mm; })});
  rows.push_back(
      {blank_quantity("section.rib_inner_r_mm", "mm", 10, 5000, "Ribs from",
                      "Distance of their inner edge from the lens axis; blank: the focal distance"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.section.rib_inner_r_mm; })});
  rows.push_back(
      {blank_quantity(
           "section.rib_outer_r_mm", "mm", 10, 5000, "Ribs to",
           "Distance of their outer edge from the lens axis; blank: the outer edge of the last ring"),
       BlankNumberPlace([](LensValues& v) -> std::optional<double>& { return v.section.rib_outer_r_mm; })});
  rows.push_back({choice_quantity("section.aim", choice_words<AimAt>(), "Beam to",
                                  "Level, or down to the sea horizon seen from the height of the focal plane"),
                  choice_place<AimAt>([](LensValues& v) -> AimAt& { return v.section.aim_at; })});
}

}  // namespace prismwright
