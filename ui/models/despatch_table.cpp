#include "ui/models/despatch_table.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <algorithm>

#include "core/lens/quantities.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("despatch", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

constexpr qsizetype kFewChanges = 3;

/// What wants a look stands first.
constexpr DespatchState kWorstFirst[] = {DespatchState::withheld, DespatchState::stale, DespatchState::unpacked,
                                         DespatchState::fresh};

int rank_of(DespatchState state) {
  return static_cast<int>(std::find(std::begin(kWorstFirst), std::end(kWorstFirst), state) -
                          std::begin(kWorstFirst));
}

Cell state_cell(DespatchState state) {
  return {state_sign(state) + QLatin1Char(' ') + state_words(state), rank_of(state),
          QString::fromLatin1(name_of(state))};
}

/// The first few of them; how many more there are is said.
QString few_of(const std::vector<std::string>& changes) {
  QStringList few;
  for (const std::string& change : changes)
    if (few.size() < kFewChanges) few << change_text(change);
  const QString told = few.join(QStringLiteral("; "));
  const auto more = static_cast<qsizetype>(changes.size()) - few.size();
  return more > 0 ? words(QT_TRANSLATE_NOOP("despatch", "%1; and %2 more")).arg(told).arg(more) : told;
}

}  // namespace

QString group_words(DespatchGroup group) {
  return QCoreApplication::translate("DespatchGroup", words_of(group));
}

QString group_meaning(DespatchGroup group) {
  switch (group) {
    case DespatchGroup::prisms:
      return words(QT_TRANSLATE_NOOP("despatch", "STEP: the finished solid, in mm, named after its mark."));
    case DespatchGroup::panels:
      return words(
          QT_TRANSLATE_NOOP("despatch", "STEP: a panel's prisms and its brass in their places, in mm."));
    case DespatchGroup::lens:
      return words(QT_TRANSLATE_NOOP("despatch", "STEP: every prism and the brass, each in its place, in mm."));
    case DespatchGroup::frame:
      return words(QT_TRANSLATE_NOOP("despatch", "STEP: the whole frame and its machined parts, in mm."));
    case DespatchGroup::cutting:
      return words(QT_TRANSLATE_NOOP(
          "despatch", "DXF: outlines of plates true to size, and the sheets that they are cut from, in mm."));
    case DespatchGroup::masters:
      return words(QT_TRANSLATE_NOOP(
          "despatch",
          "STEP, STL and 3MF of a master, grown for shrinkage and stock, with a sheet of what to measure."));
    case DespatchGroup::drawings:
      return words(QT_TRANSLATE_NOOP("despatch", "PDF and SVG: a drawing, sheet by sheet."));
    case DespatchGroup::lists:
      return words(QT_TRANSLATE_NOOP("despatch", "CSV: a list with a head that names each column's unit."));
    case DespatchGroup::light:
      return words(QT_TRANSLATE_NOOP("despatch", "PDF and CSV: the light report and the beam behind it."));
    case DespatchGroup::record:
      return words(QT_TRANSLATE_NOOP(
          "despatch", "CSV and photographs: the ledger and all that was written down beside it."));
    case DespatchGroup::dossier:
      return words(QT_TRANSLATE_NOOP("despatch", "PDF: for whoever receives the lens."));
    case DespatchGroup::estimate:
      return words(QT_TRANSLATE_NOOP("despatch", "PDF: an offer made of the numbers of the page Works."));
    case DespatchGroup::pictures:
      return words(QT_TRANSLATE_NOOP("despatch", "PNG: the lens as drawn."));
  }
  return {};
}

QString change_text(const std::string& change) {
  const std::string key = change.substr(0, change.find(' '));
  const Quantity* quantity = find_quantity(key);
  return quantity == nullptr ? qt(change) : qt(quantity->label + change.substr(key.size()));
}

QString state_sign(DespatchState state) {
  switch (state) {
    case DespatchState::fresh:
      return QStringLiteral("✓");
    case DespatchState::stale:
      return QStringLiteral("≠");
    case DespatchState::unpacked:
      return QStringLiteral("○");
    case DespatchState::withheld:
      return QStringLiteral("✕");
  }
  return {};
}

QString state_words(DespatchState state) {
  switch (state) {
    case DespatchState::fresh:
      return words(QT_TRANSLATE_NOOP("despatch", "fresh"));
    case DespatchState::stale:
      return words(QT_TRANSLATE_NOOP("despatch", "stale"));
    case DespatchState::unpacked:
      return words(QT_TRANSLATE_NOOP("despatch", "not packed yet"));
    case DespatchState::withheld:
      return words(QT_TRANSLATE_NOOP("despatch", "withheld"));
  }
  return {};
}

QColor state_colour(DespatchState state) {
  switch (state) {
    case DespatchState::fresh:
      return palette::well();
    case DespatchState::stale:
      return palette::ink();
    case DespatchState::unpacked:
      return palette::muted_ink();
    case DespatchState::withheld:
      return palette::amiss();
  }
  return palette::ink();
}

