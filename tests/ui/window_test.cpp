#include "tests/ui/window_desk.h"

#include <QElapsedTimer>

namespace prismwright {
namespace {

class Window : public WindowDesk {};

TEST_F(Window, RailHoldsTheBuiltPagesAloneAndKeysLeadToThem) {
  const auto* rail = find<QWidget>("rail");
  EXPECT_EQ(rail->findChildren<QAbstractButton*>().size(), 7);
  const std::array<const char*, 7> names = {"rail.brief", "rail.section", "rail.lens",    "rail.light",
                                            "rail.frame", "rail.works",   "rail.despatch"};
  for (std::size_t i = 0; i < names.size(); ++i) {
    press(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i)), Qt::ControlModifier);
    EXPECT_EQ(window->page(), static_cast<Page>(i));
    EXPECT_TRUE(find<QAbstractButton>(names.at(i))->isChecked());
    EXPECT_TRUE(window->pageWidget(static_cast<Page>(i))->isVisible());
  }
}

TEST_F(Window, TypedValueIsInTheBookAtOnceAndUndoSaysWhatItTakesBack) {
  typeInto("field.brief.focal_mm", "155");
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 155);
  EXPECT_DOUBLE_EQ(bench().plan()->section.input.focal_mm, 155) << "the section has followed";
  EXPECT_EQ(find<QAction>("action.undo")->text(), "Undo focal distance 150 -> 155 mm");
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 150);
  EXPECT_EQ(find<QLineEdit>("field.brief.focal_mm")->text(), "150");
  EXPECT_EQ(find<QAction>("action.redo")->text(), "Redo focal distance 150 -> 155 mm");
  press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 155);
}

TEST_F(Window, TypedUnitIsUnderstood) {
  typeInto("field.brief.focal_mm", "6 in");
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 152.4);
  EXPECT_EQ(find<QLineEdit>("field.brief.focal_mm")->text(), "152.4");
}

TEST_F(Window, InchesAreShownAndTypedBareWhileTheBookKeepsMillimetres) {
  press(Qt::Key_I, Qt::ControlModifier);
  EXPECT_EQ(find<QLineEdit>("field.brief.focal_mm")->text(), "5.9055");
  typeInto("field.brief.focal_mm", "6");
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 152.4);
  typeInto("field.brief.focal_mm", "150 mm");
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 150);
}

TEST_F(Window, RefusedValueIsSaidAtTheFieldAndInTheBarAndChangesNothing) {
  typeInto("field.brief.focal_mm", "12");
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 150);
  const QString sentence = text("refusal.brief.focal_mm");
  EXPECT_TRUE(find<QLabel>("refusal.brief.focal_mm")->isVisible());
  EXPECT_TRUE(sentence.contains("12") && sentence.contains("50") && sentence.endsWith('.'))
      << qPrintable(sentence);
  EXPECT_FALSE(sentence.contains("brief.focal_mm")) << "says the field's label, not its key";
  EXPECT_EQ(notice("notice.refusal")->shown(), sentence);
  EXPECT_EQ(find<QLineEdit>("field.brief.focal_mm")->text(), "12") << "what was typed stays to be put right";
  typeInto("field.material.index", "3");
  EXPECT_EQ(notice("notice.refusal")->all().size(), 2) << "the earlier refusal is kept";
  press(Qt::Key_Escape, Qt::NoModifier);
  EXPECT_FALSE(find<QLabel>("refusal.material.index")->isVisible());
  EXPECT_EQ(find<QLineEdit>("field.material.index")->text(), "");
}

TEST_F(Window, RangeStandsBesideTheField) {
  EXPECT_EQ(text("range.brief.focal_mm"), "50 to 3000");
  bench().setInches(true);
  EXPECT_EQ(text("range.brief.focal_mm"), "1.9685 to 118.1102");
}

TEST_F(Window, TellTalesSayHowThingsStandAndLeadToTheirPages) {
  ASSERT_TRUE(bench().waitUntilMade(120000));
  EXPECT_TRUE(find<QAbstractButton>("tell.level")->text().contains("Level within"));
  EXPECT_TRUE(find<QAbstractButton>("tell.light")->text().contains('%'));
  EXPECT_TRUE(find<QAbstractButton>("tell.clearance")->text().contains("Tightest"));
  EXPECT_TRUE(find<QAbstractButton>("tell.works")
                  ->text()
                  .contains(QString("0 of %1 glazed").arg(bench().plan()->prisms.size())));
  const std::array<std::pair<const char*, Page>, 4> leads = {{{"tell.level", Page::section},
                                                              {"tell.works", Page::works},
                                                              {"tell.light", Page::section},
                                                              {"tell.clearance", Page::lens}}};
  for (const auto& [name, page] : leads) {
    bench().select({});
    click(name);
    EXPECT_EQ(window->page(), page) << name;
    ASSERT_FALSE(bench().selection().isEmpty()) << name << " selects the prism that it comes from";
  }
  const Clearance* tightest = bench().made()->tightest_of({});
  ASSERT_TRUE(tightest);
  EXPECT_EQ(bench().selection().first().toStdString(), tightest->first);
}

