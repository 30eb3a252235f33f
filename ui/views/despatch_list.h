#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "ui/models/despatch_table.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QToolButton;

namespace prismwright {

class DespatchTree;

/// What goes out: groups with the count of their pieces in each state, ticked or not, that unfold to their
/// pieces; a line that filters them by words, a choice of a state, and why the one stood on is in its state.
///
/// Object names: despatch.list (the tree), despatch.filter, despatch.choice, despatch.count, despatch.told,
/// despatch.list.save; the dialog is despatch.list.saveTo.
class DespatchList : public QWidget {
  Q_OBJECT

 public:
  explicit DespatchList(QWidget* parent);

  /// What was stood on, unfolded and ticked stays so.
  void setListing(std::shared_ptr<const DespatchListing> listing);
  void setStale(bool stale);
  /// Why there is nothing, in place of the count.
  void setReason(const QString& reason);
  /// Stands on this piece and tells of it.
  void choose(DespatchGroup group, const std::string& name);
  [[nodiscard]] std::optional<std::size_t> piece() const;
  /// The groups that are ticked.
  [[nodiscard]] std::vector<DespatchGroup> ticked() const;

 signals:
  void chosen(std::size_t piece);  ///< by hand, or by choose(); of a group its first sheet
  void tickedChanged();
  void clearancesWanted(std::size_t piece);  ///< of a withheld piece

 private:
  QWidget* makeHead();
  void filter();
  void count(int shown);
  void takeCurrent();
  void tell();
  void save();
  [[nodiscard]] bool passes(std::size_t piece) const;

  std::shared_ptr<const DespatchListing> listing_;
  CellSheet sheet_;
  DespatchTree* tree_ = nullptr;
  QLineEdit* filter_ = nullptr;
  QComboBox* choice_ = nullptr;
  QLabel* count_ = nullptr;
  QLabel* told_ = nullptr;
  QToolButton* save_ = nullptr;
  QString reason_;
};

}  // namespace prismwright
