#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <stdlib.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/book/lensbook.h"
#include "core/lens/quantities.h"

namespace prismwright {

/// Memory that looks like a disk, where the system has it: a killed process loses neither, and waiting for a
/// real disk some thousand times would take minutes.
inline std::filesystem::path quick_place() {
  const std::filesystem::path memory = "/dev/shm";
  return ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
}

/// A folder of its own for each test, gone afterwards.
class BookTest : public testing::Test {
 protected:
  explicit BookTest(const std::filesystem::path& place = quick_place()) {
    std::string name = (place / "book-test-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) ADD_FAILURE() << "no folder for the test";
    folder_ = name;
  }
  ~BookTest() override {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }

  [[nodiscard]] std::string file(const std::string& name) const { return (folder_ / name).string(); }
  /// Names of everything in the folder, sorted.
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> found;
    for (const auto& each : std::filesystem::directory_iterator(folder_))
      found.push_back(each.path().filename());
    std::sort(found.begin(), found.end());
    return found;
  }

  std::filesystem::path folder_;
};

inline std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

inline void write_bytes(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// The values with another thickness of the rings' thin edge.
inline LensValues with_edge(double edge_mm, LensValues values = {}) {
  values.section.edge_mm = edge_mm;
  return values;
}

/// The value of an outcome that must have gone well; throws otherwise, which fails the test with the sentence.
template <class T>
T well(Outcome<T> outcome) {
  if (!outcome) throw std::runtime_error(outcome.problem().text);
  return std::move(outcome).value();
}
inline void well(const Done& done) {
  if (!done) throw std::runtime_error(done.problem().text);
}

/// Every quantity the same, exactly. (Quantities print so that they read back exactly.)
MATCHER_P(HasValuesOf, other, "holds the same values") {
  const std::vector<std::string> changed = changed_keys(arg, other);
  for (const std::string& key : changed)
    *result_listener << key << " is " << value_text(arg, key) << ", not " << value_text(other, key) << "; ";
  return changed.empty();
}

inline LedgerEntry line(const std::string& mark, Stage from, Stage to, const std::string& note = "") {
  LedgerEntry entry;
  entry.mark = mark;
  entry.from = from;
  entry.to = to;
  entry.by = "E. Marsh";
  entry.note = note;
  return entry;
}

}  // namespace prismwright
