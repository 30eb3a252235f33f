#pragma once

#include <gtest/gtest.h>

#include <QImage>
#include <QSignalSpy>
#include <QTest>
#include <memory>

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <TopLoc_Location.hxx>
#include <gp_Ax2.hxx>

#include "core/base/angle.h"
#include "ui/views/lens_view.h"

namespace prismwright {

inline TopoDS_Shape turned(const TopoDS_Shape& shape, double azimuth_deg) {
  gp_Trsf turn;
  turn.SetRotation(gp::OZ(), radians(azimuth_deg));
  return shape.Moved(TopLoc_Location(turn));
}

/// Four panels of two blocks each about the lens axis (a lower one, C, and an upper one, U01), and a brass ring
/// below: congruent blocks share one solid, as the real ones do.
inline std::shared_ptr<MadeLens> block_lens() {
  auto plan = std::make_shared<LensPlan>();
  plan->values = LensValues{};
  plan->values.brief.focal_mm = 250;
  plan->panels = place_panels(equal_panels(4));
  auto bodies = std::make_shared<LensBodies>();
  const TopoDS_Shape lower = BRepPrimAPI_MakeBox(gp_Pnt(235, -120, -150), 30, 240, 200).Shape();
  const TopoDS_Shape upper = BRepPrimAPI_MakeBox(gp_Pnt(215, -100, 60), 40, 200, 90).Shape();
  for (const PanelPlace& panel : plan->panels) {
    const auto add = [&](const char* zone, const TopoDS_Shape& shape) {
      PlannedPrism prism;
      prism.mark = "P0" + std::to_string(panel.number) + "-" + zone;
      prism.zone = zone;
      prism.panel = panel.number;
      prism.axis_deg = panel.axis_deg;
      plan->prisms.push_back(prism);
      PrismBody body;
      body.mark = prism.mark;
      body.shape = turned(shape, panel.axis_deg);
      bodies->prisms.push_back(body);
    };
    add("U01", upper);
    add("C", lower);
  }
  const gp_Ax2 foot(gp_Pnt(0, 0, -180), gp::DZ());
  FrameBody ring;
  ring.mark = "ring-bottom";
  ring.shape = BRepAlgoAPI_Cut(BRepPrimAPI_MakeCylinder(foot, 270, 15).Shape(),
                               BRepPrimAPI_MakeCylinder(foot, 220, 15).Shape())
                   .Shape();
  auto made = std::make_shared<MadeLens>();
  made->plan = plan;
  made->bodies = bodies;
  made->frame = std::make_shared<FramePlan>();
  made->metal = std::make_shared<std::vector<FrameBody>>(1, ring);
  made->clearances = std::make_shared<std::vector<Clearance>>();
  return made;
}

/// Pixels whose green stands out by so much over their red: glass on white paper, whatever the shade.
inline int glass_pixels(const QImage& picture) {
  int count = 0;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) {
      const QRgb pixel = picture.pixel(x, y);
      if (qGreen(pixel) - qRed(pixel) > 12 && qGreen(pixel) >= qBlue(pixel)) ++count;
    }
  return count;
}

/// Pixels of brass: red over green over blue, clearly.
inline int brass_pixels(const QImage& picture) {
  int count = 0;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) {
      const QRgb pixel = picture.pixel(x, y);
      if (qRed(pixel) - qGreen(pixel) > 12 && qGreen(pixel) - qBlue(pixel) > 30) ++count;
    }
  return count;
}

inline int differing_pixels(const QImage& a, const QImage& b) {
  if (a.size() != b.size()) return a.width() * a.height();
  int count = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x)
      if (a.pixel(x, y) != b.pixel(x, y)) ++count;
  return count;
}

/// Waits until the view shows the lens given last, smoothly drawn, and gives the picture without the words on
/// it. A null image, and a failure, when it does not come.
inline QImage settled_picture(LensView& view) {
  EXPECT_EQ(view.trouble().toStdString(), "");
  EXPECT_TRUE(QTest::qWaitFor([&] { return view.isCurrent(); }, 30000)) << "the lens comes on the screen";
  auto* gl = qobject_cast<LensGl*>(view.picture());
  EXPECT_TRUE(!gl || QTest::qWaitFor([&] { return gl->settled(); }, 10000)) << "the smooth picture follows";
  return gl ? gl->grabFramebuffer() : QImage();
}

/// The 3D view on a desk of its own, with the blocks of block_lens in it.
class BlocksOnDesk : public testing::Test {
 protected:
  void SetUp() override {
    desk.resize(700, 560);
    view = new LensView(&desk);
    view->setGeometry(0, 0, 640, 480);
    desk.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&desk));
    view->showLens(made);
  }
  QImage picture() const { return settled_picture(*view); }
  void clickAt(QPoint place, Qt::KeyboardModifiers keys = {}) const {
    QTest::mouseClick(view->picture(), Qt::LeftButton, keys, place);
  }

  std::shared_ptr<MadeLens> made = block_lens();
  QWidget desk;
  LensView* view = nullptr;
};

}  // namespace prismwright
