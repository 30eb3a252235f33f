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

TEST(SentencesInInches, TurnEveryNumberThatSharesTheUnit) {
  const LengthWords inches{true};
  EXPECT_EQ(sentence_in(inches, "its mould of 127 x 50.8 x 25.4 mm fits in no way into 2540 x 254 mm"),
            "its mould of 5 x 2 x 1 in fits in no way into 100 x 10 in");
  EXPECT_EQ(sentence_in(inches, "25.4 mm of brass at u 50.8, v 76.2 mm"), "1 in of brass at u 2, v 3 in");
  EXPECT_EQ(sentence_in(inches, "x -25.4, y -50.8, z 12.7 mm"), "x -1, y -2, z 0.5 in");
}

TEST(SentencesInInches, LeaveWhatOnlyLooksLikeARunOfLengths) {
  const LengthWords inches{true};
  EXPECT_EQ(sentence_in(inches, "127 x 50.8 mm2 and 127 x 50.8 x 2 mm3"),
            "127 x 50.8 mm2 and 127 x 50.8 x 2 mm3");
  EXPECT_EQ(sentence_in(inches, "a gap of 1e-05 mm, 2.5e+03 mm or 1e5 mm beside 25.4 mm"),
            "a gap of 1e-05 mm, 2.5e+03 mm or 1e5 mm beside 1 in");
  EXPECT_EQ(sentence_in(inches, "1.5e-05 x 25.4 mm"), "1.5e-05 x 25.4 mm");
  EXPECT_EQ(sentence_in(inches, "of R3 x 25.4 mm"), "of R3 x 1 in");
  EXPECT_EQ(sentence_in(inches, "of pocket 3, a 25.4 mm step"), "of pocket 3, a 1 in step");
}

}  // namespace
}  // namespace prismwright
