#include "core/drawing/prism_sheet.h"

#include <fmt/format.h>

#include "core/drawing/prism_sheet_pictures.h"
#include "core/drawing/prism_sheet_tables.h"
#include "core/drawing/sheet_layout.h"

namespace prismwright {

namespace {

constexpr double kPad_mm = 2;
constexpr double kPicturesShare = 0.56;  ///< of the height over the title block
constexpr double kSmallestOnA4 = 0.5;    ///< the section's scale, without a paper asked for

/// The first sheet with its pictures, not titled yet.
struct PictureSheet {
  SheetMaker maker;
  double tables_top = 0;
  double section_scale = 0;
  std::string scale;
};

PictureSheet picture_sheet(const PlannedPrism& prism, const PrismSolidFacts& facts, Paper paper,
                           LengthWords lengths) {
  PictureSheet sheet{SheetMaker({paper, paper == Paper::a3}), 0, 0, ""};
  const PaperBox frame = sheet.maker.frame();
  const double high = frame.high.y - frame.low.y - SheetRooms::title_block;
  const PaperBox room = {{frame.low.x + kPad_mm, frame.high.y - kPicturesShare * high},
                         {frame.high.x - kPad_mm, frame.high.y - kPad_mm}};
  const PrismPictures pictures = lay_out_pictures(prism, facts, room);
  const DrawingScale& section = *pictures.section_scale;
  draw_pictures(sheet.maker, prism, facts, pictures, lengths);
  sheet.tables_top = pictures.low_mm - kPad_mm;
  sheet.section_scale = section.paper_per_mm;
  sheet.scale = section.words;
  if (pictures.view_scale && pictures.view_scale->paper_per_mm != section.paper_per_mm)
    sheet.scale += std::string(", views ") + pictures.view_scale->words;
  return sheet;
}

PictureSheet picture_sheet(const PlannedPrism& prism, const PrismSolidFacts& facts, const HouseWords& words) {
  const LengthWords lengths{words.inches};
  if (words.paper) return picture_sheet(prism, facts, *words.paper, lengths);
  PictureSheet small = picture_sheet(prism, facts, Paper::a4, lengths);
  if (small.section_scale >= kSmallestOnA4) return small;
  return picture_sheet(prism, facts, Paper::a3, lengths);
}

}  // namespace

Outcome<Drawing> prism_sheet(const LensPlan& plan, const Master& kind, const PrismSolidFacts& facts,
                             const HouseWords& words) {
  if (kind.prism >= plan.prisms.size()) {
    return request_problem("unknown_prism", kind.name,
                           fmt::format("{} is drawn from prism number {}, and the lens has {}. Take a kind of "
                                       "prism that was worked out from this lens.",
                                       kind.name, kind.prism + 1, plan.prisms.size()));
  }
  const PlannedPrism& prism = plan.prisms[kind.prism];
  const LengthWords lengths{words.inches};
  PictureSheet first = picture_sheet(prism, facts, words);
  TablePages pages(std::move(first.maker), first.tables_top);
  pages.add(prism_facts_block(plan, kind, facts, lengths));
  pages.add(corner_block(prism, lengths));
  pages.add(face_block(prism, lengths));
  pages.add(marks_block(kind));
  for (const TableBlock& block : offset_blocks(prism, lengths)) pages.add(block);
  pages.add(tolerance_block(prism, plan.values.works, lengths));

  const std::string subject = fmt::format("Prism {}: {}", kind.name, name_of(prism.kind));
  std::vector<UntitledSheet> sheets;
  for (SheetMaker& page : pages.take()) {
    const bool is_first = sheets.empty();
    sheets.push_back({std::move(page), is_first ? subject : subject + ", tables",
                      is_first ? first.scale : std::string("none")});
  }
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
