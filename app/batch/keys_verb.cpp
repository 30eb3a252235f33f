#include "app/batch/books.h"
#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"

namespace prismwright {

namespace {

bool has_range(const Quantity& quantity) {
  return quantity.form != QuantityForm::choice && quantity.form != QuantityForm::text;
}

std::string_view name_of(QuantityForm form) {
  switch (form) {
    case QuantityForm::number:
      return "number";
    case QuantityForm::count:
      return "count";
    case QuantityForm::choice:
      return "choice";
    case QuantityForm::flag_list:
      return "list of panels";
    case QuantityForm::number_list:
      return "list of numbers";
    case QuantityForm::text:
      break;
  }
  return "text";
}

std::string range_words(const Quantity& quantity) {
  std::string words;
  for (const std::string& choice : quantity.choices) words += (words.empty() ? "" : ", ") + choice;
  if (has_range(quantity)) words = number_text(quantity.min) + " to " + number_text(quantity.max);
  if (quantity.may_be_blank) words += words.empty() ? "may be blank" : ", or blank";
  return words;
}

Json key_json(const LensValues& values, const Quantity& quantity) {
  Json json;
  json["key"] = quantity.key;
  json["value"] = value_json(values, quantity);
  json["unit"] = quantity.unit;
  json["min"] = has_range(quantity) ? Json(quantity.min) : Json();
  json["max"] = has_range(quantity) ? Json(quantity.max) : Json();
  json["meaning"] = quantity.meaning;
  json["form"] = name_of(quantity.form);
  json["choices"] = quantity.choices;
  json["may_be_blank"] = quantity.may_be_blank;
  json["label"] = quantity.label;
  return json;
}

class KeysVerb : public Verb {
 public:
  std::string_view name() const override { return "keys"; }
  std::string_view help() const override { return "every key with its value, unit, range and meaning"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    if (!json_) return print_table(book->values(), voice.out);
    Json answer;
    answer["keys"] = Json::array();
    for (const Quantity& quantity : quantities()) {
      answer["keys"].push_back(key_json(book->values(), quantity));
    }
    return print_json(answer, ExitCode::done, voice.out, voice.err);
  }

 private:
  static ExitCode print_table(const LensValues& values, std::ostream& out) {
    TextTable table({{"key"}, {"value"}, {"unit"}, {"range"}, {"meaning"}});
    for (const Quantity& quantity : quantities()) {
      const std::string value = value_text(values, quantity.key);
      table.add(
          {quantity.key, value.empty() ? "-" : value, quantity.unit, range_words(quantity), quantity.meaning});
    }
    table.print(out);
    return ExitCode::done;
  }

  std::string path_;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<Verb> keys_verb() { return std::make_unique<KeysVerb>(); }

}  // namespace prismwright
