#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/lens/plan.h"
#include "core/works/mould_facts.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// A master that wants a mould. The solid lies in the frame of the prism's panel (X along the panel's axis, Z
/// up), before it is turned to its azimuth: as prism_shape gives it, or the master of it with its stock.
struct MouldOrder {
  PlannedPrism prism;  ///< names the faces; its mark and shape key name the mould
  TopoDS_Shape master;
};

/// A two-part mould. All solids lie in the master's frame, each one valid closed solid.
struct Mould {
  MouldFacts facts;
  TopoDS_Shape master;  ///< as ordered
  TopoDS_Shape lower;   ///< with the pins
  TopoDS_Shape upper;   ///< lifted along facts.draw.along
};

/// What came of an order: a mould, or why there is none.
struct MouldAnswer {
  std::string mark;
  std::string shape_key;
  std::optional<Mould> mould;
  std::optional<Problem> problem;  ///< code "mould"; blank when there is a mould
  DrawFacts draw;  ///< the best draw, with its undercuts: of the mould, or the best there is when it has none
};

/// Makes a mould: draw, parting, halves, openings, pins, all checked by the kernel (valid, closed, volumes
/// that add up to 1e-4 of the block). Where vents or gate as wide as asked would cut a half apart, such
/// down to half as wide are tried, and a thicker wall: the facts tell what was made. Settings out of their
/// ranges are refused by the answer's problem.
MouldAnswer make_mould(const MouldOrder& order, const WorksSettings& settings);

/// Makes moulds and keeps them by shape key, volume of the master and the settings that shape a mould, so that
/// an edit remakes what it touched. Two threads share the work. One caller at a time; stopped by Progress
/// (Trouble::stopped; what was made is kept). The answers come in the order of the orders.
class MouldShop {
 public:
  MouldShop();
  ~MouldShop();
  Outcome<std::vector<MouldAnswer>> make(const std::vector<MouldOrder>& orders, const WorksSettings& settings,
                                         const Progress& progress = {});
  /// How many moulds the last call had to make anew.
  [[nodiscard]] int made_anew() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
