#include "ui/views/despatch_tree.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScopedValueRollback>
#include <QScrollBar>
#include <QStyledItemDelegate>

namespace prismwright {
namespace {

constexpr int kWhat = 0;  // columns
constexpr int kState = 1;
constexpr int kLast = 2;
constexpr int kPieceRole = Qt::UserRole;  // index of the piece, -1 for a group
constexpr int kGroupRole = Qt::UserRole + 1;
constexpr int kStateWidth = 136;
constexpr int kUnpackedWidth = 156;  // of the state while nothing was packed yet
constexpr int kLastWidth = 100;
constexpr int kRowRoom = 8;

DespatchGroup group_of(const QTreeWidgetItem* item) {
  return static_cast<DespatchGroup>(item->data(kWhat, kGroupRole).toInt());
}
int piece_of(const QTreeWidgetItem* item) { return item->data(kWhat, kPieceRole).toInt(); }

/// Rows as high as those of the tables.
class RoomyRows : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setHeight(option.fontMetrics.height() + kRowRoom);
    return size;
  }
};

/// Mark and words in the colour of the state.
void show_state(QTreeWidgetItem* item, DespatchState state, const QString& words) {
  item->setText(kState, state_sign(state) + QLatin1Char(' ') + words);
  item->setForeground(kState, state_colour(state));
}

}  // namespace

DespatchTree::DespatchTree(QWidget* parent) : QTreeWidget(parent) {
  setHeaderLabels({tr("What goes out"), tr("State"), tr("Last packed")});
  setItemDelegate(new RoomyRows(this));
  setUniformRowHeights(true);
  setAlternatingRowColors(true);
  setAllColumnsShowFocus(true);
  setIndentation(16);
  header()->setStretchLastSection(false);
  header()->setSectionsMovable(false);
  header()->setSectionResizeMode(kWhat, QHeaderView::Stretch);
  header()->resizeSection(kLast, kLastWidth);
  connect(this, &QTreeWidget::currentItemChanged, this, [this] {
    if (!filling_) emit stood();
  });
  connect(this, &QTreeWidget::itemChanged, this, &DespatchTree::takeTick);
}

void DespatchTree::takeTick(const QTreeWidgetItem* item) {
  if (filling_ || item->parent() != nullptr) return;
  if (item->checkState(kWhat) == Qt::Checked)
    unticked_.erase(group_of(item));
  else
    unticked_.insert(group_of(item));
  emit tickedChanged();
}

void DespatchTree::setListing(std::shared_ptr<const DespatchListing> listing, const CellSheet& sheet) {
  const QScopedValueRollback quiet(filling_, true);
  const std::optional<DespatchGroup> group_before = group();
  std::optional<DespatchPiece> piece_before;
  if (const auto standing = piece(); standing && !group_before) piece_before = listing_->pieces[*standing];
  std::set<DespatchGroup> open;
  for (int i = 0; i < topLevelItemCount(); ++i)
    if (topLevelItem(i)->isExpanded()) open.insert(group_of(topLevelItem(i)));
  const int scrolled = verticalScrollBar()->value();
  listing_ = std::move(listing);
  clear();
  for (int i = 0; i < kDespatchGroups; ++i) addGroup(static_cast<DespatchGroup>(i), sheet);
  for (const DespatchGroup group : open)
    if (QTreeWidgetItem* item = itemOf(group)) item->setExpanded(true);
  if (group_before) setCurrentItem(itemOf(*group_before));
  if (piece_before) setCurrentItem(itemOf(piece_before->group, piece_before->name));
  verticalScrollBar()->setValue(scrolled);
  const bool has_last = listing_ && listing_->last;
  setColumnHidden(kLast, !has_last);
  header()->resizeSection(kState, has_last ? kStateWidth : kUnpackedWidth);
}

void DespatchTree::addGroup(DespatchGroup group, const CellSheet& sheet) {
  const StateCounts counts = listing_ ? count_states(*listing_, group) : StateCounts{};
  if (counts.empty()) return;
  auto* item = new QTreeWidgetItem(this);
  item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
  item->setData(kWhat, kPieceRole, -1);
  item->setData(kWhat, kGroupRole, static_cast<int>(group));
  item->setCheckState(kWhat, unticked_.count(group) != 0 ? Qt::Unchecked : Qt::Checked);
  item->setText(kWhat, group_words(group));
  item->setToolTip(kWhat, group_meaning(group));
  show_state(item, worst_state(counts), counts_words(counts));
  item->setToolTip(kState, counts_words(counts));
  QFont bold = item->font(kWhat);
  bold.setWeight(QFont::DemiBold);
  item->setFont(kWhat, bold);
  addPieces(item, group, sheet);
}

