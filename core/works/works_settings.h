#pragma once

#include <optional>
#include <string>

namespace prismwright {

/// Which faces of a prism carry sanding stock on its master: the optical ones, or all but the lands.
enum class StockFaces { optical, all };

/// Whether a prism may be cast in the mould of one that becomes it when turned end for end (half a turn about
/// the panel's axis). A casting does not mind; gate, vents and marks then lie at its other end.
enum class HalfTurn { own, shared };

/// What a maker decides about masters, moulds, castings, time and money. Ranges and meanings stand in the
/// quantity table (works.*). Percent of shrinkage are of the master's length: casting = master (1 - s / 100).
struct WorksSettings {
  // Resin: as its maker's sheet says.
  std::string resin;                   ///< name of the resin
  std::string resin_batch;             ///< lot
  double resin_density_g_cm3 = 0.98;   ///< of the liquid syrup, as poured
  double initiator_percent = 0.5;      ///< mass of initiator on that of resin
  double tint_percent = 0.0;           ///< mass of tint paste on that of resin
  std::string tint_name;               ///< words for the record
  double shrink_length_percent = 0.4;  ///< along the prism (tangent at its middle)
  double shrink_depth_percent = 0.4;   ///< along the panel's axis, seaward
  double shrink_height_percent = 0.4;  ///< upwards
  double resin_head_percent = 25;      ///< resin poured over the casting's own volume, for shrinkage and gate

  // Masters.
  double stock_mm = 0.3;  ///< sanding stock on each face that carries it
  StockFaces stock_faces = StockFaces::optical;
  double print_width_mm = 220;  ///< of the printer's room
  double print_depth_mm = 220;
  double print_height_mm = 250;
  double layer_mm = 0.05;
  double key_mm = 8;         ///< width of the key in a joint of a master that is printed in parts
  double key_gap_mm = 0.15;  ///< room round the key

  // Moulds.
  double mould_wall_mm = 12;     ///< least tooling material round a casting
  double mould_draft_deg = 0.5;  ///< a face steeper to the draw than this counts as undercut
  double gate_mm = 12;           ///< diameter of the pour gate
  double vent_mm = 3;            ///< diameter of the vents
  double pin_mm = 8;             ///< diameter of the register pins
  double pin_gap_mm = 0.1;       ///< room round them, on the radius
  int mould_life = 25;           ///< castings that one mould stands
  HalfTurn half_turn = HalfTurn::own;

  // Castings.
  double scrap_percent = 10;             ///< castings that are expected to be lost
  double vessel_diameter_mm = 400;       ///< inside
  double vessel_height_mm = 400;         ///< inside, that moulds may fill
  double load_spacing_mm = 10;           ///< between moulds in the vessel
  double thickness_ratio = 1.5;          ///< of the thickest to the thinnest casting in one load
  std::optional<double> vessel_max_bar;  ///< as its plate says; blank: not entered
  std::optional<double> vessel_max_c;
  std::optional<double> cure_bar;  ///< as the resin maker's sheet says
  std::optional<double> cure_c;
  double cure_h = 12;
  double anneal_c = 80;
  double anneal_h_per_mm = 1;  ///< holding, by the thickest section
  double anneal_least_h = 2;
  double heating_c_per_h = 20;
  std::optional<double> cooling_c_per_h;  ///< resin maker's; blank: by thickness, from the published table
  double take_out_c = 50;
  double room_c = 20;

  // Inspection.
  double width_within_mm = 0.1;   ///< corner to corner in the section
  double angle_within_deg = 0.1;  ///< face angles
  double radius_within_percent = 0.5;
  double length_within_mm = 0.3;
  double laser_within_deg = 0.1;  ///< bench laser, departure from level

  // Time: hours of hands at work unless said.
  double master_h = 1.5;        ///< finishing one master, beside printing
  double print_cm3_per_h = 15;  ///< printer
  double mould_h = 3;
  double load_h = 2;            ///< filling and emptying one load
  double anneal_hand_h = 0.5;   ///< one load of the oven
  double polish_h_per_dm2 = 1;  ///< sanding and polishing, by optical face
  double prove_h = 0.25;
  double glaze_h = 0.5;
  double frame_h = 60;       ///< all brass work of the lens
  double hours_a_week = 40;  ///< of all hands together
  std::string start_date;    ///< YYYY-MM-DD; empty: the day of the reckoning

  // Money.
  std::string currency = "EUR";
  double hour_cost = 45;
  double resin_cost_per_kg = 12;
  double print_cost_per_kg = 40;
  double print_density_g_cm3 = 1.15;
  double tooling_cost_per_l = 25;
  double brass_cost_per_kg = 14;
};

}  // namespace prismwright
