#include "ui/models/tell_tale.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "ui/models/parts_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

using State = TellTale::State;

QString words(const char* text) { return QCoreApplication::translate("tell_tales", text); }
QString percent(double share) { return QString::number(100 * share, 'f', 2); }

/// The prisms of a zone in the first panel that has it: enough to point at the cause.
QStringList prisms_of(const Workbench& bench, const std::string& zone) {
  QStringList marks;
  const auto plan = bench.plan();
  if (!plan) return marks;
  int panel = 0;
  for (const PlannedPrism& prism : plan->prisms) {
    if (prism.zone != zone || (panel != 0 && prism.panel != panel)) continue;
    panel = prism.panel;
    marks << QString::fromStdString(prism.mark);
  }
  return marks;
}

TellTale no_section(const Workbench& bench, Page page) {
  const QString why = bench.sectionProblem() ? sentence_of(*bench.sectionProblem()) : QString();
  return {State::amiss, words(QT_TRANSLATE_NOOP("tell_tales", "No section can be made")), why, page, {}};
}

/// The worst departure where flat inner faces make it, away from the panels' middles.
TellTale facet_tale(const Workbench& bench, const FacetDeparture& facet, double limit) {
  const double worst = std::abs(facet.worst.departure_deg);
  return {
      worst <= limit ? State::well : State::amiss,
      words(QT_TRANSLATE_NOOP("tell_tales", "Level within %1 deg")).arg(worst, 0, 'f', 3),
      words(QT_TRANSLATE_NOOP("tell_tales",
                              "Worst departure from level, behind the flat inner face of zone %1, %2 deg from "
                              "the panel's axis. Counted as level up to %3 deg."))
          .arg(QString::fromStdString(facet.zone))
          .arg(facet.worst.azimuth_deg, 0, 'f', 1)
          .arg(limit),
      Page::section, prisms_of(bench, facet.zone)};
}

TellTale level_tale(const Workbench& bench) {
  const auto proof = bench.proof();
  if (!proof || bench.sectionProblem()) return no_section(bench, Page::section);
  const double limit = bench.values().section.level_within_deg;
  const FacetDeparture* facet = worst_of(bench.facets());
  if (facet && std::abs(facet->worst.departure_deg) > proof->worst_departure_deg)
    return facet_tale(bench, *facet, limit);
  TellTale tale{
      proof->worst_departure_deg <= limit ? State::well : State::amiss,
      words(QT_TRANSLATE_NOOP("tell_tales", "Level within %1 deg")).arg(proof->worst_departure_deg, 0, 'f', 3),
      words(QT_TRANSLATE_NOOP("tell_tales",
                              "Worst departure from level, in zone %1. Counted as level up "
                              "to %2 deg."))
          .arg(QString::fromStdString(proof->worst_zone))
          .arg(limit),
      Page::section, prisms_of(bench, proof->worst_zone)};
  return tale;
}

/// The zone that sends the least of its own light level.
std::string poorest_zone(const Proof& proof) {
  const auto share = [](const ZoneProof& zone) { return zone.share > 0 ? zone.share_level / zone.share : 1.0; };
  const auto poorest = std::min_element(proof.zones.begin(), proof.zones.end(),
                                        [&](const auto& a, const auto& b) { return share(a) < share(b); });
  return poorest == proof.zones.end() ? std::string() : poorest->mark;
}

TellTale light_tale(const Workbench& bench) {
  const auto proof = bench.proof();
  if (!proof || bench.sectionProblem()) return no_section(bench, Page::section);
  const double escaped = proof->of(Fate::escaped);
  const double through_back = proof->of(Fate::lost_reflecting);
  const double lost = 1 - proof->of(Fate::level);
  const bool amiss = escaped > 0 || through_back > 0;
  QString text = words(QT_TRANSLATE_NOOP("tell_tales", "%1 % of the light lost")).arg(percent(lost));
  if (escaped > 0)
    text =
        words(QT_TRANSLATE_NOOP("tell_tales", "%1 % lost, %2 % escapes")).arg(percent(lost), percent(escaped));
  const QString why =
      words(QT_TRANSLATE_NOOP("tell_tales",
                              "Of the light that a point in the focus sends to the section: %1 % lost in "
                              "lands, %2 % stopped, %3 % at reflecting faces, %4 % stray, %5 % escaped "
                              "between prisms. It is well when none escapes and every reflecting face "
                              "reflects totally."))
          .arg(percent(proof->of(Fate::lost_land)), percent(proof->of(Fate::stopped)), percent(through_back),
               percent(proof->of(Fate::stray)), percent(escaped));
  return {amiss ? State::amiss : State::well, text, why, Page::section, prisms_of(bench, poorest_zone(*proof))};
}

