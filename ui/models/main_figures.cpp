#include "ui/models/main_figures.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/lens/lens_size.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString words(const char* text) { return QCoreApplication::translate("figures", text); }

/// Masses and the longest prism of the finished solids.
struct MadeFigures {
  QString glass;
  QString brass;
  QString longest;
};

MadeFigures made_figures(const Workbench& bench) {
  const auto made = bench.made();
  if (!made || bench.madeIsStale()) {
    const QString wait = bench.isMaking() ? words(QT_TRANSLATE_NOOP("figures", "being made"))
                                          : words(QT_TRANSLATE_NOOP("figures", "not made"));
    return {wait, wait, wait};
  }
  double glass_g = 0;
  double longest_mm = 0;
  for (const PrismBody& body : made->bodies->prisms) {
    glass_g += body.mass_g;
    longest_mm = std::max(longest_mm, body.greatest_length_mm);
  }
  double brass_g = 0;
  for (const FrameBody& part : *made->metal) brass_g += part.mass_g;
  return {mass_text(glass_g), mass_text(brass_g), length_text(longest_mm, bench.inches(), 0)};
}

}  // namespace

std::vector<MainFigure> main_figures_of(const Workbench& bench) {
  const auto plan = bench.plan();
  const auto proof = bench.proof();
  const QString none = words(QT_TRANSLATE_NOOP("figures", "none"));
  const LensSize size = plan ? size_of(*plan) : LensSize{};
  const MadeFigures made = made_figures(bench);
  const auto length = [&](double mm) { return plan ? length_text(mm, bench.inches(), 0) : none; };
  const auto count = [&](std::size_t number) { return plan ? QString::number(number) : none; };
  return {{"prisms", words(QT_TRANSLATE_NOOP("figures", "Prisms")), count(plan ? plan->prisms.size() : 0)},
          {"zones", words(QT_TRANSLATE_NOOP("figures", "Zones")), count(plan ? plan->section.zones.size() : 0)},
          {"height", words(QT_TRANSLATE_NOOP("figures", "Height of the glass")), length(size.height_mm)},
          {"diameter", words(QT_TRANSLATE_NOOP("figures", "Inside diameter")), length(size.inside_diameter_mm)},
          {"index", words(QT_TRANSLATE_NOOP("figures", "Index at 587.6 nm")),
           plan ? QString::number(plan->section.input.index, 'f', 4) : none},
          {"glass", words(QT_TRANSLATE_NOOP("figures", "Prisms weigh")), made.glass},
          {"brass", words(QT_TRANSLATE_NOOP("figures", "Frame weighs")), made.brass},
          {"longest", words(QT_TRANSLATE_NOOP("figures", "Longest prism")), made.longest},
          {"taken", words(QT_TRANSLATE_NOOP("figures", "Light taken of all")),
           proof ? QStringLiteral("%1 %").arg(100 * proof->share_of_source, 0, 'f', 1) : none}};
}

}  // namespace prismwright
