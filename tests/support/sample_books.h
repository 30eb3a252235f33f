#pragma once

#include <gtest/gtest.h>

#include <string>

#include "core/book/lensbook.h"

namespace prismwright {

/// What a sample book holds, read without writing to it.
struct SampleBook {
  LensValues values;
  StageByMark stages;
};

inline constexpr const char* kSampleBooks[] = {"fourth-order-bullseye", "sixth-order-belt",
                                               "first-order-group-flashing"};

inline SampleBook sample_book(const std::string& name) {
  const auto book = Lensbook::open(std::string(SOURCE_FOLDER) + "/sample-projects/" + name + ".lensbook",
                                   Lensbook::Access::read_only);
  EXPECT_TRUE(book.ok()) << (book.ok() ? "" : book.problem().text);
  if (!book.ok()) return {};
  return {book->values(), stages_from(book->ledger())};
}

}  // namespace prismwright
