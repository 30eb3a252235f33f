#include "ui/models/despatch_work.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QTemporaryDir>
#include <algorithm>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

/// Date and revision aside: what is listed does not depend on them.
bool lists_alike(const PaperChoice& a, PaperChoice b) {
  b.date = a.date;
  b.revision = a.revision;
  return a == b;
}

/// A Lensbook serves one thread: the desk reads its photographs through one of its own, opened when the first
/// is asked for.
std::function<Outcome<std::string>(long long)> photographs_of(const std::string& path) {
  const auto book = std::make_shared<std::optional<Lensbook>>();
  return [book, path](long long number) -> Outcome<std::string> {
    if (!*book) {
      Outcome<Lensbook> opened = Lensbook::open(path, Lensbook::Access::read_only);
      if (!opened) return opened.problem();
      book->emplace(std::move(opened).value());
    }
    return (*book)->photograph_bytes(number);
  };
}

/// The piece's picture as it will be in the pack.
Outcome<QImage> picture_of(DespatchDesk& desk, const DespatchPiece& piece, const Progress& progress) {
  const QTemporaryDir folder;
  const Outcome<std::vector<std::string>> written = desk.write(piece, folder.path().toStdString(), progress);
  if (!written) return written.problem();
  for (const std::string& file : *written) {
    QImage picture(folder.filePath(QString::fromStdString(file)));
    if (!picture.isNull()) return picture;
  }
  return request_problem("picture", piece.name, "No picture was made: choose it again.");
}

/// What the next pack will bear unless the maker says otherwise: that of the last one where it would be the
/// same.
std::string offered_revision(const DespatchListing& listing) {
  if (!listing.last) return next_revision({});
  const bool same = std::all_of(listing.states.begin(), listing.states.end(), [](DespatchState state) {
    return state == DespatchState::fresh || state == DespatchState::withheld;
  });
  return same ? listing.last->manifest.revision : next_revision(listing.last->manifest.revision);
}

}  // namespace

std::shared_ptr<const DespatchSource> despatch_source(const Workbench& bench, const MadeLens* made) {
  const Lensbook& book = bench.book();
  auto source = std::make_shared<DespatchSource>();
  source->plan = made ? made->plan : bench.plan();
  source->book_name = QFileInfo(QString::fromStdString(book.path())).completeBaseName().toStdString();
  source->ledger = book.ledger();
  source->log = book.works_log();
  source->readings = book.readings();
  source->photograph = photographs_of(book.path());
  if (!made) {
    source->clearances = std::make_shared<const std::vector<Clearance>>();
    return source;
  }
  source->bodies = made->bodies;
  source->frame = made->frame;
  source->metal = made->metal;
  source->clearances = made->clearances;
  return source;
}

std::optional<LastPack> last_pack_for(const DespatchSource& source, const DespatchWish& wish) {
  return last_pack(wish.folder.toStdString(), source.book_name);
}

std::shared_ptr<DespatchDeskKept> ready_desk(const std::shared_ptr<DespatchDeskKept>& kept,
                                             const std::shared_ptr<const DespatchSource>& source,
                                             const DespatchWish& wish) {
  PaperChoice choice = wish.choice;
  choice.date = despatch_date(wish);
  if (kept && kept->source == source) {
    if (!lists_alike(choice, kept->choice)) kept->pieces.clear();
    kept->choice = choice;
    kept->desk.set_choice(choice);
    return kept;
  }
  return std::make_shared<DespatchDeskKept>(
      DespatchDeskKept{source, choice, DespatchDesk(*source, choice), {}});
}

Outcome<DespatchListing> list_despatch(DespatchDeskKept& kept, const std::optional<LastPack>& last,
                                       const Progress& progress) {
  if (kept.pieces.empty()) {
    Outcome<std::vector<DespatchPiece>> pieces = kept.desk.pieces(progress);
    if (!pieces) return pieces.problem();
    kept.pieces = std::move(pieces).value();
  }
  DespatchListing listing;
  listing.pieces = kept.pieces;
  listing.last = last;
  for (const DespatchPiece& piece : listing.pieces)
    listing.states.push_back(state_of(piece, last ? &last->manifest : nullptr));
  if (last) listing.values_changed = values_changed(last->manifest, kept.source->plan->values);
  listing.revision = offered_revision(listing);
  return listing;
}

DespatchSight sight_of(DespatchDesk& desk, const DespatchPiece& piece, const Progress& progress) {
  DespatchSight sight;
  sight.piece = piece;
  if (piece.is_paper) {
    Outcome<Drawing> drawing = desk.paper(piece, progress);
    if (drawing)
      sight.drawing = std::make_shared<const Drawing>(std::move(drawing).value());
    else
      sight.reason = sentence_of(drawing.problem());
  } else if (piece.group == DespatchGroup::pictures) {
    Outcome<QImage> picture = picture_of(desk, piece, progress);
    if (picture)
      sight.picture = std::move(picture).value();
    else
      sight.reason = sentence_of(picture.problem());
  }
  return sight;
}

}  // namespace prismwright