TEST_F(Window, EditThatNoSectionCanServeIsRefusedAndChangesNothing) {
  const Assignment impossible{"section.land_mm", "20"};
  EXPECT_FALSE(bench().assign({&impossible, 1}, {}));
  EXPECT_TRUE(notice("notice.refusal")->shown().contains("land"));
  EXPECT_EQ(bench().values().section.land_mm, 0.5);
  EXPECT_FALSE(bench().sectionProblem());
}

/// A book from elsewhere may hold values from which no section can be worked out.
TEST_F(Window, SectionThatCannotBeIsSaidInABarUntilItCanAgain) {
  const QString other = newBook("other.lensbook", starting_values("6", Work::belt, 2));
  {
    auto book = Lensbook::open(other.toStdString());
    ASSERT_TRUE(book);
    LensValues values = book->values();
    values.section.land_mm = 20;
    ASSERT_TRUE(book->edit(values, "land 0.5 -> 20 mm"));
  }
  ASSERT_TRUE(window->openBook(other));
  ASSERT_TRUE(bench().sectionProblem());
  EXPECT_FALSE(notice("notice.section")->shown().isEmpty());
  EXPECT_EQ(find<QAbstractButton>("tell.level")->property("state").toInt(),
            static_cast<int>(TellTale::State::amiss));
  for (const Page page :
       {Page::brief, Page::section, Page::lens, Page::light, Page::frame, Page::works, Page::despatch})
    window->showPage(page);
  EXPECT_FALSE(find<QAction>("action.drawing")->isEnabled()) << "there is nothing to draw";
  EXPECT_FALSE(find<QAbstractButton>("tool.drawing")->isEnabled());
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_TRUE(notice("notice.section")->shown().isEmpty());
  EXPECT_FALSE(bench().sectionProblem());
  EXPECT_TRUE(find<QAction>("action.drawing")->isEnabled());
  EXPECT_TRUE(find<QAbstractButton>("tool.drawing")->isEnabled());
}

TEST_F(Window, WhatIsBeingTypedIsKeptWhenTheWindowCloses) {
  auto* line = find<QLineEdit>("field.brief.title");
  QTest::mouseClick(line, Qt::LeftButton);
  line->selectAll();
  QTest::keyClicks(line, "Half typed");
  window->close();
  window.reset();
  const auto book = Lensbook::open(path.toStdString(), Lensbook::Access::read_only);
  ASSERT_TRUE(book);
  EXPECT_EQ(book->values().brief.title, "Half typed");
}

TEST_F(Window, SecondWindowOnTheSameBookIsReadOnlyAndSaysSo) {
  MainWindow second;
  second.show();
  ASSERT_TRUE(second.openBook(path));
  ASSERT_TRUE(second.bench()->book().read_only());
  EXPECT_FALSE(second.findChild<NoticeBar*>("notice.readOnly")->shown().isEmpty());
  EXPECT_TRUE(second.findChild<QLineEdit*>("field.brief.focal_mm")->isReadOnly());
  EXPECT_FALSE(second.findChild<QComboBox*>("field.brief.work")->isEnabled());
  EXPECT_FALSE(second.findChild<QAction*>("action.undo")->isEnabled());
  EXPECT_FALSE(second.findChild<QAbstractButton*>("panels.equal")->isEnabled());
  second.showPage(Page::works);
  second.bench()->select({QString::fromStdString(second.bench()->plan()->prisms.front().mark)});
  EXPECT_FALSE(second.findChild<QAbstractButton*>("works.record")->isEnabled());
  EXPECT_TRUE(notice("notice.readOnly")->shown().isEmpty()) << "the first window still writes";
}

TEST_F(Window, FileThatIsNoLensbookIsRefusedWithASentenceAndTheOpenBookStays) {
  QFile file(folder.filePath("letter.lensbook"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("Dear Sir");
  file.close();
  EXPECT_FALSE(window->openBook(file.fileName()));
  EXPECT_TRUE(notice("notice.refusal")->shown().contains("letter.lensbook"))
      << qPrintable(notice("notice.refusal")->shown());
  EXPECT_EQ(QString::fromStdString(bench().book().path()), path);
}

TEST_F(Window, NewLensbookIsMadeFromTheDialogAndATakenNameIsRefusedThere) {
  const QString fresh = folder.filePath("fresh.lensbook");
  whileOpen(
      "new", [this] { find<QAction>("action.new")->trigger(); },
      [&](QDialog& dialog) {
        auto* file = dialog.findChild<QLineEdit*>("new.file");
        file->setText(path);
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("new.make"), Qt::LeftButton);
        EXPECT_TRUE(dialog.isVisible());
        EXPECT_TRUE(dialog.findChild<QLabel*>("new.refusal")->text().contains("book.lensbook"))
            << qPrintable(dialog.findChild<QLabel*>("new.refusal")->text());
        file->selectAll();
        QTest::keyClicks(file, fresh);
        QTest::keyClicks(dialog.findChild<QLineEdit*>("new.title"), "South Mole");
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("new.make"), Qt::LeftButton);
      });
  EXPECT_EQ(QString::fromStdString(bench().book().path()), fresh);
  EXPECT_EQ(bench().values().brief.title, "South Mole");
  EXPECT_EQ(bench().values().brief.order, "4");
  EXPECT_EQ(bench().values().panels.size(), 8u);
}

