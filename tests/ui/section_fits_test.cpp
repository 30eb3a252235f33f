#include <QHeaderView>
#include <QListWidget>
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

  void expectNotCut(const QLabel* label) {
    if (!label->isVisible() || label->text().isEmpty()) return;
    const int needed = label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
    EXPECT_LE(needed, label->height() + 1) << label->text().toStdString();
    if (!label->wordWrap()) {
      EXPECT_LE(label->sizeHint().width(), label->width() + 1) << label->text().toStdString();
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
    for (const QLabel* each : page->findChildren<QLabel*>()) expectNotCut(each);
    keepPicture(inches ? "first-inches" : "first");
  }
  EXPECT_LE(page->minimumSizeHint().width(), GetParam().width());
  EXPECT_LE(page->minimumSizeHint().height(), GetParam().height());
}

TEST_P(SectionFits, SettingsProofAndComparisonAreInReach) {
  auto* tabs = page->findChild<QTabWidget*>("section.tabs");
  auto* form = page->findChild<QWidget*>("section.form");
  const bool wide = GetParam().width() > 1500;
  if (wide) {
    EXPECT_TRUE(form->isVisible()) << "a wide window shows them beside the table";
  }
  ASSERT_EQ(tabs->count(), wide ? 3 : 4);
  ASSERT_TRUE(bench.keepVariant("as it was"));
  const Assignment edit{"section.edge_mm", "14"};
  ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  for (int tab = 1; tab < tabs->count(); ++tab) {
    tabs->setCurrentIndex(tab);
    if (tab + 1 == tabs->count()) page->findChild<QListWidget*>("variants")->setCurrentRow(0);
    QCoreApplication::processEvents();
    for (const auto* table : tabs->currentWidget()->findChildren<QTableWidget*>())
      if (table->isVisible() && table->objectName() != "compare.table") expectColumnsWideEnough(table);
    for (const QLabel* each : tabs->currentWidget()->findChildren<QLabel*>()) expectNotCut(each);
    keepPicture(tabs->tabText(tab).toLower());
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
