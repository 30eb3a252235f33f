#pragma once

#include <QTableView>

namespace prismwright {

class MarkFilter;

/// The table of the laser bench with what is read and what is to be done before what is only good to know. Its
/// columns are as wide as they need to be; what is to be done takes the rest.
///
/// Object name bench.table.
class BenchView : public QTableView {
  Q_OBJECT

 public:
  BenchView(MarkFilter* order, QWidget* parent);
  /// Widths for the rows of another lens or unit, once.
  void fitColumns();

 signals:
  void recordWanted();  ///< a double click on a row, or Return

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  [[nodiscard]] int neededWidth(int column) const;
  void giveTheRest();
};

}  // namespace prismwright
