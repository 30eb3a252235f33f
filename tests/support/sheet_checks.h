#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/text_box.h"

namespace prismwright {

/// Every text inside the border, none on another's ground.
inline void expect_texts_apart(const Sheet& sheet) {
  const PaperBox border = {{10, 10}, {sheet.size.width_mm() - 10, sheet.size.height_mm() - 10}};
  std::vector<PaperBox> boxes;
  for (const DrawnText& text : sheet.texts) {
    boxes.push_back(box_of(text));
    EXPECT_TRUE(holds(border, boxes.back())) << text.words;
  }
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_FALSE(overlap(boxes[i], boxes[k])) << sheet.texts[i].words << " on " << sheet.texts[k].words;
  }
}

/// Every line inside the border.
inline void expect_strokes_on_paper(const Sheet& sheet) {
  const PaperBox border = {{9.99, 9.99}, {sheet.size.width_mm() - 9.99, sheet.size.height_mm() - 9.99}};
  for (const Stroke& stroke : sheet.strokes) {
    EXPECT_TRUE(holds(border, {stroke.start, stroke.start}));
    for (const PaperStep& step : stroke.steps) EXPECT_TRUE(holds(border, {step.to, step.to}));
  }
}

/// Scale bars are drawn in parts, closed boxes 1.5 mm high side by side.
inline bool is_part_of_scale_bar(const Stroke& stroke) {
  if (!stroke.closed || stroke.line != LineClass::thin || stroke.steps.size() < 3) return false;
  double low = stroke.start.y;
  double high = stroke.start.y;
  for (const PaperStep& step : stroke.steps) {
    if (step.turn != 0) return false;
    low = std::min(low, step.to.y);
    high = std::max(high, step.to.y);
  }
  return std::abs(high - low - 1.5) < 1e-9;
}

/// No text on a scale bar; answers how many parts of bars were seen.
inline int expect_texts_off_scale_bars(const Sheet& sheet) {
  int parts = 0;
  for (const Stroke& stroke : sheet.strokes) {
    if (!is_part_of_scale_bar(stroke)) continue;
    ++parts;
    PaperBox bar = {stroke.start, stroke.start};
    for (const PaperStep& step : stroke.steps) {
      bar.low = {std::min(bar.low.x, step.to.x), std::min(bar.low.y, step.to.y)};
      bar.high = {std::max(bar.high.x, step.to.x), std::max(bar.high.y, step.to.y)};
    }
    for (const DrawnText& text : sheet.texts)
      EXPECT_FALSE(overlap(box_of(text), bar)) << text.words << " on a scale bar";
  }
  return parts;
}

}  // namespace prismwright
