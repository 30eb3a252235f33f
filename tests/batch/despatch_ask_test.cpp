#include "app/batch/despatch_ask.h"

#include <gmock/gmock.h>
#include <CLI/CLI.hpp>

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// The papers as these words ask for them.
PaperAsk asked(std::vector<std::string> words) {
  PaperAsk ask;
  CLI::App app;
  ask.add_options(app);
  std::ranges::reverse(words);
  app.parse(words);
  return ask;
}

LastPack pack_with(const EstimateChoice& estimate) {
  LastPack last;
  last.folder = "/packs/low-head-2026-03-31";
  last.manifest.date = "2026-03-31";
  last.manifest.estimate = estimate;
  return last;
}

const EstimateChoice kBeginning;
const EstimateChoice kOther{12.5, 90, 3, "Paid in three parts"};

TEST(PaperAsk, BeginsAnEstimateWithItsOwnFigures) {
  EXPECT_EQ(asked({}).choice().estimate, kBeginning);
  LastPack last_of_old = pack_with(kBeginning);
  last_of_old.manifest.estimate.reset();
  EXPECT_EQ(asked({}).choice_after(&last_of_old).estimate, kBeginning);
  EXPECT_THAT(asked({}).remembered(&last_of_old), IsEmpty());
  EXPECT_THAT(asked({}).remembered(nullptr), IsEmpty());
}

TEST(PaperAsk, TakesUpWhatTheLastPackSaid) {
  const LastPack last = pack_with(kOther);
  EXPECT_EQ(asked({}).choice_after(&last).estimate, kOther);
  EXPECT_THAT(
      asked({}).remembered(&last),
      ElementsAre("Estimate: a margin of 12.5 %, as in the last pack, low-head-2026-03-31 of 2026-03-31; "
                  "--margin-percent \"\" clears it.",
                  HasSubstr("valid for 90 days"), HasSubstr("3 sets of spares"),
                  HasSubstr("the note \"Paid in three parts\"")));
}

TEST(PaperAsk, TakesWhatIsSaidBeforeWhatIsRemembered) {
  const LastPack last = pack_with(kOther);
  const PaperAsk ask = asked({"--margin-percent", "8", "--spare-sets", "0", "--note", "Paid at once"});
  EXPECT_EQ(ask.choice_after(&last).estimate, (EstimateChoice{8, 90, 0, "Paid at once"}));
  EXPECT_THAT(ask.remembered(&last), ElementsAre(HasSubstr("90 days")));
}

TEST(PaperAsk, ClearsByAnEmptyWord) {
  const LastPack last = pack_with(kOther);
  const PaperAsk ask = asked({"--margin-percent", "", "--valid-days", "", "--spare-sets", "", "--note", ""});
  EXPECT_EQ(ask.choice_after(&last).estimate, kBeginning);
  EXPECT_THAT(ask.remembered(&last), IsEmpty());
}

TEST(PaperAsk, RefusesFiguresThatCouldNotStand) {
  for (const auto& [option, figure] :
       std::vector<std::pair<const char*, const char*>>{{"--margin-percent", "900"},
                                                        {"--margin-percent", "nan"},
                                                        {"--margin-percent", "12 percent"},
                                                        {"--margin-percent", "-1"},
                                                        {"--valid-days", "0"},
                                                        {"--valid-days", "1.5"},
                                                        {"--spare-sets", "21"}})
    EXPECT_THROW(asked({std::string(option) + "=" + figure}), CLI::ValidationError) << option << " " << figure;
}

}  // namespace
}  // namespace prismwright
