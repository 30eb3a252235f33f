#pragma once

#include <string>
#include <vector>

namespace prismwright {

// What the book keeps of the works beside the ledger. Entries are only ever added; a correction is a new one.
// number and when_utc (ISO 8601) are given by the book. serial is the casting's number, 0 where none is named.

/// One filling of the pressure vessel. The ledger's lines that name its number tell which castings came of it.
struct VesselLoad {
  long long number = 0;
  std::string when_utc;
  std::string resin;
  std::string resin_lot;
  std::string tint;
  double resin_g = 0;
  double initiator_g = 0;
  double tint_g = 0;
  std::string by;
  std::string note;
};

/// One thing measured on a casting, against the drawing. `feature` is a key of core/works/inspection.h
/// ("width.A-B", "length", "laser"); `measured` is in that feature's unit.
struct Measurement {
  long long number = 0;
  std::string when_utc;
  std::string mark;
  long long serial = 0;
  std::string feature;
  double measured = 0;
  std::string by;
  std::string note;
};

/// What is done with a prism that is out of tolerance. The note gives the reason and is never empty.
enum class DecisionKind { accept, shim, scrap };
struct Decision {
  long long number = 0;
  std::string when_utc;
  std::string mark;
  long long serial = 0;
  DecisionKind kind = DecisionKind::accept;
  std::string by;
  std::string note;
};

/// A length measured on a master and on its casting.
enum class ShrinkDirection { length, depth, height };
struct ShrinkReading {
  long long number = 0;
  std::string when_utc;
  std::string piece;  ///< the master's name: see core/works/make_list.h
  ShrinkDirection direction = ShrinkDirection::length;
  double master_mm = 0;
  double casting_mm = 0;
  std::string resin;
  std::string resin_lot;
  std::string by;
  std::string note;
};

/// A photograph kept in the book. Its bytes are not held in memory: Lensbook::photograph_bytes reads them;
/// `bytes` is filled only on the way in.
struct Photograph {
  long long number = 0;
  std::string when_utc;
  std::string mark;
  long long serial = 0;
  std::string name;   ///< of the file it came from
  std::string media;  ///< "image/jpeg" or "image/png"
  std::string bytes;
  std::string by;
  std::string note;
};

/// Hours worked and money spent on a step of the plan. `step` is a word of core/works/work_plan.h.
struct Spending {
  long long number = 0;
  std::string when_utc;
  std::string step;
  double hours = 0;
  double money = 0;
  std::string by;
  std::string note;
};

struct WorksLog {
  std::vector<VesselLoad> loads;
  std::vector<Measurement> measurements;
  std::vector<Decision> decisions;
  std::vector<ShrinkReading> shrink;
  std::vector<Photograph> photographs;
  std::vector<Spending> spendings;

  [[nodiscard]] bool empty() const {
    return loads.empty() && measurements.empty() && decisions.empty() && shrink.empty() &&
           photographs.empty() && spendings.empty();
  }
};

}  // namespace prismwright
