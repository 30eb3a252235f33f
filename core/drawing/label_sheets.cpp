#include "core/drawing/label_sheets.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/qr_code.h"
#include "core/drawing/text_box.h"

namespace prismwright {

namespace {

constexpr double kPad_mm = 1.5;
constexpr double kMark_mm = 6;
constexpr double kLeastMark_mm = 2;
constexpr double kSmallShare = 0.5;  ///< of the mark's height: the number's
constexpr double kLine_mm = 2.1;
constexpr double kPitch = 1.45;      ///< from line to line, of the letters' height
constexpr double kLabelLines = 3.2;  ///< height of all words, of the mark's
constexpr int kMost = 40;
constexpr double kMostMargin_mm = 60;

struct LabelSize {
  double width_mm = 0;
  double height_mm = 0;
};

LabelSize size_of(const LabelSheetSettings& settings) {
  const SheetSize sheet{settings.paper, false};
  const auto share = [&](double whole, int count) {
    return (whole - 2 * settings.margin_mm - (count - 1) * settings.gap_mm) / count;
  };
  return {share(sheet.width_mm(), settings.columns), share(sheet.height_mm(), settings.rows)};
}

/// Where code and words stand on a label whose lower left corner is the origin: side by side on a wide label,
/// one over the other on a tall one.
struct LabelPlaces {
  PaperBox code;
  PaperBox words;
};

LabelPlaces places_on(const LabelSize& size) {
  const bool wide = size.width_mm >= size.height_mm;
  const double room = (wide ? size.height_mm : size.width_mm) - 2 * kPad_mm;
  const double code = std::min(room, 0.55 * (wide ? size.width_mm : size.height_mm));
  const PaperPoint high = {size.width_mm - kPad_mm, size.height_mm - kPad_mm};
  if (wide) {
    const double low = (size.height_mm - code) / 2;
    return {{{kPad_mm, low}, {kPad_mm + code, low + code}}, {{2 * kPad_mm + code, kPad_mm}, high}};
  }
  const double left = (size.width_mm - code) / 2;
  return {{{left, high.y - code}, {left + code, high.y}},
          {{kPad_mm, kPad_mm}, {high.x, high.y - code - kPad_mm}}};
}

double mark_size(const std::vector<PrismLabel>& labels, const PaperBox& words) {
  double widest = 0;
  for (const PrismLabel& label : labels) widest = std::max(widest, text_width_mm(label.mark, 1, true));
  const double across = (words.high.x - words.low.x) / std::max(widest, 1e-9);
  const double upwards = (words.high.y - words.low.y) / kLabelLines;
  return std::min({kMark_mm, across, upwards});
}

Done check_counts(const LabelSheetSettings& settings, std::size_t labels) {
  const auto refused = [](const char* where, std::string text) {
    return request_problem("labels", where, std::move(text));
  };
  if (labels == 0)
    return refused("", "No prism is named, so there is no label to print. Name one by its mark.");
  for (const auto& [what, count] : {std::pair{"rows", settings.rows}, {"columns", settings.columns}}) {
    if (count < 1 || count > kMost)
      return refused(what, fmt::format("{} {} of labels cannot be: use 1 to {}.", count, what, kMost));
  }
  for (const auto& [what, mm] : {std::pair{"margin", settings.margin_mm}, {"gap", settings.gap_mm}}) {
    if (!(mm >= 0 && mm <= kMostMargin_mm))
      return refused(what, fmt::format("A {} of {} mm cannot be: use 0 to {} mm.", what, mm, kMostMargin_mm));
  }
  const int all = settings.rows * settings.columns;
  if (settings.used < 0 || settings.used >= all)
    return refused("used", fmt::format("{} labels used of a sheet that holds {}: say 0 to {}.", settings.used,
                                       all, all - 1));
  return {};
}

/// Everything that is alike on all labels.
struct LabelForm {
  LabelSize size;
  LabelPlaces places;
  double mark_mm = 0;
};

Outcome<LabelForm> form_of(const std::vector<PrismLabel>& labels, const std::vector<QrCode>& codes,
                           const LabelSheetSettings& settings) {
  LabelForm form;
  form.size = size_of(settings);
  const auto too_small = [&](const char* why) {
    return request_problem(
        "small_labels", "",
        fmt::format("{} rows of {} make labels of {:.1f} by {:.1f} mm, {}. Use fewer rows or "
                    "columns, or a smaller margin or gap.",
                    settings.rows, settings.columns, std::max(0.0, form.size.width_mm),
                    std::max(0.0, form.size.height_mm), why));
  };
  if (std::min(form.size.width_mm, form.size.height_mm) < 3 * kPad_mm)
    return too_small("too small to print on");
  form.places = places_on(form.size);
  const double ground = form.places.code.high.x - form.places.code.low.x;
  for (const QrCode& code : codes) {
    if (code.module_mm(ground) < kLeastModule_mm) return too_small("too small for a code that can be read");
  }
  form.mark_mm = mark_size(labels, form.places.words);
  if (form.mark_mm < kLeastMark_mm) return too_small("too small for the marks");
  return form;
}

/// Words from the top down; lines for which there is no room are left out.
void write_words(Sheet& sheet, const PrismLabel& label, const LabelForm& form, PaperPoint origin) {
  const PaperBox& room = form.places.words;
  const double left = origin.x + room.low.x;
  const double across = room.high.x - room.low.x;
  double top = origin.y + room.high.y;
  const auto write = [&](const std::string& words, double size_mm, bool bold) {
    DrawnText text{shortened(clean_words(words), size_mm, across, bold), {left, top - size_mm}, size_mm};
    text.bold = bold;
    const PaperBox box = box_of(text);
    // Letters of another script may stand taller than their size says.
    text.place.y -= std::max(0.0, box.high.y - top);
    if (text.words.empty() || box_of(text).low.y < origin.y + room.low.y) return;
    top = text.place.y - (kPitch - 1) * size_mm;
    sheet.texts.push_back(std::move(text));
  };
  write(label.mark, form.mark_mm, true);
  if (label.serial != 0) write(fmt::format("no. {}", label.serial), kSmallShare * form.mark_mm, false);
  for (const std::string& line : label.lines) write(line, std::min(kLine_mm, form.mark_mm), false);
}

}  // namespace

Outcome<Drawing> label_sheets(const std::string& title, const std::vector<PrismLabel>& labels,
                              const LabelSheetSettings& settings) {
  if (Done fit = check_counts(settings, labels.size()); !fit) return fit.problem();
  std::vector<QrCode> codes;
  for (const PrismLabel& label : labels) {
    auto code = qr_code(code_words(title, label.mark, label.serial));
    if (!code) return code.problem();
    codes.push_back(std::move(code).value());
  }
  const auto form = form_of(labels, codes, settings);
  if (!form) return form.problem();

  Drawing drawing;
  drawing.title = title + ", labels";
  const int on_sheet = settings.rows * settings.columns;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const int place = (static_cast<int>(i) + settings.used) % on_sheet;
    if (place == 0 || drawing.sheets.empty()) drawing.sheets.push_back({{settings.paper, false}, {}, {}});
    Sheet& sheet = drawing.sheets.back();
    const LabelSize& size = form->size;
    const PaperPoint low = {settings.margin_mm + place % settings.columns * (size.width_mm + settings.gap_mm),
                            sheet.size.height_mm() - settings.margin_mm - size.height_mm -
                                place / settings.columns * (size.height_mm + settings.gap_mm)};
    const auto moved = [&](PaperPoint p) { return PaperPoint{low.x + p.x, low.y + p.y}; };
    if (settings.cut_lines)
      sheet.strokes.push_back(rectangle_stroke(low, moved({size.width_mm, size.height_mm}), LineClass::hatch));
    for (Stroke& bar : qr_strokes(codes[i], {moved(form->places.code.low), moved(form->places.code.high)}))
      sheet.strokes.push_back(std::move(bar));
    write_words(sheet, labels[i], *form, low);
  }
  return drawing;
}

}  // namespace prismwright
