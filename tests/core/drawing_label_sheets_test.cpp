#include "core/drawing/label_sheets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/qr_code.h"
#include "core/drawing/text_box.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

std::vector<PrismLabel> some_labels(int count) {
  std::vector<PrismLabel> labels;
  for (int i = 0; i < count; ++i)
    labels.push_back({fmt::format("P{:02}-U{:02}b", i % 32 + 1, i % 19 + 1), 1000 + i, {"Gull Rock", "lot 7"}});
  return labels;
}

/// Dark or light as the standard's finder pattern has it: a ring, a light ring, a square of three.
bool finder(int row, int column) {
  const int away = std::max(std::abs(row - 3), std::abs(column - 3));
  return away != 2;
}

TEST(QrCode, CarriesTheThreeFinderPatternsAndTheirTimingLines) {
  const auto code = qr_code(code_words("Gull Rock", "P01-C", 12));
  ASSERT_TRUE(code.ok());
  ASSERT_EQ((code->side - 17) % 4, 0) << "a side that the standard knows";
  for (int row = 0; row < 7; ++row) {
    for (int column = 0; column < 7; ++column) {
      EXPECT_EQ(code->at(row, column), finder(row, column));
      EXPECT_EQ(code->at(row, code->side - 7 + column), finder(row, column));
      EXPECT_EQ(code->at(code->side - 7 + row, column), finder(row, column));
    }
  }
  for (int i = 8; i < code->side - 8; ++i) EXPECT_EQ(code->at(6, i), i % 2 == 0);
}

TEST(QrCode, IsDrawnWithItsQuietZoneAndEveryDarkModuleCoveredOnce) {
  const auto code = qr_code("PRISMWRIGHT P01-C");
  ASSERT_TRUE(code.ok());
  const double module = code->module_mm(30);
  EXPECT_DOUBLE_EQ(module, 30.0 / (code->side + 8));
  const PaperBox glass = {{5 + 4 * module, 7 + 4 * module}, {35 - 4 * module, 37 - 4 * module}};
  double dark = 0;
  for (const Stroke& bar : qr_strokes(*code, {{5, 7}, {35, 37}})) {
    const double half = width_mm(bar.line) / 2;
    const PaperBox box = {{bar.start.x - half, bar.start.y - half},
                          {bar.steps[1].to.x + half, bar.steps[1].to.y + half}};
    EXPECT_TRUE(bar.filled && bar.closed);
    EXPECT_TRUE(
        holds({{glass.low.x - 1e-9, glass.low.y - 1e-9}, {glass.high.x + 1e-9, glass.high.y + 1e-9}}, box));
    dark += (box.high.x - box.low.x) * (box.high.y - box.low.y);
  }
  const auto modules = std::ranges::count(code->dark, true);
  EXPECT_NEAR(dark, static_cast<double>(modules) * module * module, 1e-6);
}

TEST(QrCode, RefusesNothingAndTooMuch) {
  EXPECT_FALSE(qr_code("").ok());
  EXPECT_TRUE(qr_code(std::string(2331, 'x')).ok());
  const auto full = qr_code(std::string(2332, 'x'));
  ASSERT_FALSE(full.ok());
  EXPECT_THAT(full.problem().text, HasSubstr("2332 bytes"));
}

TEST(QrCode, SaysLensMarkAndNumberAndNeverCutsALetterInTwo) {
  EXPECT_EQ(code_words("Gull Rock", "P01-C", 12), "PRISMWRIGHT Gull Rock P01-C 12");
  EXPECT_EQ(code_words("", "P01-C", 0), "PRISMWRIGHT P01-C");
  // 39 bytes and a letter of two: it does not fit whole into 40.
  EXPECT_EQ(code_words(std::string(39, 'a') + "\u00E9", "P01-C", 3),
            "PRISMWRIGHT " + std::string(39, 'a') + " P01-C 3");
}

