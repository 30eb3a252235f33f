#pragma once

#include <QString>

#include "geometry/despatch/despatch_desk.h"

namespace prismwright {

/// What the maker has chosen for the packs of one book. Kept among the settings of the window, so that the next
/// pack compares with the last one; date and revision are chosen anew each time.
struct DespatchWish {
  QString folder;      ///< in which the packs lie
  PaperChoice choice;  ///< date blank: today; revision blank: the one offered
};

/// The folder that is offered: BOOK-packs beside the book.
QString offered_packs_folder(const QString& book_path);
/// What was kept for this book; what was not, as it is offered. Where nothing was kept, the estimate is asked
/// for as in the last pack of the book.
DespatchWish kept_despatch_wish(const QString& book_path);
void keep_despatch_wish(const QString& book_path, const DespatchWish& wish);

/// The date as it is meant: today's where it is blank.
std::string despatch_date(const DespatchWish& wish);

}  // namespace prismwright
