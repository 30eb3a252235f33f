#include <string>

#include "core/lens/quantity_table.h"

namespace prismwright {
namespace {

using Rows = std::vector<QuantityRow>;
using W = WorksSettings;

/// Adds rows whose members are values of the works.
class WorksRows {
 public:
  explicit WorksRows(Rows& rows) : rows_(rows) {}

  void number(const char* key, const char* unit, double min, double max, double W::*member, const char* label,
              const char* meaning) {
    rows_.push_back({number_quantity(key, unit, min, max, label, meaning),
                     NumberPlace([member](LensValues& v) -> double& { return v.works.*member; })});
  }
  void blank(const char* key, const char* unit, double min, double max, std::optional<double> W::*member,
             const char* label, const char* meaning) {
    rows_.push_back(
        {blank_quantity(key, unit, min, max, label, meaning),
         BlankNumberPlace([member](LensValues& v) -> std::optional<double>& { return v.works.*member; })});
  }
  void count(const char* key, double min, double max, int W::*member, const char* label, const char* meaning) {
    Quantity quantity = number_quantity(key, "", min, max, label, meaning);
    quantity.form = QuantityForm::count;
    rows_.push_back({quantity, CountPlace([member](LensValues& v) -> int& { return v.works.*member; })});
  }
  void text(const char* key, std::string W::*member, const char* label, const char* meaning) {
    rows_.push_back({text_quantity(key, label, meaning),
                     TextPlace([member](LensValues& v) -> std::string& { return v.works.*member; })});
  }
  template <class Choice>
  void choice(const char* key, Choice W::*member, const char* label, const char* meaning) {
    rows_.push_back({choice_quantity(key, choice_words<Choice>(), label, meaning),
                     choice_place<Choice>([member](LensValues& v) -> Choice& { return v.works.*member; })});
  }

