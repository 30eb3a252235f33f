#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/works/congruence.h"
#include "core/works/ledger.h"

namespace prismwright {

// A spare is a casting made beyond those that the lens needs. Its mark is S, a number from 01 on, and the name
// of its master or its piece: "S01-U07" is the first spare of what P03-U07 is, "S02-U07-P02" the second one of
// the master U07-P02. It goes through the same ledger and the same stages. Numbers are not used twice: a spare
// that was given to a prism leaves its mark behind for good.

/// "S01-U07": at least two digits and no more noughts in front than that takes, and a piece.
bool is_spare_mark(std::string_view mark);

/// The master that a spare mark is cast from: the one of that name, else the first of its piece; null when the
/// lens has none.
const Master* master_of_spare(std::span<const Master> masters, std::string_view spare);

/// Spare marks that the ledger names, each once, in the order of their first lines.
std::vector<std::string> spare_marks(std::span<const LedgerEntry> ledger);

/// The mark of the next spare of a piece ("U07") or master ("U07-P02"): one more than the highest in the
/// ledger.
std::string next_spare_mark(std::string_view piece, std::span<const LedgerEntry> ledger);

/// Marks that plan_steps may be given: those of the lens, spares of its pieces that the ledger names, and
/// spares of its pieces among those asked for, which may be new.
std::vector<std::string> workable_marks(std::span<const std::string> lens_marks,
                                        std::span<const LedgerEntry> ledger,
                                        std::span<const std::string> asked = {});

/// The ledger lines that give a spare to a prism: the prism takes the spare's serial number and stage, and the
/// spare's mark goes back to drawn. Both notes say so; `note` is added and may be empty.
///
/// Refused: a mark that is no prism of the lens, a spare mark that is none, a spare of another master
/// (masters_of the lens), a spare that is not cast, is scrapped or is glazed, and a prism that has a sound
/// casting (it stands at cast or later and is not scrapped).
Outcome<std::vector<LedgerEntry>> give_spare(const std::string& mark, const std::string& spare,
                                             const std::string& by, const std::string& note,
                                             const StageByMark& now, std::span<const Master> masters);

/// Whether a line says that its casting went to another mark: it names a serial number, yet leads to before
/// cast.
inline bool gives_away(const LedgerEntry& line) { return line.serial != 0 && line.to < Stage::cast; }

}  // namespace prismwright
