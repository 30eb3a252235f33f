#include "core/book/migrations.h"

#include "core/book/works_schema.h"

namespace prismwright {

// kMigrations[i] leads from version i + 1 to i + 2. New columns go to the end of their table, so that the undo
// steps of the older version still apply. The UPDATE after ADD COLUMN writes the default into the row itself:
// without it SQLite 3.40 hands NULL for that column to the session that records an edit.
const std::array<const char*, kBookVersion - 1> kMigrations = {
    R"sql(
ALTER TABLE section ADD COLUMN level_within_deg REAL NOT NULL DEFAULT 0.5;
UPDATE section SET level_within_deg = 0.5;
ALTER TABLE frame ADD COLUMN heat_range_k REAL NOT NULL DEFAULT 30;
UPDATE frame SET heat_range_k = 30;
ALTER TABLE ledger ADD COLUMN back_to_stage TEXT;
)sql",
    R"sql(
ALTER TABLE section ADD COLUMN land_a_mm REAL;
ALTER TABLE section ADD COLUMN land_a_shape TEXT NOT NULL DEFAULT 'flat';
ALTER TABLE section ADD COLUMN land_b_mm REAL;
ALTER TABLE section ADD COLUMN land_b_shape TEXT NOT NULL DEFAULT 'flat';
ALTER TABLE section ADD COLUMN land_c_mm REAL;
ALTER TABLE section ADD COLUMN land_c_shape TEXT NOT NULL DEFAULT 'flat';
ALTER TABLE section ADD COLUMN refracting_division TEXT NOT NULL DEFAULT 'thickness';
ALTER TABLE section ADD COLUMN refracting_count INTEGER NOT NULL DEFAULT 6;
ALTER TABLE section ADD COLUMN refracting_rows TEXT NOT NULL DEFAULT '';
ALTER TABLE section ADD COLUMN refracting_faces TEXT NOT NULL DEFAULT 'as_section';
ALTER TABLE section ADD COLUMN refracting_turning TEXT NOT NULL DEFAULT 'as_work';
ALTER TABLE section ADD COLUMN refracting_focus_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE section ADD COLUMN refracting_aim_deg REAL;
ALTER TABLE section ADD COLUMN upper_division TEXT NOT NULL DEFAULT 'side';
ALTER TABLE section ADD COLUMN upper_count INTEGER NOT NULL DEFAULT 12;
ALTER TABLE section ADD COLUMN upper_side_mm REAL;
ALTER TABLE section ADD COLUMN upper_thickness_mm REAL NOT NULL DEFAULT 20;
ALTER TABLE section ADD COLUMN upper_rows TEXT NOT NULL DEFAULT '';
ALTER TABLE section ADD COLUMN upper_power TEXT NOT NULL DEFAULT 'reflecting';
ALTER TABLE section ADD COLUMN upper_faces TEXT NOT NULL DEFAULT 'as_section';
ALTER TABLE section ADD COLUMN upper_turning TEXT NOT NULL DEFAULT 'as_work';
ALTER TABLE section ADD COLUMN upper_focus_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE section ADD COLUMN upper_aim_deg REAL;
ALTER TABLE section ADD COLUMN lower_division TEXT NOT NULL DEFAULT 'side';
ALTER TABLE section ADD COLUMN lower_count INTEGER NOT NULL DEFAULT 6;
ALTER TABLE section ADD COLUMN lower_side_mm REAL;
ALTER TABLE section ADD COLUMN lower_thickness_mm REAL NOT NULL DEFAULT 20;
ALTER TABLE section ADD COLUMN lower_rows TEXT NOT NULL DEFAULT '';
ALTER TABLE section ADD COLUMN lower_power TEXT NOT NULL DEFAULT 'reflecting';
ALTER TABLE section ADD COLUMN lower_faces TEXT NOT NULL DEFAULT 'as_section';
ALTER TABLE section ADD COLUMN lower_turning TEXT NOT NULL DEFAULT 'as_work';
ALTER TABLE section ADD COLUMN lower_focus_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE section ADD COLUMN lower_aim_deg REAL;
ALTER TABLE section ADD COLUMN pair_radius_mm REAL;
ALTER TABLE section ADD COLUMN upper_rib_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE section ADD COLUMN lower_rib_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE section ADD COLUMN rib_inner_r_mm REAL;
ALTER TABLE section ADD COLUMN rib_outer_r_mm REAL;
ALTER TABLE section ADD COLUMN aim TEXT NOT NULL DEFAULT 'level';
UPDATE section SET land_a_shape = 'flat', land_b_shape = 'flat', land_c_shape = 'flat',
  refracting_division = 'thickness', refracting_count = 6, refracting_rows = '',
  refracting_faces = 'as_section', refracting_turning = 'as_work', refracting_focus_mm = 0,
  upper_division = 'side', upper_count = 12, upper_thickness_mm = 20, upper_rows = '',
  upper_power = 'reflecting', upper_faces = 'as_section', upper_turning = 'as_work', upper_focus_mm = 0,
  lower_division = 'side', lower_count = 6, lower_thickness_mm = 20, lower_rows = '',
  lower_power = 'reflecting', lower_faces = 'as_section', lower_turning = 'as_work', lower_focus_mm = 0,
  upper_rib_mm = 0, lower_rib_mm = 0, aim = 'level';
ALTER TABLE brief ADD COLUMN height_m REAL NOT NULL DEFAULT 0;
UPDATE brief SET height_m = 0;
ALTER TABLE material ADD COLUMN temperature_c REAL NOT NULL DEFAULT 20;
ALTER TABLE material ADD COLUMN index_per_k REAL;
ALTER TABLE material ADD COLUMN wavelength_nm REAL NOT NULL DEFAULT 587.6;
UPDATE material SET temperature_c = 20, wavelength_nm = 587.6;
CREATE TABLE lamp (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  height_mm REAL NOT NULL,
  above_mm REAL NOT NULL);
INSERT INTO lamp SELECT 1, 0, 0 FROM brief;
CREATE TABLE variant (
  name TEXT PRIMARY KEY NOT NULL,
  when_utc TEXT NOT NULL,
  texts TEXT NOT NULL);
)sql",
    R"sql(
