#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
namespace fs = std::filesystem;

/// A small belt lens keeps the frame quick to make.
class FrameVerb : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_small_belt({"frame.setting_gap_mm=1", "frame.end_gap_mm=1"});
  }

  nlohmann::json frame() {
    const Answer answer = ask({"frame", book_, "--json"});
    EXPECT_THAT(answer.err, testing::IsEmpty());
    return answer.json();
  }

  std::string book_;
};

TEST_F(FrameVerb, ListsEveryPartOnceWithItsMass) {
  const auto answer = frame();
  std::set<std::string> marks;
  std::size_t pieces = 0;
  double mass_g = 0;
  std::set<std::string> kinds;
  for (const auto& part : answer.at("parts")) {
    for (const auto& mark : part.at("marks")) EXPECT_TRUE(marks.insert(mark).second) << mark << " twice";
    EXPECT_EQ(part.at("quantity"), part.at("marks").size());
    pieces += part.at("marks").size();
    EXPECT_GT(part.at("mass_each_g").get<double>(), 0);
    mass_g += part.at("mass_all_g").get<double>();
    kinds.insert(part.at("kind"));
  }
  EXPECT_EQ(answer.at("pieces"), pieces);
  EXPECT_NEAR(answer.at("total_mass_g").get<double>(), mass_g, 1e-6 * mass_g);
  EXPECT_THAT(kinds, testing::IsSupersetOf({"side rib", "rail", "ring", "screw", "dowel", "spacer"}));
  EXPECT_TRUE(marks.contains("P01-rib-left"));
}

TEST_F(FrameVerb, LaysEveryFlatPartOnASheetOrSaysThatItIsTooLarge) {
  const auto answer = frame();
  std::set<std::string> laid;
  double used = 0, all = 0;
  for (const auto& sheet : answer.at("sheets")) {
    for (const auto& piece : sheet.at("pieces")) EXPECT_TRUE(laid.insert(piece.at("mark")).second);
    const double area = sheet.at("width_mm").get<double>() * sheet.at("height_mm").get<double>();
    used += sheet.at("used_share").get<double>() * area;
    all += area;
  }
  EXPECT_NEAR(answer.at("sheet_use").get<double>(), used / all, 1e-9);
  EXPECT_TRUE(answer.at("too_large").empty());
  for (const auto& part : answer.at("parts")) {
    for (const auto& mark : part.at("marks"))
      EXPECT_EQ(laid.contains(mark.get<std::string>()), part.at("making") == "cut flat") << mark;
  }
}

TEST_F(FrameVerb, SaysWhatThePanelsAreSetAndPutTogetherBy) {
  const auto answer = frame();
  const auto prisms = ask({"works", book_, "list", "--json"}).json().at("prisms");
  std::set<std::string> checked, put_in;
  for (const auto& check : answer.at("settings")) {
    checked.insert(check.at("prism"));
    EXPECT_EQ(check.at("end").at("enough"), check.at("end").at("drawn_mm").get<double>() >=
                                                check.at("end").at("needed_mm").get<double>() - 1e-9)
        << check;
  }
  for (const auto& step : answer.at("order")) {
    EXPECT_FALSE(step.at("words").get<std::string>().empty());
    for (const auto& mark : step.at("marks")) EXPECT_TRUE(put_in.insert(mark).second) << mark;
  }
  for (const auto& panel : answer.at("fit_up")) {
    for (const auto& blocked : panel.at("cannot")) {
      for (const auto& mark : blocked.at("marks")) EXPECT_TRUE(put_in.insert(mark).second) << mark;
    }
  }
  for (const auto& prism : prisms) {
    EXPECT_TRUE(checked.contains(prism.at("mark").get<std::string>())) << prism;
    EXPECT_TRUE(put_in.contains(prism.at("mark").get<std::string>())) << prism;
  }
  EXPECT_EQ(answer.at("fit_up").size(), 3u);
}

TEST_F(FrameVerb, PrintsPartsSheetsSettingAndOrder) {
  const Answer answer = ask({"frame", book_});
  for (const char* words : {" kg of brass", "side rib", "P01-rib-left", "cut flat", "Sheets: ", "% used",
                            "prism ends checked", "Order of fit-up", "Panels 1, 2, 3 (marks of panel 1)"}) {
    EXPECT_THAT(answer.out, HasSubstr(words));
  }
}

