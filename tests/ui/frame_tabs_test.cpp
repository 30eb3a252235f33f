#include <QDir>
#include <QSlider>
#include <QToolButton>
#include <algorithm>

#include "tests/ui/frame_desk.h"
#include "ui/models/door_words.h"
#include "ui/models/sheets_table.h"
#include "ui/views/lens_view.h"
#include "ui/views/nest_picture.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

/// The tabs of the page Frame whose results are worked out after the solids.
class FrameWorkedOut : public FrameWindowDesk {
 protected:
  void SetUp() override {
    FrameWindowDesk::SetUp();
    waitForFit();
  }
  /// All but the way of the door, which takes the longest and comes last.
  void waitForFit() const {
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
          return results().made && results().made == bench().made() && !bench().madeIsStale() && results().fit;
        },
        kFrameWait_ms));
    QCoreApplication::processEvents();
  }
  [[nodiscard]] FrameMaker& maker() const { return *find<FramePage>("page.frame")->maker(); }
  [[nodiscard]] const FrameResults& results() const { return maker().results(); }
};

TEST_F(FrameWorkedOut, EveryPrismIsCheckedInBothItsRibs) {
  ASSERT_TRUE(results().setting) << qPrintable(results().no_setting);
  showTab("Setting");
  auto* setting = table("frame.setting");
  EXPECT_EQ(setting->model()->rowCount(), static_cast<int>(results().setting->size()));
  EXPECT_EQ(results().setting->size(), 2 * made().plan->prisms.size());
  clickRow(setting, 0);
  ASSERT_EQ(bench().selection().size(), 1);
  EXPECT_EQ(bench().selection().front(), cell(setting, 0, 0));
  EXPECT_TRUE(text("frame.setting.told").contains("heat"));
}

TEST_F(FrameWorkedOut, TooSmallASettingGapIsFoundTight) {
  spoilt = true;
  typeInto("field.frame.setting_gap_mm", "0.05");
  waitForFit();
  showTab("Setting");
  auto* setting = table("frame.setting");
  auto* verdicts = find<QComboBox>("frame.setting.choice.2");
  EXPECT_GT(verdicts->findText("tight", Qt::MatchContains), 0);
  EXPECT_TRUE(cell(setting, 0, 2).contains("tight")) << "what falls short stands first";
}

TEST_F(FrameWorkedOut, SheetsHoldEveryPlateThatIsCutFlatAndAClickChoosesOne) {
  ASSERT_TRUE(results().nest) << qPrintable(results().no_nest);
  std::size_t laid = 0;
  for (const NestSheet& sheet : results().nest->sheets) laid += sheet.parts.size();
  std::size_t flat = 0;
  for (const FlatPart& part : made().frame->flats)
    if (part.making == PartMaking::cut_flat) ++flat;
  EXPECT_EQ(laid + results().nest->left_over.size(), flat);
  EXPECT_EQ(text("figure.frame.sheets"), sheets_words(*results().nest));
  showTab("Sheets");
  auto* picture = find<NestPicture>("frame.nest");
  const QString mark = QString::fromStdString(results().nest->sheets.front().parts.front().mark);
  const auto place = picture->placeOf(mark);
  ASSERT_TRUE(place);
  QTest::mouseClick(picture, Qt::LeftButton, {}, place->toPoint());
  EXPECT_EQ(text("frame.chosen"), mark);
  showTab("Parts");
  EXPECT_TRUE(text("frame.drawing.told").startsWith(mark));
}

TEST_F(FrameWorkedOut, OrderOfPuttingTogetherNamesEveryPrismOfAPanelOnce) {
  ASSERT_TRUE(results().fit) << qPrintable(results().no_fit);
  showTab("Fit-up");
  auto* fit = table("frame.fit");
  QTest::keyClicks(find<QLineEdit>("frame.fit.filter"), "P01-C");
  EXPECT_GE(fit->model()->rowCount(), 1);
  EXPECT_TRUE(text("figure.frame.fit").endsWith(QString("of %1").arg(made().plan->prisms.size())));
  EXPECT_FALSE(text("frame.fit.order").isEmpty());
  clickRow(fit, 0);
  EXPECT_TRUE(text("frame.fit.told").endsWith('.')) << "a whole sentence";
}

