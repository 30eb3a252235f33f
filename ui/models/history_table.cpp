#include "ui/models/history_table.h"

#include <QCoreApplication>

#include "ui/models/local_time.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("HistoryTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

QString kind_words(LifeKind kind) {
  switch (kind) {
    case LifeKind::stage:
      return tr("stage");
    case LifeKind::load:
      return tr("load");
    case LifeKind::measurement:
      return tr("measurement");
    case LifeKind::decision:
      return tr("decision");
    case LifeKind::bench:
      return tr("laser bench");
    case LifeKind::photograph:
      return tr("photograph");
  }
  return {};
}

Cell when_cell(const std::string& when_utc) { return {local_time(when_utc), qt(when_utc), qt(when_utc)}; }

}  // namespace

CellSheet history_sheet(std::span<const LifeEvent> life) {
  CellSheet sheet;
  sheet.heads = {{tr("When"), "when_utc", {}, false},
                 {tr("Kind"), "kind", {}, false},
                 {tr("What happened"), "what", {}, false},
                 {tr("By"), "by", {}, false},
                 {tr("Note"), "note", {}, false}};
  for (auto event = life.rbegin(); event != life.rend(); ++event) {
    CellRow row;
    row.cells = {when_cell(event->when_utc), word_cell(kind_words(event->kind)), word_cell(qt(event->what)),
                 word_cell(qt(event->by)), word_cell(qt(event->note))};
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

}  // namespace prismwright