TEST(LabelSheets, KeepEveryWordAndCodeOnItsOwnLabelWhateverTheSheet) {
  const auto labels = some_labels(31);
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    for (const auto& [columns, rows, margin, gap] : {std::tuple{3, 8, 8.0, 2.0},
                                                     {1, 1, 10.0, 0.0},
                                                     {5, 13, 5.0, 1.0},
                                                     {2, 7, 12.0, 0.0},
                                                     {7, 5, 6.0, 2.0}}) {
      SCOPED_TRACE(fmt::format("{} {} by {}", name_of(paper), columns, rows));
      LabelSheetSettings settings{paper, columns, rows, margin, gap, 0, true};
      const auto drawing = label_sheets("Gull Rock", labels, settings);
      ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
      const int on_sheet = columns * rows;
      EXPECT_EQ(drawing->sheets.size(), static_cast<std::size_t>((31 + on_sheet - 1) / on_sheet));
      std::vector<std::string> marks;
      for (const Sheet& sheet : drawing->sheets) {
        std::vector<PaperBox> frames;
        std::vector<PaperBox> taken;
        for (const Stroke& stroke : sheet.strokes) {
          const PaperBox box = {stroke.start, stroke.steps[1].to};
          if (!stroke.filled) frames.push_back(box);
          const PaperBox page = {{0, 0}, {sheet.size.width_mm(), sheet.size.height_mm()}};
          EXPECT_TRUE(holds(page, box));
        }
        for (const Stroke& stroke : sheet.strokes) {
          if (stroke.filled) {
            const PaperBox box = {stroke.start, stroke.steps[1].to};
            EXPECT_EQ(std::ranges::count_if(frames, [&](const PaperBox& frame) { return holds(frame, box); }),
                      1);
            for (const DrawnText& text : sheet.texts) EXPECT_FALSE(overlap(box_of(text), box)) << text.words;
          }
        }
        for (const DrawnText& text : sheet.texts) {
          const PaperBox box = box_of(text);
          EXPECT_EQ(std::ranges::count_if(frames, [&](const PaperBox& frame) { return holds(frame, box); }), 1)
              << text.words;
          for (const PaperBox& other : taken) EXPECT_FALSE(overlap(box, other)) << text.words;
          taken.push_back(box);
          if (text.bold) marks.push_back(text.words);
        }
      }
      ASSERT_EQ(marks.size(), labels.size());
      for (std::size_t i = 0; i < marks.size(); ++i)
        EXPECT_EQ(marks[i], labels[i].mark) << "whole and in order";
    }
  }
}

TEST(LabelSheets, BeginWhereTheSheetIsStillWhole) {
  LabelSheetSettings settings;
  settings.used = 22;
  const auto drawing = label_sheets("Gull Rock", some_labels(3), settings);
  ASSERT_TRUE(drawing.ok());
  ASSERT_EQ(drawing->sheets.size(), 2u);
  const auto marks = [](const Sheet& sheet) {
    return std::ranges::count_if(sheet.texts, [](const DrawnText& text) { return text.bold; });
  };
  EXPECT_EQ(marks(drawing->sheets[0]), 2);
  EXPECT_EQ(marks(drawing->sheets[1]), 1);
}

TEST(LabelSheets, RefuseWhatCannotBePrintedOrRead) {
  const auto refusal = [](const std::vector<PrismLabel>& labels, const LabelSheetSettings& settings) {
    const auto drawing = label_sheets("Gull Rock", labels, settings);
    return drawing.ok() ? std::string() : drawing.problem().text;
  };
  LabelSheetSettings settings;
  EXPECT_THAT(refusal({}, settings), HasSubstr("No prism"));
  settings.rows = 0;
  EXPECT_THAT(refusal(some_labels(1), settings), HasSubstr("0 rows"));
  settings.rows = 40;
  EXPECT_THAT(refusal(some_labels(1), settings), HasSubstr("too small for a code"));
  settings = {};
  settings.used = 24;
  EXPECT_THAT(refusal(some_labels(1), settings), HasSubstr("holds 24"));
  settings = {};
  settings.margin_mm = -1;
  EXPECT_THAT(refusal(some_labels(1), settings), HasSubstr("margin of -1 mm"));
  settings = {};
  settings.gap_mm = 60;
  EXPECT_THAT(refusal(some_labels(1), settings), HasSubstr("too small"));
}

}  // namespace
}  // namespace prismwright
