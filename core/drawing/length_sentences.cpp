#include "core/drawing/length_sentences.h"

#include <cctype>
#include <charconv>

namespace prismwright {

namespace {

bool is_of_number(char letter) { return (letter >= '0' && letter <= '9') || letter == '.'; }

bool goes_on(const std::string& sentence, std::size_t at) {
  return at < sentence.size() && (std::isalnum(static_cast<unsigned char>(sentence[at])) != 0);
}

}  // namespace

std::string sentence_in(const LengthWords& lengths, const std::string& sentence) {
  if (!lengths.inches) return sentence;
  const std::string unit = " mm";
  std::string said;
  std::size_t done = 0;
  for (std::size_t at = sentence.find(unit); at != std::string::npos; at = sentence.find(unit, at + 1)) {
    std::size_t from = at;
    while (from > done && is_of_number(sentence[from - 1])) --from;
    double mm = 0;
    const auto read = std::from_chars(sentence.data() + from, sentence.data() + at, mm);
    if (from == at || read.ptr != sentence.data() + at || goes_on(sentence, at + unit.size())) continue;
    said += sentence.substr(done, from - done) + lengths.plain(mm) + " in";
    done = at + unit.size();
  }
  return said + sentence.substr(done);
}

}  // namespace prismwright