 private:
  Rows& rows_;
};

void add_resin(WorksRows& rows) {
  rows.text("works.resin", &W::resin, "Resin", "Name of the casting resin, for the record and the cards");
  rows.text("works.resin_batch", &W::resin_batch, "Resin lot",
            "Lot of the resin in use: factors of shrinkage are learned lot by lot");
  rows.number("works.resin_density_g_cm3", "g/cm3", 0.5, 2, &W::resin_density_g_cm3, "Resin density",
              "Of the liquid syrup as poured; monomer 0.943, solid 1.19 (handbooks)");
  rows.number("works.initiator_percent", "%", 0, 10, &W::initiator_percent, "Initiator",
              "Mass on that of the resin; the resin maker's sheet decides");
  rows.number("works.tint_percent", "%", 0, 10, &W::tint_percent, "Tint",
              "Mass of tint paste on that of the resin");
  rows.text("works.tint_name", &W::tint_name, "Tint paste", "Its name and lot, for the record");
  rows.number("works.shrink_length_percent", "%", -2, 15, &W::shrink_length_percent, "Shrinkage, length",
              "Of a casting on its master, along the prism; measure it (works shrink)");
  rows.number("works.shrink_depth_percent", "%", -2, 15, &W::shrink_depth_percent, "Shrinkage, depth",
              "Of a casting on its master, along the panel's axis");
  rows.number("works.shrink_height_percent", "%", -2, 15, &W::shrink_height_percent, "Shrinkage, height",
              "Of a casting on its master, upwards");
  rows.number("works.resin_head_percent", "%", 0, 200, &W::resin_head_percent, "Resin head",
              "Resin poured over the casting's own volume; monomer shrinks by 20.8 % in volume, syrup less");
}

void add_masters(WorksRows& rows) {
  rows.number("works.stock_mm", "mm", 0, 5, &W::stock_mm, "Sanding stock",
              "On each face that carries it, taken off again by sanding and polishing");
  rows.choice("works.stock_faces", &W::stock_faces, "Stock on",
              "Optical faces only, or all faces but the lands");
  rows.number("works.print_width_mm", "mm", 20, 5000, &W::print_width_mm, "Printer width",
              "Room of the printer that makes the masters");
  rows.number("works.print_depth_mm", "mm", 20, 5000, &W::print_depth_mm, "Printer depth",
              "Room of the printer that makes the masters");
  rows.number("works.print_height_mm", "mm", 20, 5000, &W::print_height_mm, "Printer height",
              "Room of the printer that makes the masters");
  rows.number("works.layer_mm", "mm", 0.005, 2, &W::layer_mm, "Layer",
              "Thickness of a printed layer: it sets the height of the steps on every face");
  rows.number("works.key_mm", "mm", 1, 100, &W::key_mm, "Key width",
              "Of the key in the joint of a master that is printed in parts");
  rows.number("works.key_gap_mm", "mm", 0, 2, &W::key_gap_mm, "Key gap", "Room round that key");
}

void add_moulds(WorksRows& rows) {
  rows.number("works.mould_wall_mm", "mm", 1, 200, &W::mould_wall_mm, "Mould wall",
              "Least tooling material round a casting");
  rows.number("works.mould_draft_deg", "deg", 0, 20, &W::mould_draft_deg, "Draft",
              "A face that leans less than this to the draw is told");
  rows.number("works.gate_mm", "mm", 1, 100, &W::gate_mm, "Pour gate", "Diameter");
  rows.number("works.vent_mm", "mm", 0.5, 50, &W::vent_mm, "Vents", "Diameter");
  rows.number("works.pin_mm", "mm", 1, 50, &W::pin_mm, "Register pins", "Diameter");
  rows.number("works.pin_gap_mm", "mm", 0, 2, &W::pin_gap_mm, "Pin gap",
              "Room round a register pin, on its radius");
  rows.count("works.mould_life", 1, 10000, &W::mould_life, "Mould life", "Castings that one mould stands");
  rows.choice("works.half_turn", &W::half_turn, "Turned twins",
              "Whether a prism shares the mould of one that becomes it when turned end for end; mirror images "
              "never do");
}

void add_castings(WorksRows& rows) {
  rows.number("works.scrap_percent", "%", 0, 90, &W::scrap_percent, "Scrap rate",
              "Share of castings that is expected to be lost");
  rows.number("works.vessel_diameter_mm", "mm", 20, 5000, &W::vessel_diameter_mm, "Vessel diameter",
              "Inside of the pressure vessel that the moulds stand in");
  rows.number("works.vessel_height_mm", "mm", 20, 5000, &W::vessel_height_mm, "Vessel height",
              "Inside height that moulds may fill");
  rows.number("works.load_spacing_mm", "mm", 0, 200, &W::load_spacing_mm, "Load spacing",
              "Between two moulds, and between mould and vessel");
  rows.number("works.thickness_ratio", "", 1, 20, &W::thickness_ratio, "Thickness ratio",
              "Of the thickest to the thinnest casting in one load, so that all cure alike");
  rows.blank("works.vessel_max_bar", "bar", 0, 100, &W::vessel_max_bar, "Vessel's pressure",
             "Greatest pressure on the vessel's plate, over the air's; the program never asks for more");
  rows.blank("works.vessel_max_c", "C", 0, 300, &W::vessel_max_c, "Vessel's temperature",
             "Greatest temperature on the vessel's plate; the program never asks for more");
  rows.blank("works.cure_bar", "bar", 0, 100, &W::cure_bar, "Cure pressure",
             "By the resin maker's sheet; must not pass the vessel's");
  rows.blank("works.cure_c", "C", 0, 300, &W::cure_c, "Cure temperature",
             "By the resin maker's sheet; must not pass the vessel's");
  rows.number("works.cure_h", "h", 0, 1000, &W::cure_h, "Cure time",
              "Under pressure, by the resin maker's sheet");
  rows.number("works.anneal_c", "C", 20, 150, &W::anneal_c, "Annealing",
              "Temperature of the oven; 80 by handbooks of cast acrylic sheet, the resin maker's sheet wins");
  rows.number("works.anneal_h_per_mm", "h/mm", 0, 20, &W::anneal_h_per_mm, "Annealing hold",
              "Hours for each mm of the thickest section; 1 by handbooks of cast sheet");
  rows.number("works.anneal_least_h", "h", 0, 1000, &W::anneal_least_h, "Least hold",
              "Shortest hold; 2 by handbooks of cast sheet");
  rows.number("works.heating_c_per_h", "C/h", 0.1, 200, &W::heating_c_per_h, "Heating",
              "Rate of the oven's rise");
  rows.blank("works.cooling_c_per_h", "C/h", 0.1, 200, &W::cooling_c_per_h, "Cooling",
             "Rate by the resin maker's sheet; blank: by thickness, from makers' tables of cast sheet");
  rows.number("works.take_out_c", "C", 0, 150, &W::take_out_c, "Take out",
              "Oven temperature below which castings may be taken out; 50 by handbooks");
  rows.number("works.room_c", "C", -20, 50, &W::room_c, "Room", "Temperature of the shop");
}

void add_inspection(WorksRows& rows) {
  rows.number("works.width_within_mm", "mm", 0.001, 10, &W::width_within_mm, "Widths within",
              "Tolerance of a width, corner to corner");
  rows.number("works.angle_within_deg", "deg", 0.001, 10, &W::angle_within_deg, "Angles within",
              "Tolerance of an angle between two faces");
  rows.number("works.radius_within_percent", "%", 0.001, 50, &W::radius_within_percent, "Radii within",
              "Tolerance of a radius, by template");
  rows.number("works.length_within_mm", "mm", 0.001, 50, &W::length_within_mm, "Lengths within",
              "Tolerance of a prism's length");
  rows.number("works.laser_within_deg", "deg", 0.001, 10, &W::laser_within_deg, "Laser within",
              "Tolerance of the bench laser's departure from level");
}

void add_hours(WorksRows& rows) {
  rows.number("works.master_h", "h", 0, 1000, &W::master_h, "A master",
              "Hours of hands to finish one, beside its printing");
  rows.number("works.print_cm3_per_h", "cm3/h", 0.01, 10000, &W::print_cm3_per_h, "Printing",
              "What the printer lays in an hour");
  rows.number("works.mould_h", "h", 0, 1000, &W::mould_h, "A mould", "Hours of hands");
  rows.number("works.load_h", "h", 0, 1000, &W::load_h, "A load",
              "Hours of hands to fill and empty the vessel once");
  rows.number("works.anneal_hand_h", "h", 0, 1000, &W::anneal_hand_h, "An oven load",
              "Hours of hands to fill and empty the oven once");
  rows.number("works.polish_h_per_dm2", "h/dm2", 0, 1000, &W::polish_h_per_dm2, "Polishing",
              "Hours of hands to sand and polish a square decimetre of optical face");
  rows.number("works.prove_h", "h", 0, 1000, &W::prove_h, "Proving",
              "Hours of hands for one prism on the bench");
  rows.number("works.glaze_h", "h", 0, 1000, &W::glaze_h, "Glazing", "Hours of hands for one prism");
  rows.number("works.frame_h", "h", 0, 100000, &W::frame_h, "The frame", "Hours of hands for all brass work");
  rows.number("works.hours_a_week", "h", 0.1, 10000, &W::hours_a_week, "Hours a week", "Of all hands together");
  rows.text("works.start_date", &W::start_date, "Start",
            "Day on which work starts, YYYY-MM-DD; blank: the day of the reckoning");
}

void add_money(WorksRows& rows) {
  rows.text("works.currency", &W::currency, "Currency", "Word or sign for the money below");
  rows.number("works.hour_cost", "", 0, 1e6, &W::hour_cost, "An hour", "Cost of an hour of hands");
  rows.number("works.resin_cost_per_kg", "", 0, 1e6, &W::resin_cost_per_kg, "Resin", "Cost of a kilogram");
  rows.number("works.print_cost_per_kg", "", 0, 1e6, &W::print_cost_per_kg, "Printing material",
              "Cost of a kilogram");
  rows.number("works.print_density_g_cm3", "g/cm3", 0.1, 20, &W::print_density_g_cm3, "Printing density",
              "Of the printing material");
  rows.number("works.tooling_cost_per_l", "", 0, 1e6, &W::tooling_cost_per_l, "Tooling material",
              "Cost of a litre");
  rows.number("works.brass_cost_per_kg", "", 0, 1e6, &W::brass_cost_per_kg, "Brass",
              "Cost of a kilogram of plate and bar");
}

}  // namespace

void add_works(Rows& all) {
  WorksRows rows(all);
  add_resin(rows);
  add_masters(rows);
  add_moulds(rows);
  add_castings(rows);
  add_inspection(rows);
  add_hours(rows);
  add_money(rows);
}

}  // namespace prismwright
