// Pictures and tones on paper, read back by other programs.
#include <cairo.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <fstream>
#include <iterator>
#include <sstream>

#include "geometry/base64.h"
#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/picture_studio.h"
#include "tests/support/empty_folder.h"
#include "tests/support/other_program.h"

namespace prismwright {
namespace {

using Colour = std::array<int, 3>;

/// Five by four points, no two alike.
PointImage small_picture() {
  PointImage image{5, 4, {}};
  for (int i = 0; i < 20; ++i) {
    for (const int v : {10 * i, 200 - 10 * i, (i * 97) % 256})
      image.rgb.push_back(static_cast<std::uint8_t>(v));
  }
  return image;
}
Colour colour_at(const PointImage& image, int x, int y) {
  const auto at = 3 * static_cast<std::size_t>(y * image.wide + x);
  return {image.rgb[at], image.rgb[at + 1], image.rgb[at + 2]};
}

/// A picture 50 mm by 40 mm whose lower left corner stands at (20, 30), a toned square on it and one beside it.
Sheet sheet_with(std::shared_ptr<const PointImage> image) {
  Sheet sheet;
  sheet.size = {Paper::a5, false};
  sheet.pictures.push_back({{20, 30}, {70, 70}, std::move(image)});
  for (const double x : {30.0, 100.0}) {
    Stroke square = rectangle_stroke({x, 40}, {x + 10, 50}, LineClass::outline);
    square.tone = PaperColour{0x6F, 0xA7, 0x9A};
    sheet.strokes.push_back(std::move(square));
  }
  Stroke dot = rectangle_stroke({120, 40}, {130, 50}, LineClass::thin);
  dot.filled = true;
  sheet.strokes.push_back(std::move(dot));
  return sheet;
}

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}
void write(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

/// A binary PPM, as pdftoppm and pdfimages write it.
PointImage read_ppm(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::string kind;
  int most = 0;
  PointImage image;
  file >> kind >> image.wide >> image.high >> most;
  file.get();
  EXPECT_EQ(kind, "P6");
  image.rgb.assign(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
  EXPECT_EQ(image.rgb.size(), 3 * static_cast<std::size_t>(image.wide * image.high));
  return image;
}

Drawing two_sheets() {
  const auto image = std::make_shared<const PointImage>(small_picture());
  return {"Pictures", "2026-03-01", {sheet_with(image), sheet_with(image)}};
}

TEST(PictureInAPdf, KeepsEveryPointAndStandsOnceForTwoSheets) {
  const EmptyFolder folder;
  const auto bytes = pdf_bytes(two_sheets());
  ASSERT_TRUE(bytes.ok());
  EXPECT_EQ(*bytes, pdf_bytes(two_sheets()).value());
  write(folder.file("a.pdf"), *bytes);
  answer_of("pdfimages " + folder.file("a.pdf") + ' ' + folder.file("point"));
  EXPECT_EQ(read_ppm(folder.file("point-000.ppm")).rgb, small_picture().rgb);
  // The numbers of the two images' objects are equal.
  const std::string list =
      answer_of("pdfimages -list " + folder.file("a.pdf") + " | awk 'NR > 2 { print $11 }' | sort -u | wc -l");
  EXPECT_EQ(std::stoi(list), 1);
}

TEST(PictureInAPdf, StandsInItsPlaceUnderTonesAndLines) {
  const EmptyFolder folder;
  write(folder.file("a.pdf"), pdf_bytes(two_sheets()).value());
  answer_of("pdftoppm -r 254 -f 1 -l 1 -singlefile " + folder.file("a.pdf") + ' ' + folder.file("page"));
  const PointImage page = read_ppm(folder.file("page.ppm"));
  const PointImage small = small_picture();
  const auto at = [&](double x_mm, double y_mm) {
    return colour_at(page, static_cast<int>(10 * x_mm), static_cast<int>(10 * (210 - y_mm)));
  };
  const auto expect_near = [](const Colour& seen, const Colour& meant) {
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(seen[i], meant[i], 8);
  };
  // A viewer may smooth between points: at the very corners there is little of that.
  expect_near(at(20.15, 69.85), colour_at(small, 0, 0));
  expect_near(at(69.85, 69.85), colour_at(small, 4, 0));
  expect_near(at(20.15, 30.15), colour_at(small, 0, 3));
  expect_near(at(69.85, 30.15), colour_at(small, 4, 3));
  expect_near(at(35, 45), {0x6F, 0xA7, 0x9A});
  expect_near(at(105, 45), {0x6F, 0xA7, 0x9A});
  expect_near(at(125, 45), {0, 0, 0});
  expect_near(at(30, 45), {0, 0, 0});
  expect_near(at(18, 45), {255, 255, 255});
}

TEST(PictureInAnSvg, IsThePngItselfAndTonesAreFilled) {
  const EmptyFolder folder;
  const std::string svg = svg_text(two_sheets().sheets.front(), "Pictures");
  EXPECT_NE(svg.find("<image x=\"20\" y=\"140\" width=\"50\" height=\"40\" preserveAspectRatio=\"none\""),
            std::string::npos);
  EXPECT_NE(svg.find("fill=\"#6FA79A\""), std::string::npos);
  const std::string head = "base64,";
  const std::size_t from = svg.find(head) + head.size();
  write(folder.file("text"), svg.substr(from, svg.find('"', from) - from));
  answer_of("base64 -d " + folder.file("text") + " > " + folder.file("picture.png"));
  EXPECT_EQ(text_of(folder.file("picture.png")), png_bytes(small_picture()).value());
  EXPECT_LT(svg.find("<image"), svg.find("<path"));
}

TEST(PngBytes, AreReadBackPointByPoint) {
  const EmptyFolder folder;
  const PointImage image = small_picture();
  write(folder.file("a.png"), png_bytes(image).value());
  cairo_surface_t* read = cairo_image_surface_create_from_png(folder.file("a.png").c_str());
  ASSERT_EQ(cairo_surface_status(read), CAIRO_STATUS_SUCCESS);
  ASSERT_EQ(cairo_image_surface_get_width(read), 5);
  ASSERT_EQ(cairo_image_surface_get_height(read), 4);
  for (int y = 0; y < 4; ++y) {
    for (int x = 0; x < 5; ++x) {
      std::uint32_t point = 0;
      std::memcpy(&point, cairo_image_surface_get_data(read) + y * cairo_image_surface_get_stride(read) + 4 * x,
                  4);
      const Colour c = colour_at(image, x, y);
      EXPECT_EQ(point & 0xFFFFFFU, static_cast<std::uint32_t>(c[0] << 16 | c[1] << 8 | c[2]));
    }
  }
  cairo_surface_destroy(read);
}

TEST(PngBytes, AreRefusedWhereBytesAreMissing) {
  PointImage image = small_picture();
  image.rgb.pop_back();
  EXPECT_EQ(png_bytes(image).problem().code, "png");
  EXPECT_EQ(png_bytes({}).problem().code, "png");
  // Such a picture is left out of drawings.
  const Sheet sheet = sheet_with(std::make_shared<const PointImage>(image));
  EXPECT_EQ(svg_text(sheet, "").find("<image"), std::string::npos);
  EXPECT_TRUE(pdf_bytes({"", "", {sheet}}).ok());
}

// RFC 4648, "The Base16, Base32, and Base64 Data Encodings", section 10, test vectors (from memory).
TEST(Base64, IsThatOfTheStandard) {
  EXPECT_EQ(base64(""), "");
  EXPECT_EQ(base64("f"), "Zg==");
  EXPECT_EQ(base64("fo"), "Zm8=");
  EXPECT_EQ(base64("foo"), "Zm9v");
  EXPECT_EQ(base64("foobar"), "Zm9vYmFy");
}

}  // namespace
}  // namespace prismwright
