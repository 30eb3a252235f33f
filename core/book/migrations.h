#pragma once

#include <array>

#include "core/book/schema.h"

namespace prismwright {

/// The SQL that leads from one version of the book to the next: kMigrations[i] from version i + 1 to i + 2.
extern const std::array<const char*, kBookVersion - 1> kMigrations;

}  // namespace prismwright