ALTER TABLE material ADD COLUMN absorption_per_m REAL NOT NULL DEFAULT 0;
ALTER TABLE material ADD COLUMN tint TEXT NOT NULL DEFAULT '';
ALTER TABLE material ADD COLUMN tint_mm REAL NOT NULL DEFAULT 10;
UPDATE material SET absorption_per_m = 0, tint = '', tint_mm = 10;
ALTER TABLE section ADD COLUMN inner_face TEXT NOT NULL DEFAULT 'hollow';
UPDATE section SET inner_face = 'hollow';
ALTER TABLE panel ADD COLUMN screen TEXT NOT NULL DEFAULT 'none';
UPDATE panel SET screen = 'none';
ALTER TABLE lamp ADD COLUMN shape TEXT NOT NULL DEFAULT 'cylinder';
ALTER TABLE lamp ADD COLUMN width_mm REAL NOT NULL DEFAULT 8;
ALTER TABLE lamp ADD COLUMN "set" TEXT NOT NULL DEFAULT 'one';
ALTER TABLE lamp ADD COLUMN "count" INTEGER NOT NULL DEFAULT 1;
ALTER TABLE lamp ADD COLUMN ring_mm REAL NOT NULL DEFAULT 20;
ALTER TABLE lamp ADD COLUMN facing_deg REAL NOT NULL DEFAULT 0;
ALTER TABLE lamp ADD COLUMN facing_up_deg REAL NOT NULL DEFAULT 0;
ALTER TABLE lamp ADD COLUMN aside_x_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE lamp ADD COLUMN aside_y_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE lamp ADD COLUMN known TEXT NOT NULL DEFAULT 'flux';
ALTER TABLE lamp ADD COLUMN flux_lm REAL NOT NULL DEFAULT 2000;
ALTER TABLE lamp ADD COLUMN luminance_cd_mm2 REAL NOT NULL DEFAULT 1;
ALTER TABLE lamp ADD COLUMN light TEXT NOT NULL DEFAULT 'illuminant_a';
ALTER TABLE lamp ADD COLUMN temperature_k REAL NOT NULL DEFAULT 2856;
ALTER TABLE lamp ADD COLUMN line_nm REAL NOT NULL DEFAULT 587.6;
ALTER TABLE lamp ADD COLUMN spectrum TEXT NOT NULL DEFAULT '';
UPDATE lamp SET shape = 'cylinder', width_mm = 8, "set" = 'one', "count" = 1, ring_mm = 20,
  facing_deg = 0, facing_up_deg = 0, aside_x_mm = 0, aside_y_mm = 0, known = 'flux',
  flux_lm = 2000, luminance_cd_mm2 = 1, light = 'illuminant_a', temperature_k = 2856, line_nm = 587.6, spectrum = '';
CREATE TABLE light (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  turn_s REAL NOT NULL,
  turn_way TEXT NOT NULL,
  glazing_factor REAL NOT NULL,
  service_factor REAL NOT NULL,
  threshold_lux REAL NOT NULL,
  visibility_nmi REAL NOT NULL,
  eye_height_m REAL NOT NULL,
  integration_s REAL NOT NULL,
  red_screen TEXT NOT NULL,
  green_screen TEXT NOT NULL,
  yellow_screen TEXT NOT NULL,
  board_mm REAL NOT NULL,
  tilt_error_deg REAL NOT NULL,
  shift_error_mm REAL NOT NULL,
  face_error_deg REAL NOT NULL,
  index_error REAL NOT NULL,
  lamp_error_mm REAL NOT NULL,
  trials INTEGER NOT NULL,
  seed INTEGER NOT NULL,
  sun_w_m2 REAL NOT NULL);
