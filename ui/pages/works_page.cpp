#include "ui/pages/works_page.h"

#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QTabWidget>
#include <QVBoxLayout>

#include "core/drawing/load_card.h"
#include "core/works/spares.h"
#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"
#include "ui/models/load_marks.h"
#include "ui/models/shown_numbers.h"
#include "ui/pages/pages.h"
#include "ui/views/history_tab.h"
#include "ui/views/inspection_tab.h"
#include "ui/views/loads_tab.h"
#include "ui/views/make_tab.h"
#include "ui/views/moulds_tab.h"
#include "ui/views/plan_tab.h"
#include "ui/views/prisms_tab.h"
#include "ui/views/record_dialog.h"
#include "ui/views/shrink_tab.h"
#include "ui/views/works_export_dialog.h"
#include "ui/views/works_form.h"

namespace prismwright {

QWidget* make_works_page(Workbench* bench, QWidget* parent) { return new WorksPage(bench, parent); }

WorksPage::WorksPage(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), desk_(new WorksDesk(bench, this)) {
  setObjectName(QStringLiteral("page.works"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 8, 16, 12);
  column->addWidget(makeTabs());
}

QWidget* WorksPage::makeTabs() {
  tabs_ = new QTabWidget(this);
  tabs_->setObjectName(QStringLiteral("works.tabs"));
  tabs_->setDocumentMode(true);
  tabs_->addTab(new PrismsTab(bench_, tabs_), tr("Prisms"));
  auto* make = new MakeTab(desk_, tabs_);
  connect(make, &MakeTab::mastersWanted, this, &WorksPage::exportMasters);
  connect(make, &MakeTab::mouldsWanted, this, &WorksPage::exportMoulds);
  connect(make, &MakeTab::spareWanted, this, &WorksPage::recordSpare);
  tabs_->addTab(make, tr("Make list"));
  tabs_->addTab(new MouldsTab(desk_, tabs_), tr("Moulds"));
  auto* loads = new LoadsTab(desk_, tabs_);
  connect(loads, &LoadsTab::cardWanted, this, &WorksPage::saveCard);
  connect(loads, &LoadsTab::castWanted, this, &WorksPage::castLoad);
  tabs_->addTab(loads, tr("Loads"));
  tabs_->addTab(new InspectionTab(desk_, tabs_), tr("Inspection"));
  tabs_->addTab(new ShrinkTab(desk_, tabs_), tr("Shrinkage"));
  tabs_->addTab(new PlanTab(desk_, tabs_), tr("Plan"));
  tabs_->addTab(new HistoryTab(desk_, tabs_), tr("History"));
  tabs_->addTab(new WorksForm(bench_, tabs_), tr("Values"));
  return tabs_;
}

QString WorksPage::folderFor(const char* kind) const {
  const QFileInfo book(QString::fromStdString(bench_->book().path()));
  return book.dir().filePath(book.completeBaseName() + QLatin1Char('-') + QLatin1String(kind));
}

void WorksPage::exportMasters(const QStringList& chosen) {
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr) return;
  WorksExportDialog dialog(WorksExportDialog::Files::masters, bench_->plan(), works->masters, chosen,
                           bench_->inches(), folderFor("masters"), this);
  dialog.exec();
}

void WorksPage::exportMoulds(const QStringList& chosen) {
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr) return;
  WorksExportDialog dialog(WorksExportDialog::Files::moulds, bench_->plan(), works->masters, chosen,
                           bench_->inches(), folderFor("moulds"), this);
  dialog.exec();
}

void WorksPage::saveCard(std::size_t load) {
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr || !works->loads || load >= works->loads->loads.size()) return;
  QFileDialog dialog(this, tr("Save load card"), folderFor("load") + QStringLiteral("-%1.pdf").arg(load + 1),
                     tr("PDF (*.pdf)"));
  dialog.setObjectName(QStringLiteral("works.card.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(QStringLiteral("pdf"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const std::string path = dialog.selectedFiles().front().toStdString();
  LoadCardWords words;
  words.title = bench_->values().brief.title;
  words.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  const auto bytes = pdf_bytes(load_card(*works->loads, load, works->pieces, bench_->values().works, words));
  const Done written = bytes ? write_whole(path, *bytes) : Done(bytes.problem());
  if (!written) emit bench_->refused(sentence_of(written.problem()));
}

void WorksPage::castLoad(std::size_t load) {
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr || !works->loads || load >= works->loads->loads.size()) return;
  RecordDialog dialog(bench_, marks_to_cast(*works, load, bench_->stages()), this);
  dialog.offerLoad(works->loads->loads[load].masses);
  dialog.exec();
}

void WorksPage::recordSpare(const QString& master) {
  const std::string name = master.toStdString();
  const WorksReckoning* works = desk_->reckoning();
  if (works == nullptr) return;
  const Master* wanted = find_master(works->masters, name);
  QStringList marks{QString::fromStdString(next_spare_mark(name, bench_->book().ledger()))};
  for (const std::string& spare : spare_marks(bench_->book().ledger()))
    if (wanted != nullptr && master_of_spare(works->masters, spare) == wanted)
      marks << QString::fromStdString(spare);
  RecordDialog dialog(bench_, marks, this);
  dialog.tickOnly(marks.front());
  dialog.exec();
}

}  // namespace prismwright
