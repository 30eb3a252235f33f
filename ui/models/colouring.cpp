#include "ui/models/colouring.h"

#include <QCoreApplication>
#include <array>

#include "core/optics/medium.h"
#include "ui/models/master_looks.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("colouring", text); }

/// "P03-R2a" -> "R2".
std::string zone_of(const std::string& mark) {
  std::string zone = mark.substr(mark.find('-') + 1);
  if (!zone.empty() && (zone.back() == 'a' || zone.back() == 'b')) zone.pop_back();
  return zone;
}

/// How level a zone sends its light; the last step is what no longer counts as level.
enum class Levelness { true_level, fine, within, beyond };

Levelness levelness_of(double departure_deg, double level_within_deg) {
  if (departure_deg <= 0.001) return Levelness::true_level;
  if (departure_deg <= 0.1 * level_within_deg) return Levelness::fine;
  return departure_deg <= level_within_deg ? Levelness::within : Levelness::beyond;
}

PrismLook levelness_look(Levelness levelness) {
  switch (levelness) {
    case Levelness::true_level:
      return {
          palette::between(palette::surface(), palette::glass_edge(), 0.25), QStringLiteral("="), {}, false};
    case Levelness::fine:
      return {palette::between(palette::surface(), palette::glass_edge(), 0.6), QStringLiteral("≈"), {}, false};
    case Levelness::within:
      return {QColor("#D9C9A3"), QStringLiteral("~"), {}, false};
    case Levelness::beyond:
      return {QColor("#C8452F"), QStringLiteral("✕"), {}, true};
  }
  return {};
}

PrismLook unknown_look(const QString& meaning) {
  return {palette::paper(), QStringLiteral("?"), meaning, false};
}

QString material_words(const Workbench& bench) {
  const std::string& name = bench.values().material.name;
  const Medium* medium = find_medium(name);
  return QString::fromStdString(medium ? medium->words() : name);
}

PrismLook departure_look(const Workbench& bench, const std::string& mark) {
  const auto proof = bench.proof();
  const std::string zone = zone_of(mark);
  if (proof)
    for (const ZoneProof& of_zone : proof->zones) {
      if (of_zone.mark != zone) continue;
      PrismLook look =
          levelness_look(levelness_of(of_zone.worst_departure_deg, bench.values().section.level_within_deg));
      look.meaning = words(QT_TRANSLATE_NOOP("colouring", "level within %1 deg"))
                         .arg(of_zone.worst_departure_deg, 0, 'f', 3);
      return look;
    }
  return unknown_look(words(QT_TRANSLATE_NOOP("colouring", "not proved")));
}

PrismLook clearance_look(const Workbench& bench, const std::string& mark) {
  const auto made = bench.made();
  const Clearance* tightest = made ? made->tightest_of(mark) : nullptr;
  if (!tightest) return unknown_look(words(QT_TRANSLATE_NOOP("colouring", "not measured yet")));
  const std::string& other = tightest->first == mark ? tightest->second : tightest->first;
  const QString meaning = words(QT_TRANSLATE_NOOP("colouring", "%1 to %2, %3"))
                              .arg(length_text(tightest->gap_mm, bench.inches()), QString::fromStdString(other),
                                   palette::verdict_words(tightest->verdict));
  return {palette::verdict(tightest->verdict), palette::verdict_sign(tightest->verdict), meaning,
          tightest->verdict == Verdict::clash};
}

PrismLook stage_look(Stage stage) {
  return {palette::stage(stage), palette::stage_sign(stage), palette::stage_words(stage),
          palette::stage_hatched(stage)};
}

std::vector<LegendRow> levelness_legend(const Workbench& bench) {
  const double limit = bench.values().section.level_within_deg;
  const std::array<QString, 4> meanings = {
      words(QT_TRANSLATE_NOOP("colouring", "within 0.001 deg")),
      words(QT_TRANSLATE_NOOP("colouring", "within %1 deg")).arg(0.1 * limit),
      words(QT_TRANSLATE_NOOP("colouring", "within %1 deg")).arg(limit),
      words(QT_TRANSLATE_NOOP("colouring", "beyond %1 deg")).arg(limit)};
  std::vector<LegendRow> rows;
  for (std::size_t i = 0; i < meanings.size(); ++i) {
    const PrismLook look = levelness_look(static_cast<Levelness>(i));
    rows.push_back({look.fill, look.sign, meanings[i], look.hatched});
  }
  return rows;
}

}  // namespace

PrismLook look_of(const Workbench& bench, const std::string& mark, Colouring colouring) {
  switch (colouring) {
    case Colouring::material:
      return {palette::glass_fill(), {}, material_words(bench), false};
    case Colouring::departure:
      return departure_look(bench, mark);
    case Colouring::clearance:
      return clearance_look(bench, mark);
    case Colouring::stage: {
      const auto found = bench.stages().find(mark);
      return stage_look(found == bench.stages().end() ? Stage::drawn : found->second);
    }
    case Colouring::master:
      return master_looks(bench.plan()).look_of(mark);
  }
  return {};
}

std::vector<LegendRow> legend_of(const Workbench& bench, Colouring colouring) {
  std::vector<LegendRow> rows;
  switch (colouring) {
    case Colouring::material:
      return {{palette::glass_fill(), {}, material_words(bench), false}};
    case Colouring::departure:
      return levelness_legend(bench);
    case Colouring::clearance:
      for (const Verdict verdict : {Verdict::clear, Verdict::tight, Verdict::clash})
        rows.push_back({palette::verdict(verdict), palette::verdict_sign(verdict),
                        palette::verdict_words(verdict), verdict == Verdict::clash});
      return rows;
    case Colouring::stage:
      for (const Stage stage : kStages)
        rows.push_back({palette::stage(stage), palette::stage_sign(stage), palette::stage_words(stage),
                        palette::stage_hatched(stage)});
      return rows;
    case Colouring::master:
      return master_looks(bench.plan()).legend();
  }
  return rows;
}

}  // namespace prismwright
