#pragma once

#include <gtest/gtest.h>

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

}  // namespace prismwright
