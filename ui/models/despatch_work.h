#pragma once

#include <QImage>
#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "geometry/despatch/pack.h"
#include "ui/models/despatch_wish.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// What goes out of the book as it stands, and how it stands to the last pack in the chosen folder.
struct DespatchListing {
  std::vector<DespatchPiece> pieces;
  std::vector<DespatchState> states;  ///< of each piece
  std::optional<LastPack> last;
  std::vector<std::string> values_changed;  ///< since that pack, in words
  std::string revision;                     ///< that the next pack will bear unless another is typed
};

/// One piece to be looked at: its sheets, its picture, or why there is neither.
struct DespatchSight {
  DespatchPiece piece;
  std::shared_ptr<const Drawing> drawing;
  QImage picture;
  QString reason;
};

/// A desk with what it was set up for. It belongs to one worker thread at a time.
struct DespatchDeskKept {
  std::shared_ptr<const DespatchSource> source;
  PaperChoice choice;
  DespatchDesk desk;
  std::vector<DespatchPiece> pieces;  ///< empty until listed
};

/// The open book as a desk takes it, with what is made of it. Without `made` it serves for a look at a drawing
/// that needs no solids: its clearances are empty, so that none are measured and nothing is withheld.
/// Photographs are read through an opening of the book of their own.
std::shared_ptr<const DespatchSource> despatch_source(const Workbench& bench, const MadeLens* made);

/// The newest pack of the source's book in the folder of the wish.
std::optional<LastPack> last_pack_for(const DespatchSource& source, const DespatchWish& wish);

/// The kept desk where it is of this source, else a new one; set up for these choices. A blank date is today's;
/// the revision is as typed, and may be blank.
std::shared_ptr<DespatchDeskKept> ready_desk(const std::shared_ptr<DespatchDeskKept>& kept,
                                             const std::shared_ptr<const DespatchSource>& source,
                                             const DespatchWish& wish);

/// Lists what goes out, from the desk, against the last pack.
Outcome<DespatchListing> list_despatch(DespatchDeskKept& kept, const std::optional<LastPack>& last,
                                       const Progress& progress);

/// Draws the piece, or opens its picture; a sentence where it is neither or was refused.
DespatchSight sight_of(DespatchDesk& desk, const DespatchPiece& piece, const Progress& progress);

}  // namespace prismwright