TEST_F(FrameWorkedOut, PartIsDrawnWithItsSizesAndSavedAsPaperAndAsWhatIsCut) {
  auto* parts = table("frame.parts");
  const int rib = rowOf(parts, "P01-rib");
  ASSERT_GE(rib, 0);
  clickRow(parts, rib);
  auto* drawing = find<SheetPicture>("frame.drawing");
  ASSERT_TRUE(drawing->sheet());
  EXPECT_GT(drawing->sheet()->texts.size(), 5U);
  const double before = drawing->pixelsPerMm();
  QTest::keyClick(drawing, Qt::Key_Plus);
  EXPECT_GT(drawing->pixelsPerMm(), before);
  QTest::keyClick(drawing, Qt::Key_Home);
  EXPECT_EQ(drawing->pixelsPerMm(), before);
  const auto head = [&](const QString& name) {
    QFile file(saveAs("frame.drawing", name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  };
  EXPECT_TRUE(head("rib.pdf").startsWith("%PDF"));
  EXPECT_TRUE(head("rib.svg").contains("<svg"));
  EXPECT_TRUE(head("rib.dxf").contains("ENGRAVE"));
  EXPECT_FALSE(QFile::exists(saveAs("frame.drawing", "rib.bmp")));
  EXPECT_TRUE(text("frame.drawing.told").contains(".pdf")) << "says what endings there are";
}

TEST_F(FrameWorkedOut, TurnedPartIsDrawnAndALongDrawingTurnsSheetBySheet) {
  auto* parts = table("frame.parts");
  auto* drawing = find<SheetPicture>("frame.drawing");
  auto* next = find<QToolButton>("frame.drawing.next");
  auto* before = find<QToolButton>("frame.drawing.before");
  clickRow(parts, rowOf(parts, "door-hinge-low-pin"));
  ASSERT_TRUE(drawing->sheet()) << qPrintable(drawing->reason());
  EXPECT_FALSE(next->isVisible()) << "all of it stands on one sheet";
  clickRow(parts, rowOf(parts, "P01-rib"));
  ASSERT_TRUE(drawing->sheet());
  ASSERT_TRUE(next->isEnabled());
  EXPECT_FALSE(before->isEnabled());
  const std::size_t texts = drawing->sheet()->texts.size();
  QTest::mouseClick(next, Qt::LeftButton);
  EXPECT_NE(drawing->sheet()->texts.size(), texts);
  EXPECT_TRUE(text("frame.drawing.told").contains("sheet 2 of"));
  QTest::mouseClick(before, Qt::LeftButton);
  EXPECT_EQ(drawing->sheet()->texts.size(), texts);
  clickRow(parts, rowOf(parts, "S001"));
  EXPECT_FALSE(drawing->sheet()) << "a screw is bought";
  EXPECT_TRUE(drawing->reason().contains("bought"));
}

TEST_F(FrameWorkedOut, PartsAreSizedAndDrawnInInchesWhereLengthsAre) {
  auto* parts = table("frame.parts");
  clickRow(parts, rowOf(parts, "P01-rib"));
  auto* drawing = find<SheetPicture>("frame.drawing");
  const auto says = [&](const std::string& words) {
    return std::ranges::any_of(drawing->sheet()->texts,
                               [&](const DrawnText& one) { return one.words == words; });
  };
  ASSERT_TRUE(drawing->sheet());
  EXPECT_TRUE(says("millimetres"));
  bench().setInches(true);
  QCoreApplication::processEvents();
  EXPECT_TRUE(says("inches"));
  const int row = rowOf(parts, "P01-rib");
  bool sized = false;
  for (int column = 0; column < parts->model()->columnCount(); ++column)
    sized = sized || cell(parts, row, column).endsWith(" in");
  EXPECT_TRUE(sized);
}

TEST_F(FrameWorkedOut, DoorTurnsByItsSliderAndRestsWhereThereIsNone) {
  spoilt = true;
  showTab("3D");
  auto* slider = find<QSlider>("frame.door");
  ASSERT_TRUE(slider->isEnabled());
  EXPECT_EQ(find<FramePage>("page.frame")->scene()->doorAngle_deg(), 0);
  slider->setFocus();
  QTest::keyClick(slider, Qt::Key_End);
  EXPECT_EQ(find<FramePage>("page.frame")->scene()->doorAngle_deg(), bench().values().frame.door_open_deg);
  EXPECT_TRUE(text("frame.door.reading").startsWith("90.0°"));
  ASSERT_TRUE(maker().waitUntilDone(kFrameWait_ms));
  ASSERT_TRUE(results().door) << qPrintable(results().no_door);
  EXPECT_EQ(text("frame.door.reading"),
            "90.0°, " + door_words(*results().door, bench().values().frame.door_open_deg, false));
  EXPECT_EQ(text("figure.frame.door"), door_free_words(*results().door, 90));
  typeInto("field.frame.door_panel", "0");
  ASSERT_TRUE(bench().waitUntilMade(kFrameWait_ms));
  EXPECT_FALSE(slider->isEnabled());
  EXPECT_TRUE(text("frame.door.reading").contains("No panel is a door"));
}

TEST_F(FrameWorkedOut, AllFilesOfTheFrameAreWrittenIntoAFolder) {
  showTab("Sheets");
  const QString out = folder.filePath("frame files");
  whileOpen(
      "frame.exportTo", [&] { click("frame.export"); },
      [&](QDialog& dialog) {
        dialog.findChild<QLineEdit*>("frame.exportTo.folder")->setText(out);
        auto* message = dialog.findChild<QLabel*>("frame.exportTo.message");
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("frame.exportTo.step"), Qt::LeftButton);
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("frame.exportTo.write"), Qt::LeftButton);
        EXPECT_TRUE(QTest::qWaitFor([&] { return message->text().contains("written"); }, kFrameWait_ms))
            << qPrintable(message->text());
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("frame.exportTo.close"), Qt::LeftButton);
      });
  EXPECT_TRUE(QFile::exists(out + "/parts.csv"));
  EXPECT_GE(QDir(out).entryList({"nest_*.dxf"}).size(), static_cast<int>(results().nest->sheets.size()));
}

TEST_F(FrameWorkedOut, HiddenPageWorksNothingOutAndStopKeepsWhatIsKnown) {
  spoilt = true;
  click("rail.brief");
  const Assignment one{"frame.sheet_spacing_mm", "12"};
  ASSERT_TRUE(bench().assign({&one, 1}, {}));
  ASSERT_TRUE(bench().waitUntilMade(kFrameWait_ms));
  EXPECT_TRUE(maker().isStale());
  EXPECT_FALSE(maker().isWorking()) << "nobody looks";
  click("rail.frame");
  ASSERT_TRUE(maker().isWorking());
  ASSERT_TRUE(QTest::qWaitFor([&] { return find<QWidget>("frame.stop")->width() > 20; }, 2000)) << "laid out";
  click("frame.stop");
  EXPECT_FALSE(maker().isWorking());
  EXPECT_EQ(text("frame.words"), "Stopped.");
  click("frame.stop");
  EXPECT_TRUE(maker().isWorking()) << "taken up again";
  waitForFit();
}

}  // namespace
}  // namespace prismwright
