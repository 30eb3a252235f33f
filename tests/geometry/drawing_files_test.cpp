#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>
#include <sstream>

#include <cairo.h>
#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/drawing/lengths.h"
#include "core/drawing/text_box.h"
#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/section_drawing_files.h"
#include "tests/support/empty_folder.h"
#include "tests/support/other_program.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::istringstream rest(text);
  for (std::string word; rest >> word;) words.push_back(word);
  return words;
}

Section solved(const LensValues& values) {
  auto section = solve_section(values.section_input());
  EXPECT_TRUE(section.ok());
  return section.ok() ? *section : Section{};
}

SectionSheetSettings said(bool inches) {
  SectionSheetSettings settings;
  settings.title = "Gull Rock & <others>";
  settings.order = "fourth order";
  settings.material = "acrylic";
  settings.date = "2026-03-01";
  settings.inches = inches;
  return settings;
}

class PdfOfALens : public ::testing::TestWithParam<bool> {};

TEST_P(PdfOfALens, ReadBackHoldsEveryMarkOnceAListAndEveryCornerToTheLastDigit) {
  const EmptyFolder folder;
  const std::string path = folder.file("section.pdf");
  const Section section = solved(fourth_order_bullseye(Faces::true_curve));
  const auto paths = write_section_drawing(section, said(GetParam()), path);
  ASSERT_TRUE(paths.ok()) << paths.problem().text;
  EXPECT_EQ(folder.names(), std::vector<std::string>{"section.pdf"});
  const auto picture = words_of(answer_of("pdftotext -layout -f 1 -l 1 " + path + " -"));
  const auto list = words_of(answer_of("pdftotext -layout -f 2 -l 2 " + path + " - | sed '/Thickness:/,$d'"));
  const auto all = words_of(answer_of("pdftotext -layout -f 2 " + path + " -"));
  const LengthWords lengths{GetParam()};
  for (const Zone& zone : section.zones) {
    // A ring's two images are pieces with marks of their own; the list of zones has the zone's.
    const bool halves = zone.kind == ZoneKind::ring;
    for (const std::string& piece :
         halves ? std::vector{zone.mark + "a", zone.mark + "b"} : std::vector{zone.mark})
      EXPECT_EQ(std::ranges::count(picture, piece), 1) << piece;
    EXPECT_EQ(std::ranges::count(list, zone.mark), 1) << zone.mark;
    EXPECT_EQ(std::ranges::count(all, halves ? zone.mark + "a" : zone.mark), halves ? 1 : 2) << zone.mark;
    EXPECT_EQ(std::ranges::count(list, degrees_words(zone.from_deg)) > 0, true) << zone.mark;
    for (const Face& face : zone.profile.faces) {
      for (const double value : {face.start().r, face.start().z}) {
        EXPECT_GT(std::ranges::count(all, lengths.exact(value)), 0) << zone.mark << ' ' << lengths.exact(value);
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(InBothUnits, PdfOfALens, ::testing::Bool());

TEST(PdfOfASection, HasPagesOfThePaperAndIsTheSameTwice) {
  const EmptyFolder folder;
  const Section section = solved(fourth_order_bullseye(Faces::arc));
  SectionSheetSettings settings = said(false);
  settings.paper = Paper::letter;
  const auto drawing = section_sheet(section, settings);
  ASSERT_TRUE(drawing.ok());
  const auto bytes = pdf_bytes(*drawing);
  ASSERT_TRUE(bytes.ok());
  EXPECT_EQ(*bytes, pdf_bytes(*drawing).value());
  std::ofstream(folder.file("a.pdf"), std::ios::binary) << *bytes;
  const std::string info = answer_of("pdfinfo " + folder.file("a.pdf"));
  EXPECT_NE(info.find("612 x 792 pts"), std::string::npos) << info;
  EXPECT_NE(info.find(fmt::format("Pages:           {}", drawing->sheets.size())), std::string::npos) << info;
  EXPECT_NE(info.find("Gull Rock & <others>"), std::string::npos) << info;
}

TEST(SvgOfALens, KeepsArcsAsArcsAndIsTrueToSize) {
  const EmptyFolder folder;
  const Section section = solved(fourth_order_bullseye(Faces::arc));
  const auto paths = write_section_drawing(section, said(false), folder.file("section.svg"));
  ASSERT_TRUE(paths.ok()) << paths.problem().text;
  ASSERT_GE(paths->size(), 2u);
  EXPECT_EQ(paths->at(1), folder.file("section-2.svg"));
  EXPECT_EQ(folder.names().size(), paths->size());
  const std::string text = text_of(paths->front());
  EXPECT_NE(text.find("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""), std::string::npos);
  EXPECT_NE(text.find("Gull Rock &amp; &lt;others&gt;"), std::string::npos);
  // Drawn at 1:5: each reflecting face's radius stands in the file, on paper.
  for (const Zone& zone : section.zones) {
    const Face* face = zone.profile.find(FaceRole::reflecting);
    if (face == nullptr) continue;
    const std::string radius = fmt::format("{:.3f}", face->radius_mm / 5);
    EXPECT_NE(text.find("A" + radius.substr(0, radius.size() - 1)), std::string::npos)
        << zone.mark << ' ' << radius;
  }
}

TEST(WidthsOfWords, AreNeverLessThanTheFontNeeds) {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 8, 8);
  cairo_t* pen = cairo_create(surface);
  cairo_font_options_t* unhinted = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(unhinted, CAIRO_HINT_METRICS_OFF);
  cairo_set_font_options(pen, unhinted);
  const auto drawing = section_sheet(solved(fourth_order_bullseye(Faces::true_curve)), said(false));
  ASSERT_TRUE(drawing.ok());
  int texts = 0;
  for (const Sheet& sheet : drawing->sheets) {
    for (const DrawnText& text : sheet.texts) {
      cairo_select_font_face(pen, "sans", CAIRO_FONT_SLANT_NORMAL,
                             text.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
      cairo_set_font_size(pen, text.size_mm * 100);
      cairo_text_extents_t extents;
      cairo_text_extents(pen, text.words.c_str(), &extents);
      EXPECT_LE(extents.x_advance / 100, text_width_mm(text.words, text.size_mm, text.bold) + 1e-6)
          << text.words;
      EXPECT_GE(extents.x_advance / 100, 0.85 * text_width_mm(text.words, text.size_mm, text.bold))
          << text.words;
      ++texts;
    }
  }
  EXPECT_GT(texts, 500);
  cairo_font_options_destroy(unhinted);
  cairo_destroy(pen);
  cairo_surface_destroy(surface);
}

TEST(WriteSectionDrawing, RefusesAnEndingThatItDoesNotKnow) {
  const EmptyFolder folder;
  const auto paths =
      write_section_drawing(solved(fourth_order_bullseye(Faces::arc)), {}, folder.file("section.png"));
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().code, "ending");
  EXPECT_TRUE(folder.names().empty());
}

TEST(WriteSectionDrawing, SaysThatAFileCouldNotBeWritten) {
  const EmptyFolder folder;
  const auto paths =
      write_section_drawing(solved(fourth_order_bullseye(Faces::arc)), {}, folder.file("none/section.dxf"));
  ASSERT_FALSE(paths.ok());
  EXPECT_EQ(paths.problem().trouble, Trouble::file);
}

}  // namespace
}  // namespace prismwright