TEST_F(FrameVerb, WritesFilesForEveryShapeAndSheet) {
  const Answer answer =
      ask({"frame", book_, "--json", "--out", at("cut"), "--drawings", "--csv", at("parts.csv")});
  EXPECT_NE(answer.code, 3) << answer.err;
  const auto names = files_in("cut");
  for (const char* name : {"frame.step", "parts.csv", "sheets.csv", "drawings.pdf"})
    EXPECT_TRUE(names.contains(name)) << name;
  EXPECT_EQ(bytes_of(at("parts.csv")), bytes_of(at("cut/parts.csv")));
  const auto json = answer.json();
  for (const auto& part : json.at("parts")) {
    if (part.at("making") != "cut flat") continue;
    const std::string stem = part.at("marks")[0].get<std::string>() + "_";
    EXPECT_TRUE(std::ranges::any_of(names, [&](const std::string& name) {
      return name.starts_with(stem) &&
             name.ends_with("mm_x" + std::to_string(part.at("quantity").get<int>()) + ".dxf");
    })) << part;
  }
  const auto nests =
      std::ranges::count_if(names, [](const std::string& name) { return name.starts_with("nest_brass_"); });
  EXPECT_EQ(static_cast<std::size_t>(nests), json.at("sheets").size());
}

TEST_F(FrameVerb, EndsWithOneWhereSomethingIsNotWell) {
  ASSERT_EQ(ask({"set", book_, "frame.sheet_width_mm=150", "frame.sheet_height_mm=150"}).code, 0);
  const Answer large = ask({"frame", book_});
  EXPECT_EQ(large.code, 1);
  EXPECT_THAT(large.out, HasSubstr("no sheet of 150 mm by 150 mm"));
  EXPECT_THAT(large.out, HasSubstr("Give larger sheets"));
  ASSERT_EQ(
      ask({"set", book_, "frame.sheet_width_mm=1000", "frame.sheet_height_mm=600", "frame.glazing_mm=1"}).code,
      0);
  const Answer tight = ask({"frame", book_, "--json"});
  EXPECT_EQ(tight.code, 1);
  EXPECT_FALSE(tight.json().at("well"));
  EXPECT_TRUE(std::ranges::any_of(tight.json().at("settings"), [](const auto& check) {
    return !check.at("sides").at("enough").template get<bool>();
  }));
}

// No door gap lets so narrow a panel swing out, so its warning has no limit; the answer must still be given.
TEST_F(FrameVerb, ADoorThatNoGapHelpsHasNoLimitInJson) {
  const std::string narrow = make_book({"--order", "6", "--work", "belt", "--panels", "16"}, "narrow.lensbook");
  ASSERT_EQ(ask({"set", narrow, "frame.door_panel=3", "section.lower_to_deg=28.5"}).code, 0);
  const Answer answer = ask({"frame", narrow, "--json"});
  EXPECT_EQ(answer.code, 1);
  ASSERT_FALSE(answer.out.empty()) << answer.err;
  const auto warnings = answer.json().at("warnings");
  const auto door = std::ranges::find_if(warnings, [](const auto& warning) {
    return warning.at("sentence").template get<std::string>().find("cannot swing") != std::string::npos;
  });
  ASSERT_NE(door, warnings.end());
  EXPECT_TRUE(door->at("limit_mm").is_null());
}

TEST_F(FrameVerb, RefusesDrawingsWithoutAFolder) {
  const Answer answer = ask({"frame", book_, "--drawings"});
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("--out"));
}

TEST_F(FrameVerb, DrawsInInchesWhereWished) {
  ASSERT_NE(ask({"frame", book_, "--out", at("mm"), "--drawings"}).code, 3);
  ASSERT_NE(ask({"frame", book_, "--out", at("in"), "--drawings", "--inches"}).code, 3);
  EXPECT_NE(bytes_of(at("mm/drawings.pdf")), bytes_of(at("in/drawings.pdf")));
  EXPECT_EQ(bytes_of(at("mm/parts.csv")), bytes_of(at("in/parts.csv"))) << "lists stay in mm";
  const Answer alone = ask({"frame", book_, "--out", at("no"), "--inches"});
  EXPECT_EQ(alone.code, 2);
  EXPECT_THAT(alone.err, HasSubstr("--drawings"));
}

}  // namespace
}  // namespace prismwright
