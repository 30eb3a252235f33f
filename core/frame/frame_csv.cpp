#include "core/frame/frame_csv.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace prismwright {

std::vector<std::size_t> sheets_of(const Nest& nest, const std::vector<std::string>& marks) {
  const std::set<std::string> wanted(marks.begin(), marks.end());
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < nest.sheets.size(); ++i) {
    if (std::ranges::any_of(nest.sheets[i].parts,
                            [&](const NestedPart& part) { return wanted.contains(part.mark); }))
      numbers.push_back(i + 1);
  }
  return numbers;
}

std::string parts_csv(const std::vector<PartsLine>& lines, const Nest& nest) {
  std::string text = "kind,making,metal,thickness_mm,size,quantity,mass_each_g,mass_all_g,sheets,marks\n";
  for (const PartsLine& line : lines) {
    text += fmt::format("{},{},{},{},{},{},", name_of(line.kind), name_of(line.making), name_of(line.metal),
                        line.thickness_mm > 0 ? fmt::format("{:g}", line.thickness_mm) : "",
                        csv_cell(line.size), line.quantity);
    text += line.mass_g ? fmt::format("{:.3f},{:.3f},", *line.mass_g, *line.mass_g * line.quantity) : ",,";
    text += fmt::format("{},{}\n", fmt::join(sheets_of(nest, line.marks), " "),
                        csv_cell(fmt::format("{}", fmt::join(line.marks, " "))));
  }
  return text;
}

std::string sheets_csv(const Nest& nest, const std::vector<std::string>& files) {
  std::string text = "sheet,file,metal,thickness_mm,width_mm,height_mm,pieces,used_share,marks\n";
  for (std::size_t i = 0; i < nest.sheets.size(); ++i) {
    const NestSheet& sheet = nest.sheets[i];
    std::vector<std::string> marks;
    for (const NestedPart& part : sheet.parts) marks.push_back(part.mark);
    text +=
        fmt::format("{},{},{},{:g},{:g},{:g},{},{:.4f},{}\n", i + 1, i < files.size() ? csv_cell(files[i]) : "",
                    name_of(sheet.metal), sheet.thickness_mm, sheet.width_mm, sheet.height_mm, marks.size(),
                    sheet.used_share, csv_cell(fmt::format("{}", fmt::join(marks, " "))));
  }
  if (!nest.left_over.empty())
    text += fmt::format(",,,,,,{},,{}\n", nest.left_over.size(),
                        csv_cell(fmt::format("{}", fmt::join(nest.left_over, " "))));
  return text;
}

}  // namespace prismwright
