#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <functional>
#include <memory>
#include <vector>

#include "core/lens/quantities.h"
#include "ui/main_window.h"
#include "ui/views/notice_bar.h"

namespace prismwright {

/// The whole window on a screen, with a small belt lens open: two panels, so that its solids are soon made.
class WindowDesk : public testing::Test {
 protected:
  void SetUp() override {
    path = newBook("book.lensbook", starting_values("6", Work::belt, 2));
    window = std::make_unique<MainWindow>();
    window->resize(1280, 800);
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    ASSERT_TRUE(window->openBook(path));
  }

  QString newBook(const QString& name, const LensValues& values) {
    const QString file = folder.filePath(name);
    Outcome<Lensbook> made = Lensbook::create(file.toStdString(), values);
    EXPECT_TRUE(made) << (made ? "" : made.problem().text);
    return file;
  }

  [[nodiscard]] Workbench& bench() const { return *window->bench(); }

  template <class Widget>
  [[nodiscard]] Widget* find(const QString& name) const {
    auto* widget = window->findChild<Widget*>(name);
    EXPECT_TRUE(widget) << qPrintable(name) << " is in the window";
    return widget;
  }
  [[nodiscard]] QString text(const QString& label) const { return find<QLabel>(label)->text(); }
  [[nodiscard]] NoticeBar* notice(const QString& name) const { return find<NoticeBar>(name); }

  void click(const QString& button) {
    auto* widget = find<QAbstractButton>(button);
    ASSERT_TRUE(widget->isVisible()) << qPrintable(button);
    QTest::mouseClick(widget, Qt::LeftButton);
  }

  /// What a person does with a field: a click, everything marked, the new text, Return.
  void typeInto(const QString& field, const QString& typed) {
    auto* line = find<QLineEdit>(field);
    ASSERT_TRUE(line->isVisible()) << qPrintable(field);
    QTest::mouseClick(line, Qt::LeftButton);
    line->selectAll();
    QTest::keyClicks(line, typed);
    QTest::keyClick(line, Qt::Key_Return);
  }

  void typeIntoCell(QTableView* table, int row, int column, const QString& typed) {
    const QModelIndex index = table->model()->index(row, column);
    table->scrollTo(index);
    const QPoint place = table->visualRect(index).center();
    QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, place);
    QTest::mouseDClick(table->viewport(), Qt::LeftButton, {}, place);
    auto* editor = table->viewport()->findChild<QLineEdit*>();
    ASSERT_TRUE(editor) << "a double click opens an editor";
    editor->selectAll();
    QTest::keyClicks(editor, typed);
    QTest::keyClick(editor, Qt::Key_Return);
    QCoreApplication::processEvents();
    // The closed editor must be gone, or the next search would find it.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }

  void press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    // The first 3D view makes the window anew; keys count once it is active again.
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    QWidget* focus = QApplication::focusWidget();
    QTest::keyClick(focus ? focus : window.get(), key, modifiers);
  }

  /// Does `opening`, which opens a dialog of that name, and `inside` while it is open. A dialog left open fails
  /// the test and is closed.
  void whileOpen(const QString& name, const std::function<void()>& opening,
                 const std::function<void(QDialog&)>& inside) {
    bool was_open = false;
    QTimer::singleShot(50, window.get(), [&] {
      QPointer<QDialog> dialog = window->findChild<QDialog*>(name);
      if (!dialog) return;
      was_open = true;
      EXPECT_TRUE(QTest::qWaitForWindowExposed(dialog));
      inside(*dialog);
      EXPECT_TRUE(!dialog || dialog->isHidden()) << qPrintable(name) << " is closed at the end";
      if (dialog) dialog->close();
    });
    opening();
    EXPECT_TRUE(was_open) << qPrintable(name) << " was opened";
  }

  /// Saves as a person does: the button, the name, Return. Answers the file.
  QString saveAs(const QString& button, const QString& dialog_name, const QString& name) {
    const QString file = folder.filePath(name);
    whileOpen(
        dialog_name, [&] { click(button); },
        [&](QDialog& dialog) {
          auto* line = dialog.findChild<QLineEdit*>("fileNameEdit");
          ASSERT_TRUE(line);
          line->selectAll();
          QTest::keyClicks(line, file);
          QTest::keyClick(line, Qt::Key_Return);
        });
    return file;
  }
  /// The same where button and dialog are named after what is saved.
  QString saveAs(const QString& of, const QString& name) { return saveAs(of + ".save", of + ".saveTo", name); }
  /// The cells of a saved table, line by line.
  static std::vector<QStringList> linesOf(const QString& of_file) {
    QFile file(of_file);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly | QIODevice::Text)) << qPrintable(of_file);
    std::vector<QStringList> lines;
    for (const QString& line : QString::fromUtf8(file.readAll()).split('\n', Qt::SkipEmptyParts))
      lines.push_back(line.split(','));
    return lines;
  }

  QTemporaryDir folder;
  QString path;
  std::unique_ptr<MainWindow> window;
};

}  // namespace prismwright
