#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// The panels of the lens as a table edited in place: number, width, axis shift, azimuth of the axis, blind.
///
/// One width alone can never be changed (they add to 360 deg), so edits are held here until the widths add up;
/// then they go to the book as one step. Until then isHeld() is true and shortfall_deg() says what is missing.
class PanelsModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { number, width, shift, axis, blind, columns };

  explicit PanelsModel(Workbench* bench, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  /// What the table shows, which is not yet the book's while edits are held.
  [[nodiscard]] const std::vector<Panel>& panels() const { return panels_; }
  [[nodiscard]] double sum_deg() const;
  /// 360 less the sum of the widths.
  [[nodiscard]] double shortfall_deg() const { return 360 - sum_deg(); }
  [[nodiscard]] bool isHeld() const { return held_; }
  /// Gives held edits up.
  void putBack();
  /// Makes the panels equal, as one step.
  void makeEqual(int count);

 signals:
  void panelsChanged();  ///< what the table shows is new

 private:
  void follow();
  void read();
  void send();
  [[nodiscard]] bool mayEdit() const;

  Workbench* bench_;
  std::vector<Panel> panels_;
  std::string read_from_;  ///< the book's panels as they were read: other edits leave held ones alone
  std::vector<PanelPlace> places_;
  bool held_ = false;
};

}  // namespace prismwright
