#include <gmock/gmock.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::HasSubstr;

/// Masters and moulds of one small prism: what the files hold is tested with the solids.
class WorksSolids : public WorksDeskTest {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_small_belt();
    name_ = works({"make", "--json"}).json().at("masters")[0].at("master");
  }
  std::string name_;
};

TEST_F(WorksSolids, AMasterIsWrittenInEveryKindOfFileWithTheSheetOfWhatToMeasure) {
  const Answer answer = works({"masters", "--out", at("masters"), "--only", name_, "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err << answer.out;
  EXPECT_TRUE(answer.json().at("well").get<bool>());
  const auto files = files_in("masters");
  for (const char* ending : {".step", ".stl", ".3mf"}) EXPECT_THAT(files, Contains(name_ + ending));
  EXPECT_THAT(files, Contains("masters.pdf"));
  const std::string csv = bytes_of(at("masters/masters.csv"));
  EXPECT_THAT(csv, HasSubstr("\n" + name_ + ",width,"));
  EXPECT_EQ(csv.rfind("master,kind,measure,unit,as_printed,as_cast,as_finished\n", 0), 0u);
  EXPECT_EQ(answer.json().at("files").size(), files.size());
}

TEST_F(WorksSolids, OnlyTheKindOfFileThatIsAskedForIsWritten) {
  ASSERT_EQ(works({"masters", "--out", at("stl"), "--only", name_, "--stl"}).code, 0);
  const auto files = files_in("stl");
  EXPECT_THAT(files, Contains(name_ + ".stl"));
  EXPECT_THAT(files, testing::Not(Contains(name_ + ".step")));
  EXPECT_THAT(files, testing::Not(Contains(name_ + ".3mf")));
}

TEST_F(WorksSolids, AMouldIsWrittenWithItsNotes) {
  const Answer answer = works({"moulds", "--out", at("moulds"), "--only", name_});
  EXPECT_LE(answer.code, 1) << answer.err;
  EXPECT_THAT(files_in("moulds"), Contains(name_ + "-mould.step"));
  EXPECT_THAT(answer.out, HasSubstr(name_ + ": "));
  EXPECT_THAT(bytes_of(at("moulds/moulds.pdf")), testing::StartsWith("%PDF-"));
  const std::string csv = bytes_of(at("moulds/moulds.csv"));
  EXPECT_THAT(csv, testing::StartsWith("master,marks,made,draft_deg,undercuts,"));
  EXPECT_THAT(csv, HasSubstr("\n" + name_ + ","));
}

TEST_F(WorksSolids, LoadsAndPlanReckonWithTheMouldsWhereTheseAreWorkedOut) {
  book_ = make_book({"--order", "6", "--work", "belt", "--panels", "12"}, "few.lensbook");
  ASSERT_EQ(
      ask({"set", book_, "section.refracting_to_deg=8", "section.upper_to_deg=8", "section.lower_to_deg=8"})
          .code,
      0);
  const auto guess = works({"loads", "--json"}).json();
  EXPECT_THAT(guess.at("way_up").get<std::string>(), HasSubstr("are not worked out"));
  EXPECT_TRUE(guess.at("loads")[0].at("places")[0].at("gate_up").is_null());
  const auto own = works({"loads", "--moulds", "--json"}).json();
  EXPECT_THAT(own.at("way_up").get<std::string>(), testing::StartsWith("Every mould stands with its gate up"));
  ASSERT_FALSE(own.at("loads").empty());
  for (const auto& load : own.at("loads")) {
    for (const auto& place : load.at("places")) {
      EXPECT_EQ(place.at("gate_up"), true);
      EXPECT_EQ(place.at("stands"), "standing");
    }
  }
  const auto tooling = [&](const nlohmann::json& plan) {
    return row_where(plan.at("costs"), "item", "tooling").at("quantity").get<double>();
  };
  const auto guessed_plan = works({"plan", "--json"}).json();
  EXPECT_EQ(guessed_plan.at("cost_notes").size(), 1U);
  const auto plan = works({"plan", "--moulds", "--json"}).json();
  EXPECT_TRUE(plan.at("cost_notes").empty());
  EXPECT_GT(std::abs(tooling(plan) - tooling(guessed_plan)), 0.01 * tooling(plan)) << "no guess any more";
}

TEST_F(WorksSolids, AMasterThatTheLensDoesNotHaveIsRefused) {
  const Answer answer = works({"masters", "--out", at("none"), "--only", "Q7"});
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("Q7"));
  EXPECT_FALSE(std::filesystem::exists(at("none")));
  EXPECT_EQ(works({"moulds", "--out", at("none"), "--only", "Q7"}).code, 2);
}

}  // namespace
}  // namespace prismwright
