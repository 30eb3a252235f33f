#pragma once

#include <QWidget>
#include <memory>

#include "core/light/light_report.h"
#include "ui/models/workbench.h"

class QLabel;

namespace prismwright {

class ChromaticityPlot;
class FigureTable;

/// The colours of the light: the CIE diagram, a table of the lights against the published regions, the tint and
/// the screens as values and as curves.
///
/// Object names: light.colour (itself), light.colour.words, light.colours (the table), field.KEY; those of the
/// plots.
class ColourTab : public QWidget {
  Q_OBJECT

 public:
  explicit ColourTab(Workbench* bench, QWidget* parent = nullptr);
  /// The light and the plan that it belongs to; both null while there is none.
  void setReport(const std::shared_ptr<const LightReport>& report, const std::shared_ptr<const LensPlan>& plan);

 private:
  QWidget* makeSide();
  QWidget* makeFoot();
  void fill(const LightColours& colours, const std::vector<Panel>& panels);

  Workbench* bench_;
  ChromaticityPlot* diagram_ = nullptr;
  QLabel* words_ = nullptr;
  FigureTable* table_ = nullptr;
};

}  // namespace prismwright
