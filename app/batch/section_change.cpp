#include "app/batch/section_change.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/batch/section_zones.h"

namespace prismwright {

namespace {

/// What the section says now and did not say before.
std::vector<std::string> new_notes(const std::vector<std::string>& before,
                                   const std::vector<std::string>& after) {
  std::vector<std::string> fresh;
  for (const std::string& note : after) {
    if (std::find(before.begin(), before.end(), note) == before.end()) fresh.push_back(note);
  }
  return fresh;
}

std::string sentence(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') text.front() += 'A' - 'a';
  return text.ends_with('.') ? text : text + '.';
}

Json settings_json(const LensValues& before, const LensValues& after) {
  Json settings = Json::array();
  for (const std::string& key : changed_keys(before, after)) {
    const Quantity& quantity = *find_quantity(key);
    Json json;
    json["key"] = key;
    json["before"] = value_json(before, quantity);
    json["after"] = value_json(after, quantity);
    settings.push_back(std::move(json));
  }
  return settings;
}

Json change_json(const LensValues& before, const LensValues& after, const std::string& what,
                 const Section& section, const std::vector<std::string>& notes) {
  Json json;
  json["what"] = what;
  json["settings"] = settings_json(before, after);
  json["zones"] = zones_json(section);
  json["notes"] = notes;
  return json;
}

std::vector<std::string> notes_of(const LensValues& values) {
  const auto section = solve_section(values.section_input());
  return section ? section->notes : std::vector<std::string>();
}

}  // namespace

ExitCode write_section(Lensbook& book, const LensValues& after, const std::string& what,
                       const std::vector<std::string>& notes, bool json, Voice& voice) {
  const LensValues before = book.values();
  const auto section = solve_section(after.section_input());
  if (!section) return refuse(section.problem(), voice.err);
  if (const Done written = book.edit(after, what); !written) return refuse(written.problem(), voice.err);
  std::vector<std::string> told = notes;
  for (std::string& note : new_notes(notes_of(before), section->notes)) told.push_back(std::move(note));
  const ExitCode code = told.empty() ? ExitCode::done : ExitCode::not_well;
  if (json) {
    return print_json(change_json(before, after, what, *section, told), code, voice.out, voice.err);
  }
  if (changed_keys(before, after).empty()) {
    voice.out << "Nothing to change: the section is so already.\n";
  } else {
    voice.out << sentence(what) << '\n';
    print_zones(*section, voice.out);
  }
  for (const std::string& note : told) voice.err << sentence(note) << '\n';
  return code;
}

ExitCode change_section(const std::string& book_path, bool json, Voice& voice,
                        const std::function<Outcome<SectionEdit>(const LensValues&, const Section&)>& make) {
  auto book = open_to_change(book_path, voice);
  if (!book) return refuse(book.problem(), voice.err);
  const auto section = solve_section(book->values().section_input());
  if (!section) return refuse(section.problem(), voice.err);
  const Outcome<SectionEdit> edit = make(book->values(), *section);
  if (!edit) return refuse(edit.problem(), voice.err);
  const Outcome<LensValues> after = with_assignments(book->values(), edit->assignments);
  if (!after) return refuse(after.problem(), voice.err);
  return write_section(*book, *after, edit->what, {}, json, voice);
}

Outcome<Band> read_band(const std::string& text) {
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    if (name_of(band) == text) return band;
  }
  return request_problem("band.unknown", text,
                         fmt::format("there is no band '{}'. Name refracting, upper or lower", text));
}

}  // namespace prismwright
