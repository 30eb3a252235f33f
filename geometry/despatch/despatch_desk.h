#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/drawing/drawing.h"
#include "core/lens/plan.h"
#include "core/light/bench_reading.h"
#include "core/papers/estimate.h"
#include "core/works/ledger.h"
#include "core/works/works_log.h"
#include "geometry/bodies.h"
#include "geometry/clearances.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

/// The book as it is to go out, and what of it is made already (null: it is made when needed).
struct DespatchSource {
  std::shared_ptr<const LensPlan> plan;
  std::string book_name;  ///< of the book's file, without folder and ending
  std::vector<LedgerEntry> ledger;
  WorksLog log;
  std::vector<BenchReading> readings;
  /// The bytes of a photograph kept in the book; may be empty, then no photographs go out. Called from the
  /// thread that packs.
  std::function<Outcome<std::string>(long long number)> photograph;
  std::shared_ptr<const LensBodies> bodies;
  std::shared_ptr<const FramePlan> frame;
  std::shared_ptr<const std::vector<FrameBody>> metal;
  std::shared_ptr<const std::vector<Clearance>> clearances;
};

/// How the papers are wanted.
struct PaperChoice {
  std::string date;            ///< YYYY-MM-DD
  std::string revision;        ///< of what is drawn anew; empty: the letter after the last pack's
  std::optional<Paper> paper;  ///< blank: A4 or A3 as each thing needs
  bool inches = false;
  EstimateChoice estimate;

  bool operator==(const PaperChoice&) const = default;
};

/// The groups of what goes out, in the order in which they are shown; each is a folder of the pack, or files at
/// its top.
enum class DespatchGroup {
  prisms,    ///< prisms/MARK.step
  panels,    ///< panels/P01.step: a panel's prisms and brass
  lens,      ///< lens.step
  frame,     ///< frame/: frame.step, machined parts
  cutting,   ///< cutting/: DXF of plates and nests
  masters,   ///< masters/: STEP, STL, 3MF, sheets of what to measure
  drawings,  ///< drawings/: PDF and SVG
  lists,     ///< lists/: prisms, parts, sheets, make list, clearances (CSV)
  light,     ///< light/: report (PDF, CSV)
  record,    ///< record/: ledger and what was written down beside it (CSV), photographs
  dossier,   ///< owners-dossier.pdf
  estimate,  ///< estimate.pdf
  pictures,  ///< pictures/: PNG
};
inline constexpr int kDespatchGroups = 13;
const char* name_of(DespatchGroup group);   ///< "prisms", ...: one word, used on the command line and in files
const char* words_of(DespatchGroup group);  ///< "Prism solids", ...
std::optional<DespatchGroup> find_despatch_group(std::string_view name);

/// One thing that goes out: its files are written together, and kept from the last pack while its key stays.
struct DespatchPiece {
  DespatchGroup group = DespatchGroup::prisms;
  std::string name;       ///< "P01-U07", "general-arrangement"
  std::string words;      ///< "Prism P01-U07", "General arrangement"
  std::string key;        ///< of everything that its files come from
  bool is_paper = false;  ///< a drawing: paper() gives its sheets
  std::string withheld;  ///< why it does not go out (a clash that it has a part in), a sentence; empty: it goes
};

/// Everything that goes out of one book, each thing made when it is first asked for and then kept. For one
/// worker thread at a time.
class DespatchDesk {
 public:
  DespatchDesk(DespatchSource source, PaperChoice choice);
  ~DespatchDesk();
  DespatchDesk(DespatchDesk&&) noexcept;

  /// All pieces in the order of groups. Needs the frame's plan and clearances, no files.
  Outcome<std::vector<DespatchPiece>> pieces(const Progress& progress = {});
  /// The sheets of a piece that is paper.
  Outcome<Drawing> paper(const DespatchPiece& piece, const Progress& progress = {});
  /// Writes a piece's files into `folder` (the pack's top) and answers their paths in it
  /// ("prisms/P01-U07.step").
  Outcome<std::vector<std::string>> write(const DespatchPiece& piece, const std::string& folder,
                                          const Progress& progress = {});
  /// Writing of these pieces is about to begin: what can be worked out beside other work is begun.
  void expect(std::span<const DespatchPiece> wanted);
  /// The revision of what is drawn from now on.
  void set_revision(const std::string& revision);
  /// How papers are wanted from now on. Solids, clearances, light and pictures stay as they were made; only
  /// sheets are drawn anew. Where more than date and revision differs, the keys of papers do too: ask for the
  /// pieces anew.
  void set_choice(const PaperChoice& choice);
  /// Sentences that were told while pieces were written: a master printed in parts, a plate that no sheet
  /// takes.
  [[nodiscard]] const std::vector<std::string>& notes() const;
  void forget_notes();
  /// The clashes that keep pieces back, worst first, in words; known once the pieces were asked for.
  [[nodiscard]] std::vector<std::string> clashes() const;
  /// The lens in a few figures, caption and words, once the pieces were asked for; and its light, empty unless
  /// it has been worked out.
  [[nodiscard]] std::vector<std::pair<std::string, std::string>> figures() const;
  [[nodiscard]] std::vector<std::pair<std::string, std::string>> light_figures() const;
  [[nodiscard]] const DespatchSource& source() const;
  [[nodiscard]] const PaperChoice& choice() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