void DespatchTree::addPieces(QTreeWidgetItem* item, DespatchGroup group, const CellSheet& sheet) {
  for (std::size_t i = 0; i < listing_->pieces.size(); ++i) {
    if (listing_->pieces[i].group != group) continue;
    const auto cell = [&](DespatchColumn column) -> const Cell& {
      return sheet.rows[i].cells[static_cast<std::size_t>(column)];
    };
    auto* child = new QTreeWidgetItem(item);
    child->setData(kWhat, kPieceRole, static_cast<int>(i));
    child->setData(kWhat, kGroupRole, static_cast<int>(group));
    child->setText(kWhat, cell(DespatchColumn::piece).shown);
    show_state(child, listing_->states[i], state_words(listing_->states[i]));
    child->setToolTip(kState, cell(DespatchColumn::why).shown);
    const QString date = cell(DespatchColumn::date).saved;
    if (!date.isEmpty())
      child->setText(kLast, tr("%1, %2", "revision, date").arg(cell(DespatchColumn::revision).saved, date));
  }
}

void DespatchTree::keyPressEvent(QKeyEvent* event) {
  QTreeWidgetItem* item = currentItem();
  if (event->key() != Qt::Key_Space || item == nullptr || item->parent() != nullptr)
    return QTreeWidget::keyPressEvent(event);
  item->setCheckState(kWhat, item->checkState(kWhat) == Qt::Checked ? Qt::Unchecked : Qt::Checked);
}

QTreeWidgetItem* DespatchTree::itemOf(DespatchGroup group) const {
  for (int i = 0; i < topLevelItemCount(); ++i)
    if (group_of(topLevelItem(i)) == group) return topLevelItem(i);
  return nullptr;
}

QTreeWidgetItem* DespatchTree::itemOf(DespatchGroup group, const std::string& name) const {
  const QTreeWidgetItem* of_group = itemOf(group);
  for (int i = 0; of_group != nullptr && i < of_group->childCount(); ++i) {
    QTreeWidgetItem* item = of_group->child(i);
    if (listing_->pieces[static_cast<std::size_t>(piece_of(item))].name == name) return item;
  }
  return nullptr;
}

void DespatchTree::choose(DespatchGroup group, const std::string& name) {
  QTreeWidgetItem* item = listing_ ? itemOf(group, name) : nullptr;
  if (item == nullptr) return;
  item->parent()->setExpanded(true);
  setCurrentItem(item);
  scrollToItem(item);
}

std::optional<DespatchGroup> DespatchTree::group() const {
  const QTreeWidgetItem* item = currentItem();
  if (item == nullptr || item->parent() != nullptr) return {};
  return group_of(item);
}

std::optional<std::size_t> DespatchTree::piece() const {
  const QTreeWidgetItem* item = currentItem();
  if (item == nullptr || !listing_) return {};
  if (piece_of(item) >= 0) return static_cast<std::size_t>(piece_of(item));
  for (int i = 0; i < item->childCount(); ++i)
    if (const auto piece = static_cast<std::size_t>(piece_of(item->child(i))); listing_->pieces[piece].is_paper)
      return piece;
  return static_cast<std::size_t>(piece_of(item->child(0)));
}

std::vector<DespatchGroup> DespatchTree::ticked() const {
  std::vector<DespatchGroup> groups;
  for (int i = 0; i < topLevelItemCount(); ++i)
    if (const DespatchGroup group = group_of(topLevelItem(i)); unticked_.count(group) == 0)
      groups.push_back(group);
  return groups;
}

int DespatchTree::showOnly(const std::function<bool(std::size_t piece)>& passes, bool unfold) {
  int all = 0;
  for (int i = 0; i < topLevelItemCount(); ++i) {
    QTreeWidgetItem* of_group = topLevelItem(i);
    int within = 0;
    for (int k = 0; k < of_group->childCount(); ++k) {
      const bool stays = passes(static_cast<std::size_t>(piece_of(of_group->child(k))));
      of_group->child(k)->setHidden(!stays);
      within += stays ? 1 : 0;
    }
    of_group->setHidden(within == 0);
    if (unfold && within > 0) of_group->setExpanded(true);
    all += within;
  }
  return all;
}

}  // namespace prismwright
