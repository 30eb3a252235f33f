#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/works/congruence.h"
#include "core/works/mould_picture.h"
#include "geometry/mould.h"

namespace prismwright {

/// The mould of one master of a lens, worked out: its answer, or why the master itself cannot be made.
struct WorkedMould {
  std::string master;              ///< its name
  std::vector<std::string> marks;  ///< of the prisms that share it
  MouldOrder order;                ///< the master with stock, stretched; a null shape where it cannot be made
  MouldAnswer answer;              ///< `mark` and the facts' mark are the master's name
  double asked_draft_deg = 0;      ///< works.mould_draft_deg by which its faces were judged

  [[nodiscard]] const MouldFacts* facts() const { return answer.mould ? &answer.mould->facts : nullptr; }
  /// Sentences on the mould, or why there is none, with its undercuts.
  [[nodiscard]] std::vector<std::string> notes() const;
};

/// Masters of these names, in this order; all where none is named. Refuses a name that no master has.
Outcome<std::vector<const Master*>> masters_named(std::span<const Master> masters,
                                                  const std::vector<std::string>& names);

/// Works out the moulds of a lens and keeps masters and moulds, so that an edit remakes what it touched. One
/// caller at a time.
class MouldDesk {
 public:
  MouldDesk();
  ~MouldDesk();
  /// One for each of `only` (all where that is empty), in the order of `masters`. Refused: a name that no
  /// master has; stopped.
  Outcome<std::vector<WorkedMould>> work_out(const LensPlan& plan, std::span<const Master> masters,
                                             const std::vector<std::string>& only,
                                             const Progress& progress = {});

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// What works_reckoning takes of them: facts of those that have a mould.
std::vector<MouldFacts> facts_of(std::span<const WorkedMould> moulds);

/// Columns: master, marks, made (1 or 0), draft_deg, undercuts, hidden_mm2, steep_mm2, deepest_mm, standing_mm,
/// foot_long_mm, foot_short_mm, lower_cm3, upper_cm3, resin_g, problem; then in a table of its own below a
/// blank line each undercut: master, letter, face, kind, area_mm2, depth_mm, draft_deg.
std::string moulds_csv(std::span<const WorkedMould> moulds);

/// Area of a draw's undercuts of one kind, mm2.
double undercut_mm2(const DrawFacts& draw, UndercutKind kind);
/// How far the deepest of them reaches under the rest, mm.
double deepest_mm(const DrawFacts& draw);

/// The master of a mould with what is undercut, judged by the draft that was asked when the mould was worked
/// out, whatever is asked by now. The master is looked at from all round anew: keep it. Refused: a master that
/// cannot be pictured or was not judged.
Outcome<MouldPicture> pictured_mould(const WorkedMould& mould);
/// The sheet of a mould (core/works/mould_picture.h) round that picture of it. `words` without marks and
/// notes, which come from the mould.
Sheet mould_sheet_of(const WorkedMould& mould, const MouldPicture& picture, MouldSheetWords words);
/// Both at once.
Outcome<Sheet> drawn_mould(const WorkedMould& mould, const MouldSheetWords& words);

}  // namespace prismwright
