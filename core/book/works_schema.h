#pragma once

namespace prismwright {

/// What the seventh version brought: values of the works, serial number and load in the ledger, and the
/// records beside it, which are only ever added to.
inline constexpr const char* kWorksTables = R"sql(
CREATE TABLE works (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  resin TEXT NOT NULL,
  resin_batch TEXT NOT NULL,
  resin_density_g_cm3 REAL NOT NULL,
  initiator_percent REAL NOT NULL,
  tint_percent REAL NOT NULL,
  tint_name TEXT NOT NULL,
  shrink_length_percent REAL NOT NULL,
  shrink_depth_percent REAL NOT NULL,
  shrink_height_percent REAL NOT NULL,
  resin_head_percent REAL NOT NULL,
  stock_mm REAL NOT NULL,
  stock_faces TEXT NOT NULL,
  print_width_mm REAL NOT NULL,
  print_depth_mm REAL NOT NULL,
  print_height_mm REAL NOT NULL,
  layer_mm REAL NOT NULL,
  key_mm REAL NOT NULL,
  key_gap_mm REAL NOT NULL,
  mould_wall_mm REAL NOT NULL,
  mould_draft_deg REAL NOT NULL,
  gate_mm REAL NOT NULL,
  vent_mm REAL NOT NULL,
  pin_mm REAL NOT NULL,
  pin_gap_mm REAL NOT NULL,
  mould_life INTEGER NOT NULL,
  half_turn TEXT NOT NULL,
  scrap_percent REAL NOT NULL,
  vessel_diameter_mm REAL NOT NULL,
  vessel_height_mm REAL NOT NULL,
  load_spacing_mm REAL NOT NULL,
  thickness_ratio REAL NOT NULL,
  vessel_max_bar REAL,
  vessel_max_c REAL,
  cure_bar REAL,
  cure_c REAL,
  cure_h REAL NOT NULL,
  anneal_c REAL NOT NULL,
  anneal_h_per_mm REAL NOT NULL,
  anneal_least_h REAL NOT NULL,
  heating_c_per_h REAL NOT NULL,
  cooling_c_per_h REAL,
  take_out_c REAL NOT NULL,
  room_c REAL NOT NULL,
  width_within_mm REAL NOT NULL,
  angle_within_deg REAL NOT NULL,
  radius_within_percent REAL NOT NULL,
  length_within_mm REAL NOT NULL,
  laser_within_deg REAL NOT NULL,
  master_h REAL NOT NULL,
  print_cm3_per_h REAL NOT NULL,
  mould_h REAL NOT NULL,
  load_h REAL NOT NULL,
  anneal_hand_h REAL NOT NULL,
  polish_h_per_dm2 REAL NOT NULL,
  prove_h REAL NOT NULL,
  glaze_h REAL NOT NULL,
  frame_h REAL NOT NULL,
  hours_a_week REAL NOT NULL,
  start_date TEXT NOT NULL,
  currency TEXT NOT NULL,
  hour_cost REAL NOT NULL,
  resin_cost_per_kg REAL NOT NULL,
  print_cost_per_kg REAL NOT NULL,
  print_density_g_cm3 REAL NOT NULL,
  tooling_cost_per_l REAL NOT NULL,
  brass_cost_per_kg REAL NOT NULL);
INSERT INTO works SELECT
  1, '', '', 0.98, 0.5, 0.0, '', 0.4, 0.4, 0.4, 25, 0.3, 'optical', 220, 220, 250, 0.05, 8, 0.15,
  12, 0.5, 12, 3, 8, 0.1, 25, 'own', 10, 400, 400, 10, 1.5, NULL, NULL, NULL, NULL, 12, 80, 1, 2,
  20, NULL, 50, 20, 0.1, 0.1, 0.5, 0.3, 0.1, 1.5, 15, 3, 2, 0.5, 1, 0.25, 0.5, 60, 40, '', 'EUR',
  45, 12, 40, 1.15, 25, 14
  FROM brief;
ALTER TABLE ledger ADD COLUMN serial INTEGER;
ALTER TABLE ledger ADD COLUMN load INTEGER;
CREATE TABLE vessel_loads (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  resin TEXT NOT NULL,
  resin_lot TEXT NOT NULL,
  tint TEXT NOT NULL,
  resin_g REAL NOT NULL,
  initiator_g REAL NOT NULL,
  tint_g REAL NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER vessel_loads_are_kept BEFORE UPDATE ON vessel_loads
  BEGIN SELECT RAISE(ABORT, 'a load is never changed: add a new one'); END;
CREATE TRIGGER vessel_loads_are_not_lost BEFORE DELETE ON vessel_loads
  BEGIN SELECT RAISE(ABORT, 'a load is never taken out: add a new one'); END;
CREATE TRIGGER vessel_loads_are_not_replaced BEFORE INSERT ON vessel_loads
  WHEN EXISTS (SELECT 1 FROM vessel_loads WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a load is never replaced: add a new one'); END;
CREATE TABLE measurements (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  mark TEXT NOT NULL,
  serial INTEGER NOT NULL,
  feature TEXT NOT NULL,
  measured REAL NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER measurements_are_kept BEFORE UPDATE ON measurements
  BEGIN SELECT RAISE(ABORT, 'a measurement is never changed: add a new one'); END;
CREATE TRIGGER measurements_are_not_lost BEFORE DELETE ON measurements
  BEGIN SELECT RAISE(ABORT, 'a measurement is never taken out: add a new one'); END;
CREATE TRIGGER measurements_are_not_replaced BEFORE INSERT ON measurements
  WHEN EXISTS (SELECT 1 FROM measurements WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a measurement is never replaced: add a new one'); END;
CREATE TABLE decisions (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  mark TEXT NOT NULL,
  serial INTEGER NOT NULL,
  kind TEXT NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER decisions_are_kept BEFORE UPDATE ON decisions
  BEGIN SELECT RAISE(ABORT, 'a decision is never changed: add a new one'); END;
CREATE TRIGGER decisions_are_not_lost BEFORE DELETE ON decisions
  BEGIN SELECT RAISE(ABORT, 'a decision is never taken out: add a new one'); END;
CREATE TRIGGER decisions_are_not_replaced BEFORE INSERT ON decisions
  WHEN EXISTS (SELECT 1 FROM decisions WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a decision is never replaced: add a new one'); END;
CREATE TABLE shrink_readings (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  piece TEXT NOT NULL,
  direction TEXT NOT NULL,
  master_mm REAL NOT NULL,
  casting_mm REAL NOT NULL,
  resin TEXT NOT NULL,
  resin_lot TEXT NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER shrink_readings_are_kept BEFORE UPDATE ON shrink_readings
  BEGIN SELECT RAISE(ABORT, 'a reading of shrinkage is never changed: add a new one'); END;
CREATE TRIGGER shrink_readings_are_not_lost BEFORE DELETE ON shrink_readings
  BEGIN SELECT RAISE(ABORT, 'a reading of shrinkage is never taken out: add a new one'); END;
CREATE TRIGGER shrink_readings_are_not_replaced BEFORE INSERT ON shrink_readings
  WHEN EXISTS (SELECT 1 FROM shrink_readings WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a reading of shrinkage is never replaced: add a new one'); END;
CREATE TABLE photographs (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  mark TEXT NOT NULL,
  serial INTEGER NOT NULL,
  name TEXT NOT NULL,
  media TEXT NOT NULL,
  bytes BLOB NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER photographs_are_kept BEFORE UPDATE ON photographs
  BEGIN SELECT RAISE(ABORT, 'a photograph is never changed: add a new one'); END;
CREATE TRIGGER photographs_are_not_lost BEFORE DELETE ON photographs
  BEGIN SELECT RAISE(ABORT, 'a photograph is never taken out: add a new one'); END;
CREATE TRIGGER photographs_are_not_replaced BEFORE INSERT ON photographs
  WHEN EXISTS (SELECT 1 FROM photographs WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'a photograph is never replaced: add a new one'); END;
CREATE TABLE spendings (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  when_utc TEXT NOT NULL,
  step TEXT NOT NULL,
  hours REAL NOT NULL,
  money REAL NOT NULL,
  by_name TEXT NOT NULL,
  note TEXT NOT NULL);
CREATE TRIGGER spendings_are_kept BEFORE UPDATE ON spendings
  BEGIN SELECT RAISE(ABORT, 'an entry of hours and money is never changed: add a new one'); END;
CREATE TRIGGER spendings_are_not_lost BEFORE DELETE ON spendings
  BEGIN SELECT RAISE(ABORT, 'an entry of hours and money is never taken out: add a new one'); END;
CREATE TRIGGER spendings_are_not_replaced BEFORE INSERT ON spendings
  WHEN EXISTS (SELECT 1 FROM spendings WHERE number = NEW.number)
  BEGIN SELECT RAISE(ABORT, 'an entry of hours and money is never replaced: add a new one'); END;
)sql";

}  // namespace prismwright
