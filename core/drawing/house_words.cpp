#include "core/drawing/house_words.h"

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/drawing/text_box.h"
#include "core/lens/orders.h"

namespace prismwright {

HouseWords house_words(const LensValues& values, const std::string& date, const std::string& revision) {
  HouseWords words;
  words.title = values.brief.title;
  words.client = values.brief.client;
  const Order* order = find_order(values.brief.order);
  words.order = order ? std::string(order->words) : values.brief.order;
  words.focal_mm = values.brief.focal_mm;
  words.material = fmt::format("{}, {:.5f}", values.material.name, values.material.effective_index());
  words.date = date;
  words.revision = revision;
  return words;
}

Drawing titled(std::vector<UntitledSheet> sheets, const HouseWords& words) {
  const LengthWords lengths{words.inches};
  Drawing drawing{clean_words(words.title), words.date, {}};
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    TitleWords foot;
    foot.title = words.title;
    foot.subject = sheets[i].subject;
    foot.order = words.order;
    foot.focal_distance = lengths.plain(words.focal_mm) + " " + lengths.unit();
    foot.material = words.material;
    if (!sheets[i].metal.empty()) {
      foot.material = sheets[i].metal;
      foot.material_caption = "material";
    }
    foot.units = words.inches ? "inches" : "millimetres";
    foot.scale = sheets[i].scale;
    foot.date = words.date;
    foot.revision = words.revision;
    foot.sheet = fmt::format("{} of {}", i + 1, sheets.size());
    draw_title_block(sheets[i].maker, foot);
    drawing.sheets.push_back(sheets[i].maker.take());
  }
  return drawing;
}

}  // namespace prismwright
