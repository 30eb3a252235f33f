#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/verbs.h"
#include "core/lens/orders.h"
#include "core/lens/plan.h"
#include "core/lens/quantities.h"

namespace prismwright {

namespace {

/// One option of `new` and the key whose value it gives.
struct Choice {
  const char* option;
  const char* key;
  const char* help;
};

constexpr Choice kChoices[] = {
    {"--order", "brief.order", "order of the lens: 1 to 6, 3.5, hyper-radial"},
    {"--work", "brief.work", "bullseye or belt (bullseye unless said)"},
    {"--panels", "brief.panels", "how many panels of equal width (8 unless said)"},
    {"--material", "material.name", "acrylic, crown or n-bk7 (acrylic unless said)"},
    {"--faces", "section.faces", "true: curves that send every ray level; arc: historic arcs"},
    {"--focal-mm", "brief.focal_mm", "focal distance where it is not the order's own"},
    {"--title", "brief.title", "what the lens is called"},
    {"--client", "brief.client", "who ordered it"},
    {"--character", "brief.character", "as in a list of lights, for instance \"Fl(2) 10s\""},
};

class NewVerb : public Verb {
 public:
  std::string_view name() const override { return "new"; }
  std::string_view help() const override { return "make a lensbook for a lens of an order"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    for (const Choice& choice : kChoices) {
      command.add_option_function<std::string>(
          choice.option,
          [this, &choice](const std::string& text) { assignments_.emplace_back(choice.key, text); },
          choice.help);
    }
    command.get_option("--order")->required();
  }

  ExitCode run(Voice& voice) override {
    const auto values = with_assignments(start(), assignments_);
    if (!values) return refuse(values.problem(), voice.err);
    // A lens that cannot be made is refused before there is a file.
    const auto plan = plan_lens(*values);
    if (!plan) return refuse(plan.problem(), voice.err);
    const auto book = Lensbook::create(path_, *values);
    if (!book) return refuse(book.problem(), voice.err);
    print(*plan, voice.out);
    return ExitCode::done;
  }

 private:
  [[nodiscard]] std::string given(std::string_view key) const {
    for (const auto& [given_key, text] : assignments_) {
      if (given_key == key) return text;
    }
    return {};
  }

  /// What an order starts from; a word that is not understood is left for with_assignments to refuse.
  [[nodiscard]] LensValues start() const {
    const Order* order = find_order(given("brief.order"));
    const Work work = given("brief.work") == name_of(Work::belt) ? Work::belt : Work::bullseye;
    return starting_values(order ? order->key : "4", work, 8);
  }

  void print(const LensPlan& plan, std::ostream& out) const {
    const LensValues& values = plan.values;
    const Order* order = find_order(values.brief.order);
    out << fmt::format("{}: {}, focal distance {} mm, {} in {} panels, {} (index {:.4f}).\n", path_,
                       order ? order->words : values.brief.order, number_text(values.brief.focal_mm),
                       values.brief.work == Work::belt ? "belt" : "bull's-eye", values.panels.size(),
                       values.material.name, values.material.effective_index());
    out << fmt::format("{} zones serve {:.2f} to {:.2f} deg with {} prisms.\n", plan.section.zones.size(),
                       plan.section.lowest_deg, plan.section.highest_deg, plan.prisms.size());
    for (const std::string& note : plan.section.notes) out << note << '\n';
  }

  std::string path_;
  std::vector<Assignment> assignments_;
};

}  // namespace

std::unique_ptr<Verb> new_verb() { return std::make_unique<NewVerb>(); }

}  // namespace prismwright
