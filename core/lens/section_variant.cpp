#include "core/lens/section_variant.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace prismwright {

namespace {

bool is_of_section(std::string_view key) { return key.starts_with("section.") || key.starts_with("material."); }

/// Bytes that follow the first of a letter in UTF-8; nothing when no letter begins so.
std::optional<int> followers(unsigned char first) {
  if (first < 0x80) return 0;
  if (first >= 0xC2 && first < 0xE0) return 1;
  if (first >= 0xE0 && first < 0xF0) return 2;
  if (first >= 0xF0 && first < 0xF5) return 3;
  return std::nullopt;
}

/// How many letters the text has; nothing when it is not UTF-8 or holds control characters.
std::optional<int> letters_of(std::string_view text) {
  int letters = 0;
  for (std::size_t at = 0; at < text.size(); ++letters) {
    const auto first = static_cast<unsigned char>(text[at]);
    const std::optional<int> more = followers(first);
    if (first < 0x20 || first == 0x7F || !more) return std::nullopt;
    ++at;
    for (int i = 0; i < *more; ++i, ++at) {
      if (at == text.size() || (static_cast<unsigned char>(text[at]) & 0xC0) != 0x80) return std::nullopt;
    }
  }
  return letters;
}

std::string_view bare(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  return first == std::string_view::npos ? std::string_view()
                                         : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

Problem unfit_name(std::string_view typed, std::string text) {
  return request_problem("variant.name", std::string(typed), std::move(text));
}

}  // namespace

std::vector<Assignment> section_texts(const LensValues& values) {
  std::vector<Assignment> texts;
  for (const Quantity& quantity : quantities()) {
    if (is_of_section(quantity.key)) texts.emplace_back(quantity.key, value_text(values, quantity.key));
  }
  return texts;
}

Outcome<std::string> variant_name(std::string_view typed) {
  const std::string name(bare(typed));
  if (name.empty()) return unfit_name(typed, "a variant needs a name. Give it one, for instance steep joints");
  const std::optional<int> letters = letters_of(name);
  if (!letters) {
    return unfit_name(typed,
                      "the name of the variant holds what is no letter. Give it in one line of plain text");
  }
  if (*letters > kLongestVariantName) {
    return unfit_name(typed, fmt::format("the name '{}' has {} letters and may have {}. Give a shorter one",
                                         name, *letters, kLongestVariantName));
  }
  if (name == kPresentName) {
    return unfit_name(
        typed, fmt::format("'{}' is what the section as it stands is called. Give another name", kPresentName));
  }
  return name;
}

Outcome<TakenVariant> with_variant(const LensValues& values, const SectionVariant& variant) {
  TakenVariant taken;
  // The present texts go first: a material's name would else bring an index along that the variant never held.
  std::vector<Assignment> texts = section_texts(values);
  for (const auto& [key, text] : variant.texts) {
    const auto own =
        std::find_if(texts.begin(), texts.end(), [&](const auto& each) { return each.first == key; });
    if (own == texts.end()) {
      taken.notes.push_back(fmt::format(
          "{} = '{}' of variant '{}' is not known to this program and was left out.", key, text, variant.name));
    } else {
      own->second = text;
    }
  }
  Outcome<LensValues> next = with_assignments(values, texts);
  if (!next) {
    Problem why = next.problem();
    why.text = fmt::format("variant '{}' cannot be taken over: {}", variant.name, why.text);
    return why;
  }
  taken.values = std::move(next).value();
  return taken;
}

}  // namespace prismwright
