#include <QComboBox>
#include <QFile>
#include <QPushButton>

#include "tests/ui/section_desk.h"
#include "ui/views/drawing_dialog.h"

namespace prismwright {
namespace {

class DrawingSaved : public SectionDesk {
 protected:
  void SetUp() override {
    SectionDesk::SetUp();
    dialog = std::make_unique<DrawingDialog>(&bench, folder.filePath("section.pdf"), page);
    dialog->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
  }
  void chooseKind(const char* ending) {
    auto* kind = dialog->findChild<QComboBox*>("drawing.kind");
    kind->setFocus();
    const int place = kind->findData(ending);
    while (kind->currentIndex() != place)
      QTest::keyClick(kind, kind->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
  }
  void save() { QTest::mouseClick(dialog->findChild<QPushButton*>("drawing.save"), Qt::LeftButton); }
  [[nodiscard]] QString message() const { return dialog->findChild<QLabel*>("drawing.message")->text(); }
  [[nodiscard]] QByteArray head(const QString& name) const {
    QFile file(folder.filePath(name));
    return file.open(QIODevice::ReadOnly) ? file.read(4096) : QByteArray();
  }

  std::unique_ptr<DrawingDialog> dialog;
};

TEST_F(DrawingSaved, EachKindUnderItsOwnEnding) {
  save();
  EXPECT_EQ(message(), "Saved: section.pdf.");
  EXPECT_TRUE(head("section.pdf").startsWith("%PDF"));
  chooseKind("svg");
  EXPECT_TRUE(dialog->findChild<QLineEdit*>("drawing.file")->text().endsWith("section.svg"));
  save();
  EXPECT_TRUE(head("section.svg").contains("<svg")) << message().toStdString();
  chooseKind("dxf");
  EXPECT_FALSE(dialog->findChild<QComboBox*>("drawing.paper")->isEnabled()) << "outlines have no sheet";
  save();
  EXPECT_TRUE(head("section.dxf").contains("SECTION")) << message().toStdString();
}

TEST_F(DrawingSaved, ToleranceOutOfRangeIsRefusedAndNothingIsWritten) {
  auto* tolerance = dialog->findChild<QLineEdit*>("drawing.tolerance");
  tolerance->selectAll();
  QTest::keyClicks(tolerance, "5");
  save();
  EXPECT_TRUE(message().contains("5")) << message().toStdString();
  EXPECT_TRUE(dialog->findChild<QLabel*>("drawing.message")->property("refusal").toBool());
  tolerance->selectAll();
  QTest::keyClicks(tolerance, "fine");
  save();
  EXPECT_TRUE(message().contains("fine"));
  EXPECT_FALSE(QFile::exists(folder.filePath("section.pdf")));
}

TEST_F(DrawingSaved, FolderThatIsNotThereIsSaid) {
  auto* file = dialog->findChild<QLineEdit*>("drawing.file");
  file->selectAll();
  QTest::keyClicks(file, folder.filePath("nowhere/section.pdf"));
  save();
  EXPECT_TRUE(dialog->findChild<QLabel*>("drawing.message")->property("refusal").toBool());
  EXPECT_FALSE(message().isEmpty());
}

TEST_F(DrawingSaved, TypedEndingChoosesTheKind) {
  auto* file = dialog->findChild<QLineEdit*>("drawing.file");
  file->selectAll();
  QTest::keyClicks(file, folder.filePath("outline.dxf"));
  EXPECT_EQ(dialog->findChild<QComboBox*>("drawing.kind")->currentData().toString(), "dxf");
}

}  // namespace
}  // namespace prismwright
