#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/house_words.h"

namespace prismwright {

/// The words of all sheets one after the other, each text followed by a blank.
inline std::string words_of(const Drawing& drawing) {
  std::string words;
  for (const Sheet& sheet : drawing.sheets)
    for (const DrawnText& text : sheet.texts) words += text.words + " ";
  return words;
}

/// How many texts are these words alone.
inline long texts_alike(const Drawing& drawing, const std::string& words) {
  long count = 0;
  for (const Sheet& sheet : drawing.sheets) count += std::ranges::count(sheet.texts, words, &DrawnText::words);
  return count;
}

/// Words of a title block with everything that may be hard on it, or with nothing at all.
inline HouseWords hard_words() {
  HouseWords words;
  words.title =
      "The light on the outermost skerry before the harbour of the northern isles, second lens, replica of the "
      "one that was taken down, with the panels of the lens that stood there before and a name that does not "
      "end";
  words.client = "Stiftung f\u00FCr Leuchtfeuer \u00C6r\u00F8 og Omegn \u2014 \u7B49\u53F0\u4FDD\u5B58\u4F1A";
  words.order = "hyper-radial";
  words.focal_mm = 1330;
  words.material = "acrylic, 1.49180";
  words.date = "2027-05-01";
  words.revision = "revision after the second visit";
  return words;
}

/// Papers and units that every document is tried on.
struct PaperTrial {
  std::optional<Paper> paper;
  bool inches = false;
};
inline std::vector<PaperTrial> paper_trials() {
  return {
      {std::nullopt, false}, {Paper::a4, true}, {Paper::a3, false}, {Paper::letter, true}, {Paper::a5, false}};
}
inline HouseWords tried(HouseWords words, const PaperTrial& trial) {
  words.paper = trial.paper;
  words.inches = trial.inches;
  return words;
}

}  // namespace prismwright
