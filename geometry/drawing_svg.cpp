#include "geometry/drawing_svg.h"

#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/text_box.h"
#include "geometry/base64.h"
#include "geometry/picture_studio.h"

namespace prismwright {

namespace {

std::string escaped(const std::string& words) {
  std::string safe;
  for (const char c : clean_words(words)) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

/// The sheet's y runs up, the file's down.
class SvgSheet {
 public:
  explicit SvgSheet(const SheetSize& size) : high_(size.height_mm()) {}

  void add(const DrawnPicture& picture) {
    if (!picture.image) return;
    const auto png = png_bytes(*picture.image);
    if (!png) return;
    pictures_ += fmt::format(
        "<image x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" preserveAspectRatio=\"none\" "
        "xlink:href=\"data:image/png;base64,{}\"/>\n",
        number(picture.low.x), number(high_ - picture.high.y), number(picture.high.x - picture.low.x),
        number(picture.high.y - picture.low.y), base64(*png));
  }

  void add(const Stroke& stroke) {
    std::string dashes;
    for (const double length : dashes_mm(stroke.line)) dashes += (dashes.empty() ? "" : ",") + number(length);
    if (!dashes.empty()) dashes = " stroke-dasharray=\"" + dashes + '"';
    strokes_ += fmt::format("<path d=\"{}\" stroke-width=\"{}\"{}{}/>\n", path_of(stroke),
                            number(width_mm(stroke.line)), dashes, fill_of(stroke));
  }

  void add(const DrawnText& text) {
    const char* anchor = text.anchor == Anchor::left     ? "start"
                         : text.anchor == Anchor::middle ? "middle"
                                                         : "end";
    const std::string x = number(text.place.x);
    const std::string y = number(high_ - text.place.y);
    texts_ += fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\"{}{}>{}</text>\n", x, y,
                          number(text.size_mm), anchor, text.bold ? " font-weight=\"bold\"" : "",
                          text.turned ? fmt::format(" transform=\"rotate(-90 {} {})\"", x, y) : "",
                          escaped(text.words));
  }

  [[nodiscard]] const std::string& pictures() const { return pictures_; }
  [[nodiscard]] const std::string& strokes() const { return strokes_; }
  [[nodiscard]] const std::string& texts() const { return texts_; }

 private:
  /// To a millionth of a millimetre of paper: what is lost is far below any tolerance of the arcs.
  static std::string number(double value) {
    std::string text = fmt::format("{:.6f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
  }

  static std::string fill_of(const Stroke& stroke) {
    if (!stroke.tone) return stroke.filled ? " fill=\"black\"" : "";
    return fmt::format(" fill=\"#{:02X}{:02X}{:02X}\"", stroke.tone->red, stroke.tone->green,
                       stroke.tone->blue);
  }

  [[nodiscard]] std::string path_of(const Stroke& stroke) const {
    std::string path = fmt::format("M{} {}", number(stroke.start.x), number(high_ - stroke.start.y));
    for (const PaperStep& step : stroke.steps) path += step_text(step);
    if (stroke.closed) path += 'Z';
    return path;
  }

  [[nodiscard]] std::string step_text(const PaperStep& step) const {
    const std::string to = number(step.to.x) + ' ' + number(high_ - step.to.y);
    if (step.turn == 0) return 'L' + to;
    const std::string radius = number(step.radius_mm);
    return fmt::format("A{} {} 0 {} {} {}", radius, radius, std::abs(step.turn) > kPi ? 1 : 0,
                       step.turn > 0 ? 0 : 1, to);
  }

  double high_;
  std::string pictures_;
  std::string strokes_;
  std::string texts_;
};

}  // namespace

std::string svg_text(const Sheet& sheet, const std::string& title) {
  SvgSheet svg(sheet.size);
  for (const DrawnPicture& picture : sheet.pictures) svg.add(picture);
  for (const Stroke& stroke : sheet.strokes) svg.add(stroke);
  for (const DrawnText& text : sheet.texts) svg.add(text);
  const double wide = sheet.size.width_mm();
  const double high = sheet.size.height_mm();
  return fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" version=\"1.1\" "
      "width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 "
      "0 {0} {1}\">\n"
      "<title>{2}</title>\n<rect width=\"{0}\" height=\"{1}\" fill=\"white\"/>\n{5}"
      "<g fill=\"none\" stroke=\"black\" stroke-linejoin=\"round\">\n{3}</g>\n"
      "<g fill=\"black\" font-family=\"sans-serif\">\n{4}</g>\n</svg>\n",
      wide, high, escaped(title), svg.strokes(), svg.texts(), svg.pictures());
}

}  // namespace prismwright
