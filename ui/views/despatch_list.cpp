#include "ui/views/despatch_list.h"

#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"
#include "ui/views/despatch_tree.h"
#include "ui/views/named.h"
#include "ui/views/plot_files.h"

namespace prismwright {
namespace {

constexpr int kToldLines = 4;

}  // namespace

DespatchList::DespatchList(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(makeHead());
  tree_ = named(new DespatchTree(this), "despatch.list");
  tree_->setAccessibleName(tr("What goes out"));
  tree_->setFocus();  // whoever comes to the page stands in the list, not in a field
  connect(tree_, &DespatchTree::stood, this, &DespatchList::takeCurrent);
  connect(tree_, &DespatchTree::tickedChanged, this, &DespatchList::tickedChanged);
  column->addWidget(tree_, 1);
  told_ = named(new QLabel(this), "despatch.told");
  told_->setWordWrap(true);
  told_->setTextFormat(Qt::RichText);
  told_->setTextInteractionFlags(Qt::TextBrowserInteraction | Qt::LinksAccessibleByKeyboard);
  told_->setFocusPolicy(Qt::TabFocus);
  told_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  told_->setContentsMargins(8, 4, 8, 0);
  told_->setMinimumHeight(kToldLines * told_->fontMetrics().lineSpacing() + 8);
  connect(told_, &QLabel::linkActivated, this, [this] {
    if (const auto standing = piece()) emit clearancesWanted(*standing);
  });
  column->addWidget(told_);
  count(0);
}

QWidget* DespatchList::makeHead() {
  auto* head = new QWidget(this);
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(8, 0, 0, 0);
  row->setSpacing(8);
  filter_ = named(new QLineEdit(head), "despatch.filter");
  filter_->setClearButtonEnabled(true);
  filter_->setPlaceholderText(tr("Filter: U07, sheet"));
  filter_->setMinimumWidth(96);
  choice_ = named(new QComboBox(head), "despatch.choice");
  choice_->setAccessibleName(tr("State"));
  choice_->addItem(tr("all states"), -1);
  for (const DespatchState state :
       {DespatchState::withheld, DespatchState::stale, DespatchState::unpacked, DespatchState::fresh})
    choice_->addItem(state_words(state), static_cast<int>(state));
  count_ = named(new QLabel(head), "despatch.count");
  count_->setProperty("muted", true);
  save_ = named(new QToolButton(head), "despatch.list.save");
  save_->setIcon(drawn_icon(QStringLiteral("save")));
  save_->setProperty("tool", true);
  save_->setFocusPolicy(Qt::TabFocus);
  save_->setAccessibleName(tr("Save the list"));
  save_->setToolTip(tr("Saves the list as CSV, with the reason of every state"));
  row->addWidget(filter_, 1);
  row->addWidget(choice_);
  row->addWidget(count_);
  row->addWidget(save_);
  connect(filter_, &QLineEdit::textChanged, this, &DespatchList::filter);
  connect(choice_, &QComboBox::currentIndexChanged, this, &DespatchList::filter);
  connect(save_, &QToolButton::clicked, this, &DespatchList::save);
  return head;
}

void DespatchList::setListing(std::shared_ptr<const DespatchListing> listing) {
  if (listing == listing_) return;
  listing_ = std::move(listing);
  sheet_ = listing_ ? despatch_sheet(*listing_) : CellSheet{};
  tree_->setListing(listing_, sheet_);
  filter();
  tell();
}

void DespatchList::setStale(bool stale) { tree_->setEnabled(!stale); }

void DespatchList::setReason(const QString& reason) {
  reason_ = reason;
  tell();
}

void DespatchList::choose(DespatchGroup group, const std::string& name) { tree_->choose(group, name); }

std::optional<std::size_t> DespatchList::piece() const { return tree_->piece(); }

std::vector<DespatchGroup> DespatchList::ticked() const { return tree_->ticked(); }

bool DespatchList::passes(std::size_t piece) const {
  const int wanted = choice_->currentData().toInt();
  if (wanted >= 0 && static_cast<int>(listing_->states[piece]) != wanted) return false;
  QStringList shown;
  for (const Cell& cell : sheet_.rows[piece].cells) shown << cell.shown;
  const QString all = shown.join(QLatin1Char('\n'));
  const QStringList typed = filter_->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
  return std::all_of(typed.begin(), typed.end(),
                     [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

/// What is looked for lies open; groups without any of it are away.
void DespatchList::filter() {
  const bool looking = !filter_->text().trimmed().isEmpty() || choice_->currentData().toInt() >= 0;
  count(tree_->showOnly([this](std::size_t piece) { return passes(piece); }, looking));
}

void DespatchList::count(int shown) {
  const int all = static_cast<int>(sheet_.rows.size());
  count_->setText(shown == all ? tr("%1 pieces").arg(all) : tr("%1 of %2").arg(shown).arg(all));
  save_->setEnabled(shown > 0);
}

void DespatchList::takeCurrent() {
  tell();
  if (const auto standing = piece()) emit chosen(*standing);
}

/// Under the tree: what is stood on, and why it is in its state.
void DespatchList::tell() {
  const auto standing = piece();
  if (!reason_.isEmpty() || !standing) return told_->setText(reason_.toHtmlEscaped());
  if (const auto group = tree_->group()) {
    const QString counts = counts_words(count_states(*listing_, *group));
    return told_->setText(
        QStringLiteral("<b>%1</b>: %2.<br>%3")
            .arg(group_words(*group).toHtmlEscaped(), counts, group_meaning(*group).toHtmlEscaped()));
  }
  const DespatchState state = listing_->states[*standing];
  QString text = QStringLiteral("<b>%1</b>: %2. %3")
                     .arg(QString::fromStdString(listing_->pieces[*standing].words).toHtmlEscaped(),
                          state_words(state), why_words(*listing_, *standing).toHtmlEscaped());
  if (is_clash(listing_->pieces[*standing]))
    text += QStringLiteral("<br><a href=\"clearances\" style=\"color:%1\">%2</a>")
                .arg(palette::sea().name(), tr("Show it among the clearances of the page Frame"));
  told_->setText(text);
}

void DespatchList::save() {
  QFileDialog dialog(this, tr("Save the list"));
  dialog.setObjectName(QStringLiteral("despatch.list.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters({tr("Numbers (*.csv)"), tr("All files (*)")});
  dialog.setDefaultSuffix(QStringLiteral("csv"));
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(tr("Despatch"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  PlotNumbers numbers;
  for (const CellHead& head : sheet_.heads) numbers.heads << head.key;
  for (std::size_t i = 0; i < sheet_.rows.size(); ++i) {
    if (!passes(i)) continue;
    QStringList saved;
    for (const Cell& cell : sheet_.rows[i].cells) saved << quoted_for_csv(cell.saved);
    numbers.rows.push_back(std::move(saved));
  }
  const Done done = save_numbers(numbers, path);
  told_->setText((done ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(done.problem()))
                     .toHtmlEscaped());
}

}  // namespace prismwright
