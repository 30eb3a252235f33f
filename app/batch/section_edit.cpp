#include <fmt/format.h>

#include "app/batch/section_act.h"
#include "app/batch/section_change.h"

namespace prismwright {

namespace {

constexpr const char* kAdvice =
    "--to-deg, --margin-mm, --side-mm, --thickness-mm, --lock, --free, --remove or --split with the mark of a "
    "zone, or --add with a band";

/// A size typed on the command line.
struct TypedSize {
  SizeBy by;
  const char* option;
  const char* unit;
  const char* help;
  std::string text;
};

class SectionEditAct : public SectionAct {
 public:
  std::string_view name() const override { return "edit"; }
  std::string_view help() const override {
    return "one zone: another size, lock, free, remove, split; or add one";
  }

  void configure(CLI::App& command) override {
    command.add_option("MARK", mark_, "the zone: C, R2, U05, L01");
    for (TypedSize& size : sizes_) command.add_option(size.option, size.text, size.help);
    command.add_flag("--lock", lock_, "keep it where it stands while its neighbours are divided anew");
    command.add_flag("--free", free_, "let it be divided again");
    command.add_flag("--remove", remove_, "take it out");
    command.add_flag("--split", split_, "make two of it");
    command.add_option("--add", band_,
                       "a further zone at the outer end of this band: refracting, upper or lower");
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    if (const Done asked = check_request(); !asked) return refuse(asked.problem(), voice.err);
    const auto edit = band_.empty() ? zone_edit() : band_edit();
    if (!edit) return refuse(edit.problem(), voice.err);
    return change_section(path, json_, voice, *edit);
  }

 private:
  using Edit = std::function<Outcome<SectionEdit>(const LensValues&, const Section&)>;

  [[nodiscard]] int things_asked() const {
    int asked = int{lock_} + int{free_} + int{remove_} + int{split_} + int{!band_.empty()};
    for (const TypedSize& size : sizes_) asked += int{!size.text.empty()};
    return asked;
  }

  [[nodiscard]] Done check_request() const {
    const int asked = things_asked();
    if (asked != 1) {
      return request_problem(
          "edit.one", mark_,
          fmt::format("{} things are asked of the section and one can be done at a time. Give {}", asked,
                      kAdvice));
    }
    if (band_.empty() == mark_.empty()) {
      return request_problem("edit.mark", mark_,
                             band_.empty()
                                 ? fmt::format("no zone is named. Give {}", kAdvice)
                                 : fmt::format("--add goes to the end of a band and takes no zone, but {} "
                                               "is named. Leave one out",
                                               mark_));
    }
    return {};
  }

  [[nodiscard]] Outcome<Edit> band_edit() const {
    const auto band = read_band(band_);
    if (!band) return band.problem();
    return Edit([band = *band](const LensValues& values, const Section& section) {
      return add_zone(values, section, band);
    });
  }

  [[nodiscard]] Outcome<Edit> zone_edit() const {
    for (const TypedSize& size : sizes_)
      if (!size.text.empty()) return size_edit(size);
    return Edit([this](const LensValues& values, const Section& section) {
      if (remove_) return remove_zone(values, section, mark_);
      if (split_) return split_zone(values, section, mark_);
      return lock_zone(values, section, mark_, lock_);
    });
  }

  [[nodiscard]] Outcome<Edit> size_edit(const TypedSize& size) const {
    const auto number = read_number(size.text, size.unit);
    if (!number) {
      return request_problem(
          "value.unreadable", size.text,
          fmt::format("{} '{}' cannot be read. Give a number in {}", size.option, size.text, size.unit));
    }
    return Edit([this, by = size.by, number = *number](const LensValues& values, const Section& section) {
      return resize_zone(values, section, mark_, by, number);
    });
  }

  std::string mark_;
  std::string band_;
  std::vector<TypedSize> sizes_ = {
      {SizeBy::to_deg, "--to-deg", "deg", "the elevation where it ends (depression, for a lower prism)", {}},
      {SizeBy::margin_mm, "--margin-mm", "mm", "its margin at the edge depth (refracting)", {}},
      {SizeBy::side_mm, "--side-mm", "mm", "length of its entry side (prisms)", {}},
      {SizeBy::thickness_mm, "--thickness-mm", "mm", "its section thickness (prisms)", {}}};
  bool lock_ = false;
  bool free_ = false;
  bool remove_ = false;
  bool split_ = false;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_edit() { return std::make_unique<SectionEditAct>(); }

}  // namespace prismwright
