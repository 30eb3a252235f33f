#pragma once

#include <QString>
#include <string>

namespace prismwright {

/// A moment of the book (ISO 8601, UTC) as the clock on the wall shows it: "2027-03-01 14:05". What is no
/// moment stays as it is.
QString local_time(const std::string& when_utc);

}  // namespace prismwright
