#include <gmock/gmock.h>

#include <cmath>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class ProveVerb : public BatchDesk {};

TEST_F(ProveVerb, SharesAddToOneAndNothingEscapesFromATightStack) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.land_mm=0", "section.gap_mm=0"}).code, 0);
  const Answer answer = ask({"prove", book, "--json"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto proof = answer.json();
  EXPECT_GE(proof.at("elevations"), 20000);
  EXPECT_EQ(proof.at("share_escaped"), 0);
  EXPECT_LT(proof.at("worst_departure_deg").get<double>(), 0.001) << "true curves";
  const double sum = proof.at("share_level").get<double>() + proof.at("share_stray").get<double>() +
                     proof.at("share_escaped").get<double>() + proof.at("share_stopped").get<double>() +
                     proof.at("share_lost").get<double>();
  EXPECT_NEAR(sum, 1, 1e-9);
  EXPECT_EQ(proof.at("share_lost"),
            proof.at("share_lost_in_lands").get<double>() + proof.at("share_lost_at_reflection").get<double>());
}

TEST_F(ProveVerb, ZonesHaveTheirKindsAndOnlyReflectingOnesAMargin) {
  const std::string book = make_book({"--order", "4"});
  const auto proof = ask({"prove", book, "--json"}).json();
  ASSERT_FALSE(proof.at("zones").empty());
  for (const auto& zone : proof.at("zones")) {
    const std::string kind = zone.at("kind");
    const bool reflecting = kind == "upper reflecting" || kind == "lower reflecting";
    EXPECT_EQ(zone.at("least_margin_deg").is_number(), reflecting) << zone.at("mark");
    EXPECT_LT(zone.at("from_deg").get<double>(), zone.at("to_deg").get<double>()) << zone.at("mark");
  }
}

TEST_F(ProveVerb, SettingGapsLeaveDarkStripsAsPairs) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.gap_mm=1"}).code, 0);
  const auto strips = ask({"prove", book, "--json"}).json().at("dark_strips_mm");
  ASSERT_FALSE(strips.empty());
  for (const auto& strip : strips) {
    ASSERT_EQ(strip.size(), 2u);
    EXPECT_LT(strip[0].get<double>(), strip[1].get<double>());
  }
}

TEST_F(ProveVerb, FlatInnerFacesTellWhatTheyDoAwayFromThePanelsMiddle) {
  const std::string book = make_book({"--order", "4", "--work", "belt", "--panels", "24"});
  auto proof = ask({"prove", book, "--json"}).json();
  EXPECT_TRUE(proof.at("facet_worst_departure_deg").is_null());
  EXPECT_TRUE(proof.at("zones").at(0).at("facet").is_null());
  ASSERT_EQ(ask({"set", book, "section.inner_face=flat"}).code, 0);
  proof = ask({"prove", book, "--json"}).json();
  double worst = 0;
  for (const auto& zone : proof.at("zones")) {
    const bool refracting = zone.at("kind") == "centre" || zone.at("kind") == "refracting";
    ASSERT_EQ(zone.at("facet").is_object(), refracting) << zone.at("mark");
    if (!refracting) continue;
    const double departure = zone.at("facet").at("worst_departure_deg");
    EXPECT_GT(std::abs(departure), 1e-3) << zone.at("mark");
    EXPECT_LT(zone.at("facet").at("worst_azimuth_deg"), 7.5);
    worst = std::max(worst, std::abs(departure));
  }
  EXPECT_DOUBLE_EQ(std::abs(proof.at("facet_worst_departure_deg").get<double>()), worst);
  EXPECT_LT(proof.at("worst_departure_deg"), 0.001) << "the middle of the panel stays as it was";
  EXPECT_LT(proof.at("facet_lit_to_deg"), proof.at("facet_side_deg"));
  const Answer answer = ask({"prove", book});
  EXPECT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("flat inner faces"));
  EXPECT_THAT(answer.out, HasSubstr("sideways deg"));
}

