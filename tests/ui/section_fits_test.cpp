#include <QHeaderView>
#include <QTabWidget>
#include <QTableWidget>

#include "tests/ui/section_desk.h"

namespace prismwright {
namespace {

constexpr int kCellRoom = 8;  // what a cell or a dense head needs beside its text

/// The page at the size that the window leaves it (rail and tell-tales taken off) on two screens.
class SectionFits : public SectionDesk, public testing::WithParamInterface<QSize> {
 protected:
  void SetUp() override { open("1", Work::bullseye, 8, GetParam()); }

  void expectColumnsWideEnough(const QTableView* view) {
    const QFontMetrics metrics(view->font());
    const QAbstractItemModel* model = view->model();
    ASSERT_TRUE(view->property("dense").toBool()) << "the style sheet gives its heads little room at the sides";
    for (int column = 0; column < model->columnCount(); ++column) {
      int widest = 0;
      for (const QString& line : model->headerData(column, Qt::Horizontal).toString().split('\n'))
        widest = std::max(widest, metrics.horizontalAdvance(line));
      for (int row = 0; row < model->rowCount(); ++row)
        widest = std::max(widest, metrics.horizontalAdvance(model->index(row, column).data().toString()));
      EXPECT_LE(widest + kCellRoom, view->columnWidth(column))
          << view->objectName().toStdString() << ": "
          << model->headerData(column, Qt::Horizontal).toString().toStdString();
    }
  }

  /// Kept for a look where PICTURES names a folder.
  void keepPicture(const QString& name) {
    const QString keep = qEnvironmentVariable("PICTURES");
    if (keep.isEmpty()) return;
    ASSERT_TRUE(page->grab().save(QStringLiteral("%1/%2-%3.png").arg(keep, name).arg(GetParam().width())));
  }
};

TEST_P(SectionFits, NothingIsCut) {
  laser()->pointAtZone("U05");
  for (const bool inches : {false, true}) {
    bench.setInches(inches);
    QCoreApplication::processEvents();
    expectColumnsWideEnough(table());
    expectColumnsWideEnough(page->findChild<QTableWidget*>("laser.meetings"));
    for (const QLabel* each : page->findChildren<QLabel*>()) {
      if (!each->isVisible() || each->text().isEmpty()) continue;
      const int needed = each->wordWrap() ? each->heightForWidth(each->width()) : each->sizeHint().height();
      EXPECT_LE(needed, each->height() + 1) << each->text().toStdString();
      if (!each->wordWrap()) {
        EXPECT_LE(each->sizeHint().width(), each->width() + 1) << each->text().toStdString();
      }
    }
    keepPicture(inches ? "first-inches" : "first");
  }
  EXPECT_LE(page->minimumSizeHint().width(), GetParam().width());
  EXPECT_LE(page->minimumSizeHint().height(), GetParam().height());
}

TEST_P(SectionFits, SettingsAreInReach) {
  auto* tabs = page->findChild<QTabWidget*>("section.tabs");
  auto* form = page->findChild<QWidget*>("section.form");
  if (GetParam().width() > 1500) {
    EXPECT_TRUE(form->isVisible()) << "a wide window shows them beside the table";
    EXPECT_EQ(tabs->count(), 1);
    EXPECT_TRUE(page->findChild<QWidget*>("section.strips")->isVisible());
  } else {
    ASSERT_EQ(tabs->count(), 3);
    tabs->setCurrentIndex(1);
    QCoreApplication::processEvents();
    EXPECT_TRUE(form->isVisible());
    keepPicture("settings");
  }
}

TEST_P(SectionFits, OtherLensesAndSelections) {
  open("4", Work::bullseye, 8, GetParam());
  laser()->pointAtZone("R2");
  bench.select({QStringLiteral("P01-U03"), QStringLiteral("P01-C")});
  QCoreApplication::processEvents();
  EXPECT_EQ(table()->selectionModel()->selectedRows().size(), 2);
  keepPicture("fourth");
  laser()->pointAtZone("U03");
  for (int notch = 0; notch < 30; ++notch)
    drawing()->zoomAt(drawing()->map().toView(laser()->path()->points[1]), 1.08);
  EXPECT_TRUE(drawing()->grip()) << "the laser can still be taken hold of";
  keepPicture("close");
}

INSTANTIATE_TEST_SUITE_P(Windows, SectionFits, testing::Values(QSize(1180, 700), QSize(1820, 980)));

}  // namespace
}  // namespace prismwright
