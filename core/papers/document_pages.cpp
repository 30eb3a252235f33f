#include "core/papers/document_pages.h"

#include <algorithm>

#include "core/drawing/table_pages.h"
#include "core/drawing/text_box.h"
#include "core/papers/document_type.h"

namespace prismwright {

using namespace document_type;

namespace {

constexpr double kBoldIsWider = 1.2;    ///< than plain letters, at most
constexpr double kSmallestTitle = 0.6;  ///< of the size of titles

}  // namespace

std::vector<std::string> document_type::lines_of(const std::string& words, double size_mm, double room_mm,
                                                 bool bold) {
  std::vector<std::string> lines = broken_words(words, size_mm, bold ? room_mm / kBoldIsWider : room_mm);
  for (std::string& line : lines) line = shortened(line, size_mm, room_mm, bold);
  return lines;
}

Paper document_paper(const HouseWords& words) {
  const Paper paper = words.paper.value_or(Paper::a4);
  return paper == Paper::a5 ? Paper::a4 : paper;
}

DocumentPages::DocumentPages(Paper paper) : scale_(paper == Paper::a3 ? kLargerOnA3 : 1), pages_(paper) {}

double DocumentPages::inset() const { return kInset_mm * scale_; }

PaperPoint DocumentPages::place() const {
  const PaperPoint at = pages_.place();
  return {at.x + inset(), at.y};
}

bool DocumentPages::need(double mm) {
  const double before = pages_.place().y;
  pages_.need(mm);
  const bool turned = pages_.place().y != before;
  if (turned) ++sheets_;
  return turned;
}

void DocumentPages::turn_page() { need(pages_.room() + 1); }

void DocumentPages::write_words(const std::string& words, double size_mm, double indent_mm) {
  for (const std::string& line : lines_of(words, size_mm, wide() - indent_mm, false)) {
    need(kPitch * size_mm);
    const PaperPoint at = place();
    maker().write({line, {at.x + indent_mm, at.y - size_mm}, size_mm});
    pages_.skip(kPitch * size_mm);
  }
}

void DocumentPages::title(const std::string& words, const std::string& under) {
  const double wanted = kTitle_mm * scale_;
  const double needs = text_width_mm(clean_words(words), wanted, true);
  const double size = needs <= wide() ? wanted : std::max(kSmallestTitle, wide() / needs) * wanted;
  skip(3);
  const bool one_line = text_width_mm(clean_words(words), size, true) <= wide() + 1e-6;
  const std::vector<std::string> lines =
      one_line ? std::vector{clean_words(words)} : lines_of(words, size, wide(), true);
  for (const std::string& line : lines) {
    need(kPitch * size);
    maker().write({line, {place().x, place().y - size}, size, Anchor::left, false, true});
    pages_.skip(kPitch * size);
  }
  write_words(under, kUnder_mm * scale_, 0);
  skip(2);
}

void DocumentPages::write_heading(const std::string& words, double size_mm) {
  const PaperPoint at = place();
  maker().write({shortened(clean_words(words), size_mm, wide(), true),
                 {at.x, at.y - size_mm},
                 size_mm,
                 Anchor::left,
                 false,
                 true});
}

void DocumentPages::chapter(const std::string& words, double with_mm) {
  const double size = kChapter_mm * scale_;
  if (!need(2.6 * size + with_mm * scale_)) pages_.skip(0.9 * size);
  write_heading(words, size);
  const PaperPoint at = place();
  maker().line({at.x, at.y - 1.45 * size}, {at.x + wide(), at.y - 1.45 * size}, LineClass::outline);
  pages_.skip(2.0 * size);
}

void DocumentPages::section(const std::string& words, double with_mm) {
  const double size = kSection_mm * scale_;
  if (!need(2.6 * size + with_mm * scale_)) pages_.skip(0.6 * size);
  write_heading(words, size);
  pages_.skip(1.7 * size);
}

void DocumentPages::paragraph(const std::string& words) {
  write_words(words, kBody_mm * scale_, 0);
  skip(1.3);
}

void DocumentPages::points(const std::vector<std::string>& sentences) {
  const double size = kBody_mm * scale_;
  for (const std::string& sentence : sentences) {
    need(kPitch * size);
    const PaperPoint at = place();
    const double middle = at.y - 0.65 * size;
    maker().line({at.x + 0.3 * size, middle}, {at.x + 0.9 * size, middle}, LineClass::outline);
    write_words(sentence, size, kPoint_mm * scale_);
    skip(0.7);
  }
  skip(0.8);
}

void DocumentPages::note(const std::string& words) {
  skip(0.8);
  write_words(words, kNote_mm * scale_, 0);
  skip(1.3);
}

void DocumentPages::picture(const std::shared_ptr<const PointImage>& image, double most_mm) {
  if (!image || image->wide <= 0 || image->high <= 0) return;
  const double shape = static_cast<double>(image->high) / image->wide;
  const double high = std::min(most_mm * scale_, wide() * shape);
  need(high + 2 * scale_);
  const double left = place().x + (wide() - high / shape) / 2;
  const PaperPoint low = {left, place().y - high};
  pictures_.push_back({sheets_ - 1, {low, {left + high / shape, low.y + high}, image}});
  pages_.skip(high);
  skip(3);
}

PaperBox DocumentPages::figure(double high_mm) {
  need(high_mm * scale_);
  const PaperPoint at = place();
  pages_.skip(high_mm * scale_);
  return {{at.x, at.y - high_mm * scale_}, {at.x + wide(), at.y}};
}

Drawing DocumentPages::finished(const std::string& subject, const HouseWords& words) {
  std::vector<UntitledSheet> sheets;
  for (SheetMaker& maker : pages_.take()) sheets.push_back({std::move(maker), subject, "none"});
  Drawing drawing = titled(std::move(sheets), words);
  for (PlacedPicture& placed : pictures_)
    drawing.sheets[placed.sheet].pictures.push_back(std::move(placed.picture));
  return drawing;
}

}  // namespace prismwright
