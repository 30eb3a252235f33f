#include <gtest/gtest.h>

#include "core/drawing/length_sentences.h"

namespace prismwright {
namespace {

TEST(SentencesInInches, SayEveryLengthInInchesAndLeaveAllElse) {
  const LengthWords inches{true};
  EXPECT_EQ(sentence_in(inches, "a prism of 1.69 mm, too small for lands of 0.5 mm."),
            "a prism of 0.067 in, too small for lands of 0.02 in.");
  EXPECT_EQ(sentence_in(inches, "591 mm by 591 mm, fits no sheet"), "23.268 in by 23.268 in, fits no sheet");
  EXPECT_EQ(sentence_in(inches, "12 mm2 of 7 mm3 and mm alone, 76.5 deg"),
            "12 mm2 of 7 mm3 and mm alone, 76.5 deg");
  EXPECT_EQ(sentence_in(inches, "25.4 mm"), "1 in");
  EXPECT_EQ(sentence_in(inches, ""), "");
  EXPECT_EQ(sentence_in({}, "a land of 0.5 mm"), "a land of 0.5 mm");
}

}  // namespace
}  // namespace prismwright
