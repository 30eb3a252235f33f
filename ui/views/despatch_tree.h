#pragma once

#include <QTreeWidget>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "ui/models/despatch_table.h"

namespace prismwright {

/// Groups of what goes out, ticked or not, with the count of their pieces in each state; they unfold to their
/// pieces. What was stood on, unfolded and ticked stays so when the listing changes.
class DespatchTree : public QTreeWidget {
  Q_OBJECT

 public:
  explicit DespatchTree(QWidget* parent);

  /// `sheet` is the listing's (despatch_sheet).
  void setListing(std::shared_ptr<const DespatchListing> listing, const CellSheet& sheet);
  /// Stands on this piece, unfolds its group and tells of it.
  void choose(DespatchGroup group, const std::string& name);
  /// The piece that is stood on; of a group, the first of its pieces that is paper, or its first.
  [[nodiscard]] std::optional<std::size_t> piece() const;
  /// The group that is stood on; blank where a piece is.
  [[nodiscard]] std::optional<DespatchGroup> group() const;
  [[nodiscard]] std::vector<DespatchGroup> ticked() const;
  /// Hides what does not pass, and groups without any that does; answers how many pieces pass. `unfold`: what
  /// passes lies open.
  int showOnly(const std::function<bool(std::size_t piece)>& passes, bool unfold);

 signals:
  void stood();  ///< on another row, by hand or by choose()
  void tickedChanged();

 protected:
  /// The space bar ticks the group that is stood on, whatever column the keys are in.
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void addGroup(DespatchGroup group, const CellSheet& sheet);
  void addPieces(QTreeWidgetItem* item, DespatchGroup group, const CellSheet& sheet);
  void takeTick(const QTreeWidgetItem* item);
  [[nodiscard]] QTreeWidgetItem* itemOf(DespatchGroup group) const;
  [[nodiscard]] QTreeWidgetItem* itemOf(DespatchGroup group, const std::string& name) const;

  std::shared_ptr<const DespatchListing> listing_;
  std::set<DespatchGroup> unticked_;
  bool filling_ = false;
};

}  // namespace prismwright
