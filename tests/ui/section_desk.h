#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "core/lens/quantities.h"
#include "ui/models/workbench.h"
#include "ui/pages/section_page.h"
#include "ui/views/section_drawing.h"

namespace prismwright {

/// The Section page on a screen, open on a fresh fourth-order bull's-eye book of eight panels.
class SectionDesk : public testing::Test {
 protected:
  void SetUp() override { open("4", Work::bullseye, 8, QSize(1140, 700)); }

  void open(const char* order, Work work, int panels, QSize size) {
    const std::string path = folder.filePath(QStringLiteral("book%1.lensbook").arg(++books)).toStdString();
    Outcome<Lensbook> book = Lensbook::create(path, starting_values(order, work, panels));
    ASSERT_TRUE(book) << book.problem().text;
    bench.setBook(std::move(book).value());
    bench.stopMaking();  // the solids are no part of this page
    // The window manager may fill the screen with the window; the page keeps the size asked for.
    page = nullptr;
    window = std::make_unique<QWidget>();
    page = new SectionPage(&bench, window.get());
    page->setGeometry(QRect(QPoint(0, 0), size));
    window->resize(size);
    window->show();
    QApplication::setActiveWindow(window.get());
    ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
    QCoreApplication::processEvents();
  }

  [[nodiscard]] SectionDrawing* drawing() const { return page->drawing(); }
  [[nodiscard]] Laser* laser() const { return page->laser(); }
  [[nodiscard]] QTableView* table() const { return page->findChild<QTableView*>("section.table"); }
  [[nodiscard]] QString label(const char* name) const { return page->findChild<QLabel*>(name)->text(); }

  [[nodiscard]] int rowOf(const QString& zone) const {
    for (int row = 0; row < table()->model()->rowCount(); ++row)
      if (cell(row, ZoneTable::mark) == zone) return row;
    return -1;
  }
  [[nodiscard]] QString cell(int row, int column) const {
    return table()->model()->index(row, column).data().toString();
  }
  [[nodiscard]] double number(int row, int column) const {
    return cell(row, column).replace(QChar(0x2212), '-').toDouble();
  }

  /// What a person does to change a cell: a double click on it, the new text, Return.
  void typeIntoCell(int row, int column, const QString& text) {
    const QModelIndex index = table()->model()->index(row, column);
    table()->scrollTo(index);
    const QPoint place = table()->visualRect(index).center();
    QTest::mouseClick(table()->viewport(), Qt::LeftButton, {}, place);
    QTest::mouseDClick(table()->viewport(), Qt::LeftButton, {}, place);
    auto* editor = qobject_cast<QLineEdit*>(table()->indexWidget(index));
    ASSERT_TRUE(editor) << "a double click opens an editor";
    editor->selectAll();
    QTest::keyClicks(editor, text);
    QTest::keyClick(editor, Qt::Key_Return);
    QCoreApplication::processEvents();
  }

  /// Drags with the left button in small steps, as a hand does.
  void drag(QPoint from, QPoint to) {
    QTest::mousePress(drawing(), Qt::LeftButton, {}, from);
    for (int step = 1; step <= 10; ++step) QTest::mouseMove(drawing(), from + (to - from) * step / 10);
    QTest::mouseRelease(drawing(), Qt::LeftButton, {}, to);
  }

  QTemporaryDir folder;
  int books = 0;
  Workbench bench;
  std::unique_ptr<QWidget> window;
  SectionPage* page = nullptr;
};

}  // namespace prismwright
