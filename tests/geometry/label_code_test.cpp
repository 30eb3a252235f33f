#include <array>
#include <cstdio>
#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/label_sheets.h"
#include "core/drawing/qr_code.h"
#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"
#include "tests/support/empty_folder.h"
#include "tests/support/other_program.h"

namespace prismwright {
namespace {

/// Lines that a program of other hands prints for a shell command.
std::vector<std::string> lines_of(const std::string& command) {
  std::vector<std::string> lines;
  std::istringstream rest(answer_of(command));
  for (std::string line; std::getline(rest, line);) lines.push_back(line);
  return lines;
}

TEST(LabelCode, IsReadFromThePrintedSheetByAnotherReader) {
  const EmptyFolder folder;
  const std::string title = "Gull Rock, Fl(2) 10s";
  std::vector<PrismLabel> labels;
  std::vector<std::string> asked;
  for (int i = 1; i <= 9; ++i) {
    labels.push_back(
        {"P0" + std::to_string(i % 8 + 1) + "-U" + std::to_string(10 + i), i % 5 == 0 ? 0 : i, {title}});
    asked.push_back(code_words(title, labels.back().mark, labels.back().serial));
  }
  const auto drawing = label_sheets(title, labels, {});
  ASSERT_TRUE(drawing.ok());
  const auto bytes = pdf_bytes(*drawing);
  ASSERT_TRUE(bytes.ok());
  ASSERT_TRUE(write_whole(folder.file("labels.pdf"), *bytes).ok());
  lines_of("pdftoppm -r 150 -gray -png " + folder.file("labels.pdf") + " " + folder.file("page"));
  const auto read =
      lines_of("zbarimg --nodbus --quiet --raw -Sdisable -Sqrcode.enable " + folder.file("page") + "-1.png");
  EXPECT_THAT(read, testing::UnorderedElementsAreArray(asked));
  // Words can be searched: every mark stands on the page once.
  const auto words = lines_of("pdftotext -raw " + folder.file("labels.pdf") + " - | tr -s ' \\f' '\\n'");
  for (const PrismLabel& label : labels) EXPECT_EQ(std::ranges::count(words, label.mark), 1) << label.mark;
}

}  // namespace
}  // namespace prismwright
