#pragma once

#include <string>

namespace prismwright {

/// The present time by the system's clock as ISO 8601 in UTC, to the second: "2026-03-01T09:30:00Z".
std::string now_utc();

}  // namespace prismwright
