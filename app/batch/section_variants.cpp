#include <fmt/format.h>

#include "app/batch/json_print.h"
#include "app/batch/section_act.h"
#include "app/batch/section_change.h"

namespace prismwright {

namespace {

/// What was done to the variants, and which are kept now.
ExitCode tell_variants(const Lensbook& book, const std::string& what, bool json, Voice& voice) {
  if (!json) {
    voice.out << what << '\n';
    return ExitCode::done;
  }
  Json answer;
  answer["what"] = what;
  answer["variants"] = Json::array();
  for (const SectionVariant& variant : book.variants()) answer["variants"].push_back(variant.name);
  return print_json(answer, ExitCode::done, voice.out, voice.err);
}

class SectionKeep : public SectionAct {
 public:
  std::string_view name() const override { return "keep"; }
  std::string_view help() const override { return "keep the section as it stands under a name"; }
  void configure(CLI::App& command) override {
    command.add_option("NAME", name_, "what to call the variant, up to 60 letters")->required();
    command.add_flag("--replace", replace_, "in place of the variant that has the name");
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto book = open_to_change(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto same_name = replace_ ? Lensbook::SameName::replace : Lensbook::SameName::refuse;
    if (const Done kept = book->keep_variant(name_, same_name); !kept) return refuse(kept.problem(), voice.err);
    return tell_variants(*book, fmt::format("Kept as variant '{}'.", variant_name(name_).value()), json_,
                         voice);
  }

 private:
  std::string name_;
  bool replace_ = false;
  bool json_ = false;
};

class SectionTake : public SectionAct {
 public:
  std::string_view name() const override { return "take"; }
  std::string_view help() const override { return "take a variant over in place of the section as it stands"; }
  void configure(CLI::App& command) override {
    command.add_option("NAME", name_, "the variant")->required();
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto book = open_to_change(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto variant = book->variant(name_);
    if (!variant) return refuse(variant.problem(), voice.err);
    const auto taken = with_variant(book->values(), *variant);
    if (!taken) return refuse(taken.problem(), voice.err);
    const std::string what = fmt::format("take over variant '{}'", variant->name);
    return write_section(*book, taken->values, what, taken->notes, json_, voice);
  }

 private:
  std::string name_;
  bool json_ = false;
};

class SectionRename : public SectionAct {
 public:
  std::string_view name() const override { return "rename"; }
  std::string_view help() const override { return "give a variant another name"; }
  void configure(CLI::App& command) override {
    command.add_option("NAME", name_, "the variant")->required();
    command.add_option("NEW", new_name_, "its new name")->required();
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto book = open_to_change(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const Done renamed = book->rename_variant(name_, new_name_);
    if (!renamed) return refuse(renamed.problem(), voice.err);
    const std::string name = variant_name(new_name_).value();
    return tell_variants(*book, fmt::format("Variant '{}' is now '{}'.", name_, name), json_, voice);
  }

 private:
  std::string name_;
  std::string new_name_;
  bool json_ = false;
};

class SectionDrop : public SectionAct {
 public:
  std::string_view name() const override { return "drop"; }
  std::string_view help() const override { return "keep a variant no longer; undo brings it back"; }
  void configure(CLI::App& command) override {
    command.add_option("NAME", name_, "the variant")->required();
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto book = open_to_change(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    if (const Done dropped = book->drop_variant(name_); !dropped) return refuse(dropped.problem(), voice.err);
    return tell_variants(*book, fmt::format("Variant '{}' is kept no longer.", name_), json_, voice);
  }

 private:
  std::string name_;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_keep() { return std::make_unique<SectionKeep>(); }
std::unique_ptr<SectionAct> section_take() { return std::make_unique<SectionTake>(); }
std::unique_ptr<SectionAct> section_rename() { return std::make_unique<SectionRename>(); }
std::unique_ptr<SectionAct> section_drop() { return std::make_unique<SectionDrop>(); }

}  // namespace prismwright