TEST_F(Window, ChosenPrismsAreWrittenAsStepAndStl) {
  ASSERT_TRUE(bench().waitUntilMade(120000));
  const QString mark = QString::fromStdString(bench().plan()->prisms.front().mark);
  bench().select({mark});
  const QString out = folder.filePath("out");
  whileOpen(
      "export", [this] { find<QAction>("action.export")->trigger(); },
      [&](QDialog& dialog) {
        dialog.findChild<QLineEdit*>("export.folder")->setText(out);
        dialog.findChild<QAbstractButton*>("export.stl")->setChecked(true);
        dialog.findChild<QAbstractButton*>("export.selected")->setChecked(true);
        auto* chord = dialog.findChild<QLineEdit*>("export.chord");
        auto* message = dialog.findChild<QLabel*>("export.message");
        chord->setText("5");
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("export.write"), Qt::LeftButton);
        EXPECT_TRUE(message->text().contains("0.001 to 1") || message->text().contains("between 0.001 and 1"));
        EXPECT_FALSE(QFile::exists(out));
        chord->setText("0.1");
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("export.write"), Qt::LeftButton);
        EXPECT_TRUE(QTest::qWaitFor([&] { return message->text().contains("written"); }, 60000))
            << qPrintable(message->text());
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("export.close"), Qt::LeftButton);
      });
  EXPECT_TRUE(QFile::exists(out + "/" + mark + ".step"));
  EXPECT_TRUE(QFile::exists(out + "/" + mark + ".stl"));
}

TEST_F(Window, SectionDrawingIsSavedFromAnyPageByItsKeys) {
  EXPECT_EQ(window->page(), Page::brief);
  EXPECT_TRUE(find<QAction>("action.drawing")->isEnabled());
  whileOpen(
      "drawing", [this] { press(Qt::Key_D, Qt::ControlModifier); },
      [&](QDialog& dialog) {
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("drawing.save"), Qt::LeftButton);
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("drawing.close"), Qt::LeftButton);
      });
  EXPECT_TRUE(QFile::exists(folder.filePath("book section.pdf")));
}

TEST_F(Window, EditWhileSolidsAreMadeTakesThemUpAnewAndTheNewestWins) {
  for (const char* edge : {"3", "3.2", "3.4"}) {
    const Assignment edit{"section.edge_mm", edge};
    ASSERT_TRUE(bench().assign({&edit, 1}, {}));
    EXPECT_TRUE(bench().isMaking());
    QTest::qWait(300);
  }
  ASSERT_TRUE(bench().waitUntilMade(120000));
  EXPECT_FALSE(bench().madeIsStale());
  EXPECT_DOUBLE_EQ(bench().made()->plan->values.section.edge_mm, 3.4);
}

TEST_F(Window, MakingCanBeStoppedAndTakenUpAgain) {
  const Assignment edit{"section.edge_mm", "3.1"};
  ASSERT_TRUE(bench().assign({&edit, 1}, {}));
  click("status.stop");
  ASSERT_TRUE(QTest::qWaitFor([this] { return !bench().isMaking(); }, 30000));
  EXPECT_EQ(find<QAbstractButton>("status.stop")->text(), "Make solids");
  EXPECT_FALSE(find<QAction>("action.export")->isEnabled());
  click("status.stop");
  EXPECT_TRUE(bench().waitUntilMade(120000));
  EXPECT_TRUE(find<QAction>("action.export")->isEnabled());
}

TEST_F(Window, ClosingWhileSolidsAreMadeDoesNotWaitForThemAll) {
  const QString large = newBook("large.lensbook", starting_values("1", Work::bullseye, 8));
  ASSERT_TRUE(window->openBook(large));
  QTest::qWait(200);
  ASSERT_TRUE(bench().isMaking());
  QElapsedTimer clock;
  clock.start();
  window->close();
  window.reset();
  EXPECT_LT(clock.elapsed(), 10000) << "one part at most is finished before the worker ends";
}

}  // namespace
}  // namespace prismwright
