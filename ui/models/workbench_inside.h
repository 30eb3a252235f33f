#pragma once

#include <QTimer>
#include <memory>
#include <optional>

#include "ui/models/lens_maker.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// Plan, proof and tracer that belong together.
struct WorkedOut {
  std::shared_ptr<const LensPlan> plan;
  std::shared_ptr<const Proof> proof;
  std::shared_ptr<const SectionTracer> tracer;

  explicit operator bool() const { return plan != nullptr; }
};
/// Section, proof and plan of the values.
Outcome<WorkedOut> work_out(const LensValues& values);

/// What the workbench holds; shared by the files that it is written in.
struct Workbench::Inside {
  std::optional<Lensbook> book;
  LensValues no_values;
  WorkedOut present;                          ///< of the book's values, or of the last ones that gave a section
  WorkedOut preview;                          ///< shown in its place while something is tried; else empty
  std::shared_ptr<const LensPlan> facets_of;  ///< the plan that `facets` were traced for
  std::vector<FacetDeparture> facets;
  std::optional<Problem> problem;
  std::shared_ptr<const MadeLens> made;
  bool stale = false;
  bool making = false;
  int job = 0;
  StageByMark stages;
  QStringList selection;
  bool inches = false;
  QTimer rest;
  std::unique_ptr<LensMaker> maker;

  [[nodiscard]] const WorkedOut& shown() const { return preview ? preview : present; }
  void workOut();
  void readStages();
  void dropLostSelection();
  /// Everything that follows from the values is worked out anew, the solids after a short rest.
  void afterValues();
};

}  // namespace prismwright
