#pragma once

#include <QWidget>

#include "ui/models/parts_table.h"

class QGridLayout;

namespace prismwright {

/// The main figures of the frame: pieces, mass, clearances by verdict.
/// Object names: frame.figures (itself), figure.frame.NAME.
class FrameFigures : public QWidget {
  Q_OBJECT

 public:
  explicit FrameFigures(QWidget* parent);
  void setMade(const MadeLens* made, const std::vector<PartsLine>& lines);
  /// A figure that is worked out later: "sheets", "door", "fit". Blank: a dash.
  void setFigure(const char* name, const QString& words);
  void setStale(bool stale);

 private:
  void add(const char* name, const QString& label, const QString& meaning);
  void setClearances(const MadeLens* made);

  QGridLayout* grid_;
};

}  // namespace prismwright
