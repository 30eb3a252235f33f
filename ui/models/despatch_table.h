#pragma once

#include <QColor>
#include <QString>
#include <map>
#include <vector>

#include "ui/models/cell_table.h"
#include "ui/models/despatch_work.h"

namespace prismwright {

/// Columns of the sheet of what goes out.
enum class DespatchColumn { group, piece, state, why, revision, date, name, kCount };

/// Every piece with its group, state, why it is in that state, and when it last went out; row i speaks of the
/// i-th piece. A row is amiss where its piece is withheld.
CellSheet despatch_sheet(const DespatchListing& listing);

QString group_words(DespatchGroup group);
/// What the files of a group are, in a sentence.
QString group_meaning(DespatchGroup group);

/// A change as a pack tells it, with the label of its field in place of the key: "Edge thickness 4 -> 5 mm".
QString change_text(const std::string& change);

QString state_sign(DespatchState state);
QString state_words(DespatchState state);
QColor state_colour(DespatchState state);

/// Why the piece is stale or withheld, as a sentence; empty for what is fresh.
QString why_words(const DespatchListing& listing, std::size_t piece);

/// Number of pieces in each state.
using StateCounts = std::map<DespatchState, int>;
StateCounts count_states(const DespatchListing& listing, std::optional<DespatchGroup> group = {});
/// "2 withheld, 8 stale, 240 fresh": what wants a look stands first.
QString counts_words(const StateCounts& counts);
/// The state that says most of the group: the one furthest from fresh.
DespatchState worst_state(const StateCounts& counts);

/// The piece as the last pack holds it; null where that has no files of it.
const PackedPiece* packed_piece(const DespatchListing& listing, const DespatchPiece& piece);
/// "48 kB"
QString bytes_text(std::uint64_t bytes);
/// What is not drawn: what its files are, and those that lie in the last pack.
QString files_words(const DespatchListing& listing, const DespatchPiece& piece);

/// It is withheld because of a clash; papers are withheld only where they cannot be drawn.
bool is_clash(const DespatchPiece& piece);
/// The marks of prisms that a withheld piece's sentence names, or that it is.
QStringList marks_in(const DespatchPiece& piece, const LensPlan& plan);

}  // namespace prismwright
