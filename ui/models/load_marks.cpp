#include "ui/models/load_marks.h"

#include <algorithm>

namespace prismwright {
namespace {

/// Prisms of the master that have no sound casting, those nearest to being cast first.
std::vector<std::string> waiting(const MakeRow& row, const StageByMark& stages) {
  std::vector<std::string> marks;
  for (const std::string& mark : row.marks) {
    const Stage stage = stages.stage_of(mark);
    if (stage < Stage::cast || stage == Stage::scrapped) marks.push_back(mark);
  }
  const auto rank = [&](const std::string& mark) {
    const Stage stage = stages.stage_of(mark);
    return stage == Stage::scrapped ? 1 : stage == Stage::moulded ? 0 : 4 - static_cast<int>(stage);
  };
  std::stable_sort(marks.begin(), marks.end(),
                   [&](const std::string& a, const std::string& b) { return rank(a) < rank(b); });
  return marks;
}

}  // namespace

QStringList marks_to_cast(const WorksReckoning& works, std::size_t load, const StageByMark& stages) {
  QStringList marks;
  const PlannedLoad& planned = works.loads->loads[load];
  for (std::size_t piece = 0; piece < works.pieces.size(); ++piece) {
    const int pours = planned.count_of(piece);
    const MakeRow* row = works.list.find(works.pieces[piece].name);
    if (pours == 0 || row == nullptr) continue;
    const std::vector<std::string> candidates = waiting(*row, stages);
    for (std::size_t i = 0; i < candidates.size() && i < static_cast<std::size_t>(pours); ++i)
      marks << QString::fromStdString(candidates[i]);
  }
  return marks;
}

}  // namespace prismwright