QString short_part(const Workbench& bench, const std::string& mark) {
  const bool is_prism = bench.plan() && bench.plan()->find(mark);
  if (is_prism) return QString::fromStdString(mark);
  if (const auto made = bench.made(); made && made->metal)
    for (const FrameBody& body : *made->metal)
      if (body.mark == mark) return kind_words(body.kind);
  return QString::fromStdString(mark);
}

TellTale clearance_tale(const Workbench& bench) {
  const auto made = bench.made();
  const Clearance* tightest = made && !bench.madeIsStale() ? made->tightest_of({}) : nullptr;
  if (bench.sectionProblem()) return no_section(bench, Page::lens);
  if (!tightest) {
    const QString text = bench.isMaking() ? words(QT_TRANSLATE_NOOP("tell_tales", "Clearances being measured"))
                                          : words(QT_TRANSLATE_NOOP("tell_tales", "Clearances not measured"));
    return {State::unknown,
            text,
            words(QT_TRANSLATE_NOOP("tell_tales", "Gaps are measured between finished solids.")),
            Page::lens,
            {}};
  }
  const QString text = words(QT_TRANSLATE_NOOP("tell_tales", "Tightest %1, %2 to %3"))
                           .arg(length_text(tightest->gap_mm, bench.inches()),
                                short_part(bench, tightest->first), short_part(bench, tightest->second));
  const QString why =
      words(QT_TRANSLATE_NOOP("tell_tales", "%1 to %2: %3. Heat growth needs %4."))
          .arg(QString::fromStdString(tightest->first), QString::fromStdString(tightest->second),
               palette::verdict_words(tightest->verdict), length_text(tightest->needed_mm, bench.inches()));
  QStringList culprits;
  for (const std::string& mark : {tightest->first, tightest->second})
    if (bench.plan() && bench.plan()->find(mark)) culprits << QString::fromStdString(mark);
  // Brass to brass is seen on the page Frame alone.
  return {tightest->verdict == Verdict::clear ? State::well : State::amiss, text, why,
          culprits.isEmpty() ? Page::frame : Page::lens, culprits};
}

/// Scrapped prisms first; else the one that is furthest behind.
QStringList waiting_prisms(const Workbench& bench) {
  QStringList scrapped;
  QStringList furthest_behind;
  Stage least = Stage::glazed;
  for (const PlannedPrism& prism : bench.plan()->prisms) {
    const auto found = bench.stages().find(prism.mark);
    const Stage stage = found == bench.stages().end() ? Stage::drawn : found->second;
    if (stage == Stage::scrapped) scrapped << QString::fromStdString(prism.mark);
    if (stage >= least) continue;
    least = stage;
    furthest_behind = {QString::fromStdString(prism.mark)};
  }
  return scrapped.isEmpty() ? furthest_behind : scrapped;
}

TellTale works_tale(const Workbench& bench) {
  if (!bench.plan()) return no_section(bench, Page::works);
  std::vector<std::string> marks;
  for (const PlannedPrism& prism : bench.plan()->prisms) marks.push_back(prism.mark);
  const StageCounts counts = count_stages(bench.stages(), marks);
  const int scrapped = counts.all[static_cast<std::size_t>(Stage::scrapped)];
  QString text = words(QT_TRANSLATE_NOOP("tell_tales", "%1 of %2 glazed"))
                     .arg(counts.all[static_cast<std::size_t>(Stage::glazed)])
                     .arg(counts.total);
  if (scrapped > 0) text += words(QT_TRANSLATE_NOOP("tell_tales", ", %1 scrapped")).arg(scrapped);
  return {scrapped > 0 ? State::amiss : State::well, text,
          words(QT_TRANSLATE_NOOP("tell_tales", "Prisms glazed of all. It is well when none lies scrapped.")),
          Page::works, waiting_prisms(bench)};
}

}  // namespace

std::array<TellTale, 4> tell_tales_of(const Workbench& bench) {
  return {level_tale(bench), light_tale(bench), clearance_tale(bench), works_tale(bench)};
}

}  // namespace prismwright