INSERT INTO light SELECT 1, 0, 'clockwise', 0.85, 0.75, 2e-7, 10, 5, 0.2, '', '', '', 5000, 0.05, 0.2, 0.02, 0.0005, 0.5, 200, 1, 900 FROM brief;
)sql",
    R"sql(
CREATE TABLE bench_readings (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  mark TEXT NOT NULL,
  height_mm REAL NOT NULL,
  aside_mm REAL NOT NULL,
  board_mm REAL NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER bench_keeps_its_readings BEFORE UPDATE ON bench_readings
  BEGIN SELECT RAISE(ABORT, 'a reading of the bench is never changed: add a new one'); END;
CREATE TRIGGER bench_loses_no_reading BEFORE DELETE ON bench_readings
  BEGIN SELECT RAISE(ABORT, 'a reading of the bench is never taken out: add a new one'); END;
CREATE TRIGGER bench_replaces_no_reading BEFORE INSERT ON bench_readings
  WHEN EXISTS (SELECT 1 FROM bench_readings WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a reading of the bench is never replaced: add a new one'); END;
)sql",
    R"sql(
ALTER TABLE frame ADD COLUMN shim_mm REAL NOT NULL DEFAULT 0.2;
ALTER TABLE frame ADD COLUMN glazing_mm REAL NOT NULL DEFAULT 0.2;
ALTER TABLE frame ADD COLUMN moisture_percent REAL NOT NULL DEFAULT 0.1;
ALTER TABLE frame ADD COLUMN least_brass_mm REAL NOT NULL DEFAULT 1.5;
ALTER TABLE frame ADD COLUMN least_landing_mm REAL NOT NULL DEFAULT 1;
ALTER TABLE frame ADD COLUMN inside_radius_mm REAL NOT NULL DEFAULT 0.5;
ALTER TABLE frame ADD COLUMN rail_mm REAL NOT NULL DEFAULT 8;
ALTER TABLE frame ADD COLUMN base_mm REAL NOT NULL DEFAULT 8;
ALTER TABLE frame ADD COLUMN finial_mm REAL NOT NULL DEFAULT 5;
ALTER TABLE frame ADD COLUMN spacer_mm REAL NOT NULL DEFAULT 20;
ALTER TABLE frame ADD COLUMN screw_mm REAL NOT NULL DEFAULT 3;
ALTER TABLE frame ADD COLUMN dowel_mm REAL NOT NULL DEFAULT 3;
ALTER TABLE frame ADD COLUMN door_panel INTEGER NOT NULL DEFAULT 0;
ALTER TABLE frame ADD COLUMN door_hinge TEXT NOT NULL DEFAULT 'left';
ALTER TABLE frame ADD COLUMN door_gap_mm REAL NOT NULL DEFAULT 0.5;
ALTER TABLE frame ADD COLUMN hinge_pin_mm REAL NOT NULL DEFAULT 5;
ALTER TABLE frame ADD COLUMN door_open_deg REAL NOT NULL DEFAULT 90;
ALTER TABLE frame ADD COLUMN changer_radius_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE frame ADD COLUMN changer_from_mm REAL NOT NULL DEFAULT -100;
ALTER TABLE frame ADD COLUMN changer_to_mm REAL NOT NULL DEFAULT 60;
ALTER TABLE frame ADD COLUMN lantern_radius_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE frame ADD COLUMN pedestal_radius_mm REAL NOT NULL DEFAULT 0;
ALTER TABLE frame ADD COLUMN pedestal_top_mm REAL NOT NULL DEFAULT -400;
ALTER TABLE frame ADD COLUMN room_round_mm REAL NOT NULL DEFAULT 5;
ALTER TABLE frame ADD COLUMN sheet_width_mm REAL NOT NULL DEFAULT 1000;
ALTER TABLE frame ADD COLUMN sheet_height_mm REAL NOT NULL DEFAULT 600;
ALTER TABLE frame ADD COLUMN sheet_spacing_mm REAL NOT NULL DEFAULT 6;
UPDATE frame SET shim_mm = 0.2, glazing_mm = 0.2, moisture_percent = 0.1, least_brass_mm = 1.5,
  least_landing_mm = 1, inside_radius_mm = 0.5, rail_mm = 8, base_mm = 8, finial_mm = 5, spacer_mm = 20,
  screw_mm = 3, dowel_mm = 3, door_panel = 0, door_hinge = 'left', door_gap_mm = 0.5, hinge_pin_mm = 5,
  door_open_deg = 90, changer_radius_mm = 0, changer_from_mm = -100, changer_to_mm = 60, lantern_radius_mm =
  0, pedestal_radius_mm = 0, pedestal_top_mm = -400, room_round_mm = 5, sheet_width_mm = 1000,
  sheet_height_mm = 600, sheet_spacing_mm = 6;
)sql", kWorksTables};

}  // namespace prismwright
