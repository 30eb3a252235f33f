#include "core/drawing/stage_legend.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/drawing/hatch.h"

namespace prismwright {

namespace {

constexpr double kSwatch_mm = 6;
constexpr double kSwatchHigh_mm = 3.6;
constexpr double kRow_mm = 5.2;
constexpr double kCell_mm = 34;
constexpr double kWords_mm = 2.3;
constexpr double kWhite = 0.42;  ///< share of white in a tone

constexpr std::array<const char*, kStages.size()> kSigns = {"Dr", "Ma", "Mo", "Ca", "An",
                                                            "Po", "Pr", "Gl", "X"};
/// The window's own tones; scrapped as a pale ground for its hatching.
constexpr std::array<PaperColour, kStages.size()> kTones = {{{0xEC, 0xE7, 0xDA},
                                                             {0xD9, 0xC9, 0xA3},
                                                             {0xC9, 0xB0, 0x72},
                                                             {0x9C, 0xC3, 0xB5},
                                                             {0x6F, 0xA7, 0x9A},
                                                             {0x3F, 0x85, 0x7F},
                                                             {0x22, 0x63, 0x6A},
                                                             {0x14, 0x3F, 0x4F},
                                                             {0xE9, 0xAB, 0xA0}}};

std::uint8_t lighter(std::uint8_t tone) {
  return static_cast<std::uint8_t>(std::lround((1 - kWhite) * tone + kWhite * 255));
}

int columns_in(double wide_mm) {
  const int most = std::max(1, static_cast<int>(wide_mm / kCell_mm));
  const int all = static_cast<int>(kStages.size());
  const int rows = (all + most - 1) / most;
  return (all + rows - 1) / rows;
}

void draw_swatch(SheetMaker& maker, PaperPoint low, Stage stage) {
  const PaperPoint high = {low.x + kSwatch_mm, low.y + kSwatchHigh_mm};
  Stroke box = rectangle_stroke(low, high, LineClass::thin);
  box.tone = tone_of(stage);
  maker.draw(std::move(box));
  if (hatched(stage)) {
    for (Stroke& line : hatch_lines({low, {high.x, low.y}, high, {low.x, high.y}}, 1, false))
      maker.draw(std::move(line));
  }
  maker.write({sign_of(stage), {(low.x + high.x) / 2, low.y + 0.9}, kWords_mm, Anchor::middle, false, false});
}

}  // namespace

const char* sign_of(Stage stage) { return kSigns.at(static_cast<std::size_t>(stage)); }

PaperColour tone_of(Stage stage) {
  const PaperColour tone = kTones.at(static_cast<std::size_t>(stage));
  return {lighter(tone.red), lighter(tone.green), lighter(tone.blue)};
}

bool hatched(Stage stage) { return stage == Stage::scrapped; }

double stage_legend_height_mm(double wide_mm) {
  return std::ceil(static_cast<double>(kStages.size()) / columns_in(wide_mm)) * kRow_mm;
}

void draw_stage_legend(SheetMaker& maker, const PaperBox& room,
                       const std::optional<std::array<int, kStages.size()>>& counts) {
  const int columns = columns_in(room.high.x - room.low.x);
  const double cell = std::min((room.high.x - room.low.x) / columns, 1.3 * kCell_mm);
  for (std::size_t i = 0; i < kStages.size(); ++i) {
    const int column = static_cast<int>(i) % columns;
    const int row = static_cast<int>(i) / columns;
    const PaperPoint low = {room.low.x + column * cell, room.high.y - row * kRow_mm - kSwatchHigh_mm};
    draw_swatch(maker, low, kStages[i]);
    std::string words(name_of(kStages[i]));
    if (counts) words += ": " + std::to_string(counts->at(i));
    maker.write({words, {low.x + kSwatch_mm + 1.5, low.y + 0.9}, kWords_mm, Anchor::left, false, false});
  }
}

}  // namespace prismwright