QString why_words(const DespatchListing& listing, std::size_t piece) {
  switch (listing.states[piece]) {
    case DespatchState::withheld:
      return qt(listing.pieces[piece].withheld);
    case DespatchState::unpacked:
      return listing.last ? words(QT_TRANSLATE_NOOP("despatch", "The last pack does not hold it.")) : QString();
    case DespatchState::stale:
      if (listing.values_changed.empty())
        return words(QT_TRANSLATE_NOOP("despatch", "Records have changed, or what is wanted of the papers."));
      return words(QT_TRANSLATE_NOOP("despatch", "Changed since: %1.")).arg(few_of(listing.values_changed));
    case DespatchState::fresh:
      break;
  }
  return {};
}

const PackedPiece* packed_piece(const DespatchListing& listing, const DespatchPiece& piece) {
  if (!listing.last) return nullptr;
  const PackedPiece* found = find_packed(listing.last->manifest, piece);
  return found && !found->files.empty() ? found : nullptr;
}

CellSheet despatch_sheet(const DespatchListing& listing) {
  CellSheet sheet;
  sheet.heads = {{words(QT_TRANSLATE_NOOP("despatch", "Group")), "group", {}, false},
                 {words(QT_TRANSLATE_NOOP("despatch", "What goes out")), "piece", {}, false},
                 {words(QT_TRANSLATE_NOOP("despatch", "State")), "state", {}, false},
                 {words(QT_TRANSLATE_NOOP("despatch", "Why")), "why", {}, false},
                 {words(QT_TRANSLATE_NOOP("despatch", "Rev.")), "revision", {}, false},
                 {words(QT_TRANSLATE_NOOP("despatch", "Date")), "date", {}, false},
                 {{}, "name", {}, false}};
  std::map<std::pair<DespatchGroup, std::string>, const PackedPiece*> packed;
  if (listing.last)
    for (const PackedPiece& piece : listing.last->manifest.pieces)
      packed[{piece.piece.group, piece.piece.name}] = &piece;
  for (std::size_t i = 0; i < listing.pieces.size(); ++i) {
    const DespatchPiece& piece = listing.pieces[i];
    const auto found = packed.find({piece.group, piece.name});
    const bool was_packed = found != packed.end() && !found->second->files.empty();
    CellRow row;
    if (piece.group == DespatchGroup::prisms) row.marks << qt(piece.name);
    row.cells = {word_cell(group_words(piece.group)),
                 word_cell(qt(piece.words)),
                 state_cell(listing.states[i]),
                 word_cell(why_words(listing, i)),
                 was_packed ? word_cell(qt(found->second->revision)) : blank_cell(),
                 was_packed ? word_cell(qt(found->second->date)) : blank_cell(),
                 word_cell(qt(piece.name))};
    row.amiss = listing.states[i] == DespatchState::withheld;
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

StateCounts count_states(const DespatchListing& listing, std::optional<DespatchGroup> group) {
  StateCounts counts;
  for (std::size_t i = 0; i < listing.pieces.size(); ++i)
    if (!group || listing.pieces[i].group == *group) ++counts[listing.states[i]];
  return counts;
}

QString counts_words(const StateCounts& counts) {
  QStringList parts;
  for (const DespatchState state : kWorstFirst)
    if (const auto found = counts.find(state); found != counts.end() && found->second > 0)
      parts << QStringLiteral("%1 %2").arg(found->second).arg(state_words(state));
  return parts.join(QStringLiteral(", "));
}

DespatchState worst_state(const StateCounts& counts) {
  for (const DespatchState state : kWorstFirst)
    if (const auto found = counts.find(state); found != counts.end() && found->second > 0) return state;
  return DespatchState::fresh;
}

bool is_clash(const DespatchPiece& piece) {
  return !piece.withheld.empty() && piece.group <= DespatchGroup::masters;
}

QString bytes_text(std::uint64_t bytes) {
  return QLocale::c().formattedDataSize(static_cast<qint64>(bytes), 1, QLocale::DataSizeSIFormat);
}

QString files_words(const DespatchListing& listing, const DespatchPiece& piece) {
  QStringList lines{group_meaning(piece.group)};
  if (!piece.withheld.empty()) lines << qt(piece.withheld);
  const PackedPiece* packed = packed_piece(listing, piece);
  if (packed == nullptr) return lines.join(QStringLiteral("\n\n"));
  QStringList files;
  for (const PackedFile& file : packed->files)
    files << QStringLiteral("%1, %2").arg(qt(file.path), bytes_text(file.bytes));
  lines << words(QT_TRANSLATE_NOOP("despatch", "In the last pack, revision %1 of %2:"))
                   .arg(qt(packed->revision), qt(packed->date)) +
               QLatin1Char('\n') + files.join(QLatin1Char('\n'));
  return lines.join(QStringLiteral("\n\n"));
}

QStringList marks_in(const DespatchPiece& piece, const LensPlan& plan) {
  QStringList marks;
  const auto add = [&](const QString& word) {
    if (!marks.contains(word) && plan.find(word.toStdString()) != nullptr) marks << word;
  };
  add(qt(piece.name));
  static const QRegularExpression kBetween(QStringLiteral("[^A-Za-z0-9-]+"));
  for (const QString& word : qt(piece.withheld).split(kBetween, Qt::SkipEmptyParts)) add(word);
  return marks;
}

}  // namespace prismwright
