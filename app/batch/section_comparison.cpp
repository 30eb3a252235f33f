#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/comparison_tables.h"
#include "app/batch/section_act.h"
#include "geometry/glass_by_zone.h"

namespace prismwright {

namespace {

constexpr int kElevations = 20000;

/// The values of a variant, or of the section as it stands.
Outcome<LensValues> values_named(const Lensbook& book, const std::string& name, Voice& voice) {
  if (name == kPresentName) return book.values();
  const auto variant = book.variant(name);
  if (!variant) return variant.problem();
  auto taken = with_variant(book.values(), *variant);
  if (!taken) return taken.problem();
  for (const std::string& note : taken->notes) voice.err << note << '\n';
  return taken->values;
}

Outcome<ComparedSection> side_named(const Lensbook& book, const std::string& name, Voice& voice) {
  const auto values = values_named(book, name, voice);
  if (!values) return values.problem();
  auto side = compared_section(name, *values, kElevations);
  if (side) side->glass = glass_by_zone(plan_lens(*values, side->section));
  return side;
}

class SectionComparisonAct : public SectionAct {
 public:
  std::string_view name() const override { return "compare"; }
  std::string_view help() const override {
    return "two variants side by side: settings, figures, zone by zone";
  }
  void configure(CLI::App& command) override {
    command.add_option("A", first_, "a variant; unless said, the one kept last");
    command.add_option("B", second_, "another; unless said, the section as it stands (present)");
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto book = open_to_read(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    if (first_.empty()) {
      if (book->variants().empty()) return refuse(none_kept(), voice.err);
      first_ = book->variants().back().name;
    }
    const auto first = side_named(*book, first_, voice);
    if (!first) return refuse(first.problem(), voice.err);
    const auto second = side_named(*book, second_, voice);
    if (!second) return refuse(second.problem(), voice.err);
    const SectionComparison comparison = compare_sections(*first, *second);
    if (!json_) {
      print_comparison(comparison, voice.out);
      return ExitCode::done;
    }
    return print_json(comparison_json(comparison, first->values, second->values), ExitCode::done, voice.out,
                      voice.err);
  }

 private:
  static Problem none_kept() {
    return request_problem(
        "variant.none", "",
        "no variant is kept in this book that the section could be compared with. Keep one first: "
        "section FILE keep NAME");
  }

  std::string first_;
  std::string second_ = std::string(kPresentName);
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_comparison() { return std::make_unique<SectionComparisonAct>(); }

}  // namespace prismwright
