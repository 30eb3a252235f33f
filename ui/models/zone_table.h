#pragma once

#include <QAbstractTableModel>
#include <QIcon>
#include <QString>
#include <memory>
#include <vector>

#include "ui/models/workbench.h"
#include "ui/models/zone_edits.h"

namespace prismwright {

/// The zones of the section as a table, from the top of the lens down. A zone is given another size in place:
/// by its outer limit, a ring by its margin, a prism by its entry side or its section thickness. Locked zones
/// carry a mark and the word, and are not edited.
///
/// Lengths are shown and typed in the window's unit; a typed unit wins ("3/8 in"). An edit goes to the
/// workbench at once; a refusal leaves the cell as it was and comes by Workbench::refused.
class ZoneTable : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column {
    mark,
    kind,
    lock,
    from,
    to,
    margin,
    breadth,
    thickness,
    departure,
    reflection,
    share,
    through,
    columns
  };

  explicit ZoneTable(Workbench* bench, QObject* parent = nullptr);

  [[nodiscard]] int rowOf(const QString& zone) const;  ///< -1 when there is none
  [[nodiscard]] QString zoneAt(int row) const;
  /// The zone that the laser is in, marked in the table; empty for none.
  void setLaserZone(const QString& zone);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  struct Row {
    const Zone* zone;
    const ZoneProof* proof;  ///< null while there is none
  };

  void follow();
  void rebuild();
  void tellNextRows(int most);
  void dropRowsNotIn(const std::vector<Row>& wanted);
  [[nodiscard]] QVariant shown(const Row& row, int column) const;
  [[nodiscard]] std::optional<ZoneSize> sizeBehind(const QModelIndex& index) const;
  [[nodiscard]] QString tip(const QModelIndex& index) const;
  [[nodiscard]] QString length(double mm) const;

  Workbench* bench_;
  std::shared_ptr<const LensPlan> plan_;  ///< keeps alive what the rows point to
  std::shared_ptr<const Proof> proof_;
  std::vector<Row> rows_;
  int told_ = 0;  ///< rows, from the top, of which views know that they are new
  QString laser_zone_;
  QIcon lock_icon_;
};

}  // namespace prismwright