TEST_F(ProveVerb, FlatInnerFacesOfWidePanelsAreRefusedOrNotWell) {
  const std::string book = make_book({"--order", "4", "--work", "belt", "--panels", "8"});
  const Answer refused = ask({"set", book, "section.inner_face=flat"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("at most 17.6 deg wide"));
  ASSERT_EQ(ask({"set", book, "section.inner_face=flat", "section.edge_mm=22"}).code, 0);
  const Answer answer = ask({"prove", book});
  EXPECT_EQ(answer.code, 1);
  EXPECT_THAT(answer.err, HasSubstr("flat inner face of R"));
}

TEST_F(ProveVerb, ArcsThatDepartByMoreThanIsAllowedAreNotWell) {
  const std::string book = make_book({"--order", "1", "--faces", "arc"});
  ASSERT_EQ(ask({"set", book, "section.level_within_deg=0.01"}).code, 0);
  const Answer answer = ask({"prove", book});
  EXPECT_EQ(answer.code, 1);
  EXPECT_THAT(answer.err, HasSubstr("0.01 deg allowed"));
  EXPECT_EQ(ask({"prove", book, "--json"}).code, 1);
}

TEST_F(ProveVerb, TheTableNamesEveryZone) {
  const std::string book = make_book({"--order", "6", "--work", "belt"});
  const Answer answer = ask({"prove", book});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("Level within"));
  const auto proof = ask({"prove", book, "--json"}).json();
  for (const auto& zone : proof.at("zones")) {
    EXPECT_THAT(answer.out, HasSubstr("  " + zone.at("mark").get<std::string>() + " "));
  }
}

TEST_F(ProveVerb, LossesAndTheLevelShareAddToOne) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "section.upper_rib_mm=6"}).code, 0);
  const auto proof = ask({"prove", book, "--json"}).json();
  double sum = proof.at("share_level");
  for (const auto& loss : proof.at("losses")) sum += loss.at("share").get<double>();
  EXPECT_NEAR(sum, 1, 1e-9);
  const auto rib = row_where(proof.at("losses"), "cause", "on a horizontal rib");
  ASSERT_FALSE(rib.is_null());
  EXPECT_EQ(rib.at("zone"), "upper rib");
  EXPECT_THAT(ask({"prove", book}).out, HasSubstr("on a horizontal rib"));
}

TEST_F(ProveVerb, ALampWithAHeightIsProvedToo) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"set", book, "lamp.height_mm=0"}).code, 0);
  EXPECT_FALSE(ask({"prove", book, "--json"}).json().contains("lamp"));
  ASSERT_EQ(ask({"set", book, "lamp.height_mm=20"}).code, 0);
  const auto lamp = ask({"prove", book, "--json"}).json().at("lamp");
  EXPECT_EQ(lamp.at("height_mm"), 20);
  const double sum = lamp.at("share_level").get<double>() + lamp.at("share_stray").get<double>() +
                     lamp.at("share_escaped").get<double>() + lamp.at("share_stopped").get<double>() +
                     lamp.at("share_lost").get<double>();
  EXPECT_NEAR(sum, 1, 1e-9);
  EXPECT_GT(lamp.at("rms_departure_deg").get<double>(), 0.1);
  EXPECT_THAT(ask({"prove", book}).out, HasSubstr("A lamp 20 mm high"));
}

TEST_F(ProveVerb, ZonesHaveTheirGlassAndColours) {
  const std::string book = make_book({"--order", "6"});
  const auto proof = ask({"prove", book, "--json"}).json();
  const auto shown = ask({"show", book, "--json"}).json();
  double mass_g = 0;
  for (const auto& zone : proof.at("zones")) {
    mass_g += zone.at("glass").at("mass_g").get<double>();
    EXPECT_LE(zone.at("glass").at("largest_g"), zone.at("glass").at("mass_g"));
    if (zone.at("kind") != "refracting") continue;
    EXPECT_LT(zone.at("colour").at("F_deg"), zone.at("colour").at("C_deg")) << "blue is bent more";
  }
  // The solids of the other verb, measured by the modeller.
  const double solids_g = shown.at("totals").at("mass_g");
  EXPECT_NEAR(mass_g, solids_g, 1e-4 * solids_g);
}

TEST_F(ProveVerb, SaysNothingOfColoursInAMaterialOfOneIndex) {
  const std::string book = make_book({"--order", "6"});
  ASSERT_EQ(ask({"set", book, "material.name=crown"}).code, 0);
  const auto proof = ask({"prove", book, "--json"}).json();
  for (const auto& zone : proof.at("zones")) {
    EXPECT_TRUE(zone.at("colour").at("F_deg").is_null()) << zone.at("mark");
    EXPECT_TRUE(zone.at("colour").at("d_deg").is_number()) << zone.at("mark");
    EXPECT_TRUE(zone.at("colour_low").at("C_deg").is_null()) << zone.at("mark");
  }
  EXPECT_THAT(ask({"prove", book}).out, HasSubstr("How crown disperses is not known"));
}

TEST_F(ProveVerb, TwiceGivesTheSameFigures) {
  const std::string book = make_book({"--order", "4", "--faces", "arc"});
  EXPECT_EQ(ask({"prove", book, "--json"}).out, ask({"prove", book, "--json"}).out);
}

}  // namespace
}  // namespace prismwright
