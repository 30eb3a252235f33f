#include "app/batch/frame_print.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "app/batch/text_table.h"
#include "core/frame/assembly_order.h"
#include "core/frame/frame_verdict.h"

namespace prismwright {

namespace {

bool enough(const SettingCheck& check) { return check.end_enough && check.sides_enough; }

std::string first_to_last(const std::vector<std::string>& marks) {
  if (marks.size() < 3) return fmt::format("{}", fmt::join(marks, ", "));
  return marks.front() + " ... " + marks.back();
}

std::string numbers_or_blank(double value, int decimals) {
  return value > 0 ? fmt::format("{:.{}f}", value, decimals) : "";
}

void print_parts(const FrameAnswer& answer, std::ostream& out) {
  const PartsTotals totals = totals_of(answer.parts);
  out << fmt::format("{} parts of {} kinds, {:.2f} kg ({:.2f} kg of brass, {:.2f} kg of steel)\n",
                     totals.pieces, answer.parts.size(), (totals.brass_g + totals.steel_g) / 1000,
                     totals.brass_g / 1000, totals.steel_g / 1000);
  TextTable table({{"part"},
                   {"marks"},
                   {"no.", true},
                   {"thick mm", true},
                   {"metal"},
                   {"making"},
                   {"size"},
                   {"each g", true},
                   {"all g", true}});
  for (const PartsLine& line : answer.parts) {
    table.add({name_of(line.kind), first_to_last(line.marks), std::to_string(line.quantity),
               line.thickness_mm > 0 ? fmt::format("{:g}", line.thickness_mm) : "", name_of(line.metal),
               name_of(line.making), line.size, numbers_or_blank(line.mass_g.value_or(0), 2),
               numbers_or_blank(line.quantity * line.mass_g.value_or(0), 1)});
  }
  if (!table.empty()) table.print(out);
}

void print_sheets(const Nest& nest, std::ostream& out) {
  if (!nest.sheets.empty()) {
    out << fmt::format("\nSheets: {}, {:.0f} % used\n", nest.sheets.size(), 100 * nest.used_share());
    TextTable table(
        {{"sheet", true}, {"metal"}, {"thick mm", true}, {"size mm", true}, {"pieces", true}, {"used", true}});
    for (std::size_t i = 0; i < nest.sheets.size(); ++i) {
      const NestSheet& sheet = nest.sheets[i];
      table.add({std::to_string(i + 1), name_of(sheet.metal), fmt::format("{:g}", sheet.thickness_mm),
                 fmt::format("{:g} x {:g}", sheet.width_mm, sheet.height_mm),
                 std::to_string(sheet.parts.size()), fmt::format("{:.0f} %", 100 * sheet.used_share)});
    }
    table.print(out);
  }
  for (const std::string& sentence : nest.too_large) out << sentence << '\n';
}

void print_settings(const std::vector<SettingCheck>& settings, std::ostream& out) {
  if (settings.empty()) return;
  const auto short_of =
      std::ranges::count_if(settings, [](const SettingCheck& check) { return !enough(check); });
  out << fmt::format("\nSetting: {} prism ends checked, {} with too little room\n", settings.size(), short_of);
  TextTable table({{"prism"},
                   {"rib"},
                   {"end drawn mm", true},
                   {"needed mm", true},
                   {"sides drawn mm", true},
                   {"needed mm", true}});
  for (const SettingCheck& check : settings) {
    if (enough(check)) continue;
    table.add({check.mark, check.rib, fmt::format("{:.3f}", check.end.drawn_mm),
               fmt::format("{:.3f}", check.end.needed_mm()), fmt::format("{:.3f}", check.sides.drawn_mm),
               fmt::format("{:.3f}", check.sides.needed_mm())});
  }
  if (!table.empty()) table.print(out);
}

void print_fit(const std::vector<PanelFit>& fits, std::ostream& out) {
  if (fits.empty()) return;
  out << "\nOrder of fit-up\n";
  for (const auto& alike : alike_panels(fits)) {
    std::vector<int> numbers;
    for (const PanelFit* fit : alike) numbers.push_back(fit->panel);
    const PanelFit& first = *alike.front();
    out << fmt::format("{} {}{}\n", alike.size() == 1 ? "Panel" : "Panels", fmt::join(numbers, ", "),
                       alike.size() == 1 ? "" : fmt::format(" (marks of panel {})", first.panel));
    for (std::size_t i = 0; i < first.steps.size(); ++i)
      out << fmt::format("{:>4}  {}\n", i + 1, first.steps[i].words);
    for (const FitBlocked& blocked : first.cannot) out << fmt::format("      {}\n", blocked.words);
  }
}

void print_assembly(const FramePlan& plan, std::ostream& out) {
  const std::vector<std::string> steps = order_of_assembly(plan);
  if (!steps.empty()) out << "The whole frame\n";
  for (std::size_t i = 0; i < steps.size(); ++i) out << fmt::format("{:>4}  {}\n", i + 1, steps[i]);
}

void print_warnings(const FramePlan& plan, std::ostream& out) {
  if (!plan.warnings.empty() || !plan.notes.empty()) out << '\n';
  for (const FrameWarning& warning : plan.warnings) out << warning.sentence << '\n';
  for (const std::string& note : plan.notes) out << note << '\n';
}

}  // namespace

bool FrameAnswer::well() const {
  return !warning_of_not_well(frame.plan) && nest.too_large.empty() && std::ranges::all_of(settings, enough) &&
         std::ranges::all_of(fit_up, [](const PanelFit& fit) { return fit.cannot.empty(); });
}

std::vector<std::vector<const PanelFit*>> alike_panels(const std::vector<PanelFit>& fits) {
  // The panel's own number is taken out of its words, so that congruent panels say the same.
  const auto said = [](const PanelFit& fit) {
    const std::string own = fmt::format("P{:02}-", fit.panel);
    std::string all;
    for (const FitStep& step : fit.steps) all += step.words + '\n';
    for (const FitBlocked& blocked : fit.cannot) all += blocked.words + '\n';
    for (std::size_t at = all.find(own); at != std::string::npos; at = all.find(own, at))
      all.replace(at, own.size(), "-");
    return all;
  };
  std::vector<std::pair<std::string, std::vector<const PanelFit*>>> groups;
  for (const PanelFit& fit : fits) {
    const std::string words = said(fit);
    const auto known = std::ranges::find_if(groups, [&](const auto& group) { return group.first == words; });
    if (known == groups.end()) {
      groups.push_back({words, {&fit}});
    } else {
      known->second.push_back(&fit);
    }
  }
  std::vector<std::vector<const PanelFit*>> panels;
  for (auto& group : groups) panels.push_back(std::move(group.second));
  return panels;
}

void print_frame(const FrameAnswer& answer, std::ostream& out) {
  print_parts(answer, out);
  print_sheets(answer.nest, out);
  print_settings(answer.settings, out);
  print_fit(answer.fit_up, out);
  print_assembly(answer.frame.plan, out);
  print_warnings(answer.frame.plan, out);
}

}  // namespace prismwright
