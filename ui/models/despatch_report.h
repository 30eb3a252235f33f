#pragma once

#include <QString>

#include "ui/models/despatch_maker.h"

namespace prismwright {

/// "12 pieces made anew, 236 kept from the last pack; 3 withheld."
QString pack_words(const PackReport& report);

/// The last pack as a page of rich text: what it is, what was made anew and kept, what changed with it, what
/// was withheld. Where none was written since the window opened, what has changed since the last one.
QString last_pack_text(const DespatchListing* listing, const PackEnd& end);

}  // namespace prismwright
