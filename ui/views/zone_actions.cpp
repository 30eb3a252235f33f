#include "ui/views/zone_actions.h"

#include <QAction>
#include <QMenu>
#include <QWidget>
#include <algorithm>

#include "ui/models/zone_selection.h"
#include "ui/style/dress.h"

namespace prismwright {

ZoneActions::ZoneActions(Workbench* bench, QWidget* page) : QObject(page), bench_(bench), page_(page) {
  lock_ = make("zone.lock", tr("Lock"), QStringLiteral("lock"), QKeySequence(Qt::CTRL | Qt::Key_L));
  split_ = make("zone.split", tr("Split"), QStringLiteral("split"), QKeySequence(Qt::CTRL | Qt::Key_T));
  remove_ = make("zone.remove", tr("Remove"), QStringLiteral("remove"), QKeySequence(Qt::Key_Delete));
  add_ = make("zone.add", tr("Add"), QStringLiteral("add"), QKeySequence(Qt::Key_Insert));
  makeAddMenu();
  connect(lock_, &QAction::triggered, this, [this] {
    if (const Zone* zone = chosen())
      (void)bench_->edit(lock_zone(bench_->values(), bench_->plan()->section, zone->mark, !zone->locked));
  });
  connect(split_, &QAction::triggered, this, [this] {
    if (const Zone* zone = chosen())
      (void)bench_->edit(split_zone(bench_->values(), bench_->plan()->section, zone->mark));
  });
  connect(remove_, &QAction::triggered, this, [this] {
    if (const Zone* zone = chosen())
      (void)bench_->edit(remove_zone(bench_->values(), bench_->plan()->section, zone->mark));
  });
  connect(add_, &QAction::triggered, this, [this] {
    const Zone* zone = chosen();
    addTo(zone ? band_of(zone->kind) : Band::refracting);
  });
  // What may be done with a zone stays the same while its limit is dragged.
  connect(bench_, &Workbench::sectionChanged, this, [this] {
    if (!bench_->isPreviewing()) follow();
  });
  connect(bench_, &Workbench::selectionChanged, this, &ZoneActions::follow);
  follow();
}

QAction* ZoneActions::make(const char* name, const QString& text, const QString& icon,
                           const QKeySequence& keys) {
  auto* action = new QAction(drawn_icon(icon), text, this);
  action->setObjectName(QLatin1String(name));
  action->setShortcut(keys);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  page_->addAction(action);
  return action;
}

void ZoneActions::makeAddMenu() {
  add_menu_ = new QMenu(page_);
  const std::array<std::pair<Band, QString>, kBands> bands = {
      std::pair(Band::refracting, tr("A ring to the refracting band")),
      std::pair(Band::upper, tr("A prism above the upper prisms")),
      std::pair(Band::lower, tr("A prism below the lower prisms"))};
  for (const auto& [band, words] : bands) {
    QAction* action = add_menu_->addAction(words);
    const std::string_view name = name_of(band);
    action->setObjectName(QStringLiteral("zone.add.") +
                          QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
    const Band to = band;
    connect(action, &QAction::triggered, this, [this, to] { addTo(to); });
  }
}

void ZoneActions::addTo(Band band) {
  if (!bench_->plan() || !bench_->edit(add_zone(bench_->values(), bench_->plan()->section, band))) return;
  QString last;
  for (const Zone& zone : bench_->plan()->section.zones)
    if (band_of(zone.kind) == band) last = QString::fromStdString(zone.mark);
  if (!last.isEmpty()) select_zones(*bench_, {last}, last);
}

const Zone* ZoneActions::chosen() const {
  const QSet<QString> zones = selected_zones(*bench_);
  return bench_->plan() && zones.size() == 1 ? bench_->plan()->section.find(zones.begin()->toStdString())
                                             : nullptr;
}

void ZoneActions::follow() {
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only() && bench_->plan() != nullptr;
  const Zone* zone = chosen();
  const bool locked = zone && zone->locked;
  const QString name = zone ? QString::fromStdString(zone->mark) : QString();
  const QString none = tr("Select one zone first");
  const QString held = tr("%1 is locked where it stands: free it first").arg(name);
  const auto tell = [](QAction* action, bool can, const QString& tip) {
    action->setEnabled(can);
    action->setToolTip(
        action->shortcut().isEmpty() ? tip : QStringLiteral("%1 (%2)").arg(tip, action->shortcut().toString()));
  };
  lock_->setText(locked ? tr("Free") : tr("Lock"));
  lock_->setIcon(drawn_icon(locked ? QStringLiteral("free") : QStringLiteral("lock")));
  tell(lock_, may_edit && zone,
       !zone    ? none
       : locked ? tr("Free %1").arg(name)
                : tr("Lock %1 where it stands while its neighbours change").arg(name));
  tell(split_, may_edit && zone && !locked,
       !zone    ? none
       : locked ? held
                : tr("Make two zones of %1").arg(name));
  tell(remove_, may_edit && zone && !locked, !zone ? none : locked ? held : tr("Take %1 out").arg(name));
  tell(add_, may_edit,
       zone ? tr("Add a zone at the outer end of the band of %1").arg(name)
            : tr("Add a ring to the refracting band"));
  add_menu_->setEnabled(may_edit);
}

void ZoneActions::popup(const QPoint& global_place) {
  auto* menu = new QMenu(page_);
  menu->setObjectName(QStringLiteral("zone.menu"));
  menu->setAttribute(Qt::WA_DeleteOnClose);
  menu->addActions({lock_, split_, remove_});
  menu->addSeparator();
  menu->addActions(add_menu_->actions());
  menu->popup(global_place);
}

}  // namespace prismwright
