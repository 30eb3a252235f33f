#include <gmock/gmock.h>

#include <cmath>
#include <set>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
namespace fs = std::filesystem;

/// show, bodies and clearances: the verbs that make solids. A small belt lens keeps them quick.
class SolidsVerbs : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_small_belt();
  }

  std::string book_;
};

TEST_F(SolidsVerbs, ShowGivesEveryPrismWithAClosedProfile) {
  const auto lens = ask({"show", book_, "--json"}).json();
  ASSERT_FALSE(lens.at("prisms").empty());
  for (const auto& prism : lens.at("prisms")) {
    EXPECT_GT(prism.at("volume_mm3").get<double>(), 0);
    EXPECT_GT(prism.at("greatest_length_mm").get<double>(), 0);
    EXPECT_EQ(prism.at("centre_of_gravity_mm").size(), 3u);
    const auto& faces = prism.at("profile");
    for (std::size_t i = 0; i < faces.size(); ++i) {
      const auto& end = faces[i].at("points_mm").back();
      const auto& next = faces[(i + 1) % faces.size()].at("points_mm").front();
      EXPECT_NEAR(std::hypot(end[0].get<double>() - next[0].get<double>(),
                             end[1].get<double>() - next[1].get<double>()),
                  0, 1e-9)
          << prism.at("mark") << " face " << i;
    }
  }
}

TEST_F(SolidsVerbs, MassIsVolumeTimesDensityAndTotalsAreTheSum) {
  const auto lens = ask({"show", book_, "--json"}).json();
  const double density = lens.at("material").at("density_g_cm3").get<double>();
  double mass_g = 0;
  for (const auto& prism : lens.at("prisms")) {
    EXPECT_NEAR(prism.at("mass_g").get<double>(), prism.at("volume_mm3").get<double>() * density / 1000, 1e-9);
    mass_g += prism.at("mass_g").get<double>();
  }
  EXPECT_NEAR(lens.at("totals").at("mass_g").get<double>(), mass_g, 1e-6);
  EXPECT_EQ(lens.at("totals").at("prisms"), lens.at("prisms").size());
}

TEST_F(SolidsVerbs, ArcsAreShownWithCentreAndRadius) {
  ASSERT_EQ(ask({"set", book_, "section.faces=arc"}).code, 0);
  int arcs = 0;
  const auto zones_of_lens = ask({"show", book_, "--json"}).json().at("zones");
  for (const auto& zone : zones_of_lens) {
    for (const auto& face : zone.at("profile")) {
      if (face.at("kind") != "arc") continue;
      ++arcs;
      for (const auto& point : face.at("points_mm")) {
        EXPECT_NEAR(std::hypot(point[0].get<double>() - face.at("centre_mm")[0].get<double>(),
                               point[1].get<double>() - face.at("centre_mm")[1].get<double>()),
                    face.at("radius_mm").get<double>(), 1e-6)
            << zone.at("mark");
      }
    }
  }
  EXPECT_GT(arcs, 0);
}

TEST_F(SolidsVerbs, TheTableOfShowNamesEveryPrismAndItsStage) {
  ASSERT_EQ(ask({"works", book_, "record", "P02-C", "mastered"}).code, 0);
  const Answer answer = ask({"show", book_});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("mastered"));
  const auto prisms_of_lens = ask({"show", book_, "--json"}).json().at("prisms");
  for (const auto& prism : prisms_of_lens) {
    EXPECT_THAT(answer.out, HasSubstr(prism.at("mark").get<std::string>()));
  }
}

TEST_F(SolidsVerbs, BodiesWritesOneStepForEachPrismAndTheLens) {
  const Answer answer = ask({"bodies", book_, "--out", at("solids")});
  ASSERT_EQ(answer.code, 0) << answer.err;
  std::set<std::string> wanted = {"lens.step"};
  const auto prisms_of_lens = ask({"show", book_, "--json"}).json().at("prisms");
  for (const auto& prism : prisms_of_lens) {
    wanted.insert(prism.at("mark").get<std::string>() + ".step");
  }
  EXPECT_EQ(files_in("solids"), wanted);
  EXPECT_THAT(answer.out, HasSubstr(at("solids")));
}

TEST_F(SolidsVerbs, BodiesOfSomePrismsWritesThoseOnly) {
  ASSERT_EQ(ask({"bodies", book_, "--out", at("some"), "--step", "--stl", "--only", "P01-C", "P03-U0*"}).code,
            0);
  const std::set<std::string> files = files_in("some");
  EXPECT_TRUE(files.contains("P01-C.step"));
  EXPECT_TRUE(files.contains("P01-C.stl"));
  EXPECT_TRUE(files.contains("P03-U01.step"));
  EXPECT_FALSE(files.contains("P01-U01.step"));
  EXPECT_FALSE(files.contains("lens.step"));
}

TEST_F(SolidsVerbs, StlAloneWritesNoStep) {
  ASSERT_EQ(ask({"bodies", book_, "--out", at("stl"), "--stl", "--only", "P01-C"}).code, 0);
  EXPECT_EQ(files_in("stl"), std::set<std::string>{"P01-C.stl"});
}

TEST_F(SolidsVerbs, MastersAreSentToTheWorks) {
  const Answer answer = ask({"bodies", book_, "--out", at("masters"), "--master"});
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("works FILE masters"));
  EXPECT_FALSE(fs::exists(at("masters")));
}

TEST_F(SolidsVerbs, AnUnknownMarkIsRefusedBeforeAnythingIsWritten) {
  const Answer answer = ask({"bodies", book_, "--out", at("none"), "--only", "P99-C"});
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("P99-C"));
  EXPECT_FALSE(fs::exists(at("none")));
}

TEST_F(SolidsVerbs, ClearancesGivesEachPairAVerdictAndCountsThem) {
  const Answer answer = ask({"clearances", book_, "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err << answer.out.substr(0, 400);
  const auto clearances = answer.json();
  int pairs = 0;
  for (const auto& [verdict, count] : clearances.at("counts").items()) pairs += count.get<int>();
  EXPECT_EQ(clearances.at("pairs").size(), static_cast<std::size_t>(pairs));
  EXPECT_EQ(clearances.at("counts").at("clash"), 0);
  for (const auto& pair : clearances.at("pairs")) {
    EXPECT_EQ(pair.at("verdict") == "tight",
              pair.at("gap_mm").get<double>() < pair.at("needed_mm").get<double>());
  }
}

TEST_F(SolidsVerbs, TheTightestPairsComeFirst) {
  const Answer answer = ask({"clearances", book_, "--tightest", "3"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_EQ(std::count(answer.out.begin(), answer.out.end(), '\n'), 5) << "a summary, a head and three pairs\n"
                                                                       << answer.out;
}

}  // namespace
}  // namespace prismwright
