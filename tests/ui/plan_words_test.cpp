#include <gtest/gtest.h>

#include "ui/models/plan_table.h"

namespace prismwright {
namespace {

/// Ten days of polishing from the first of March 2027.
WorksReckoning ten_days() {
  WorksReckoning works;
  for (const WorkStep step : kWorkSteps) {
    works.work.steps.push_back({step});
    works.costs.steps.push_back({step});
  }
  works.work.start = std::chrono::sys_days(std::chrono::year(2027) / 3 / 1);
  works.work.finish = works.work.start + std::chrono::days(9);
  works.work.days = 10;
  works.work.hands_left_h = 57;
  works.work.bars = {{WorkStep::polish, 0, 10}};
  return works;
}

QString end_of_whole(const WorksReckoning& works) {
  const CellSheet sheet = steps_sheet(works);
  for (std::size_t i = 0; i < sheet.heads.size(); ++i)
    if (sheet.heads[i].key == QStringLiteral("to")) return sheet.rows.back().cells[i].shown;
  return {};
}

TEST(PlanWords, NameTheDayOnWhichAllIsReady) {
  const WorksReckoning works = ten_days();
  EXPECT_EQ(plan_words(works).toStdString(),
            QStringLiteral("Finished on %1 when work starts on %2; 57 hours of hands left.")
                .arg(day_words(works.work.finish), day_words(works.work.start))
                .toStdString());
  EXPECT_EQ(end_of_whole(works), day_words(works.work.start + std::chrono::days(10)));
}

TEST(PlanWords, PromiseNoDayWhereCastingsFitNoLoad) {
  WorksReckoning works = ten_days();
  works.work.unplaced = 3;
  EXPECT_EQ(plan_words(works).toStdString(),
            QStringLiteral("Not ready before %1 when work starts on %2; 57 hours of hands left.")
                .arg(day_words(works.work.finish), day_words(works.work.start))
                .toStdString());
  EXPECT_EQ(end_of_whole(works), blank_cell().shown);
}

TEST(PlanWords, CallNothingDoneWhereOnlySuchCastingsAreLeft) {
  WorksReckoning works = ten_days();
  works.work.bars.clear();
  EXPECT_EQ(plan_words(works), "Nothing is left to do.");
  works.work.unplaced = 3;
  EXPECT_EQ(plan_words(works), "Not ready before a vessel takes the castings that are left.");
}

}  // namespace
}  // namespace prismwright
