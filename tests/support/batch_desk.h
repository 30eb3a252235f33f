#pragma once

#include <gtest/gtest.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "app/batch/run_batch.h"

namespace prismwright {

/// What the batch program answered.
struct Answer {
  int code = 0;
  std::string out;
  std::string err;
  [[nodiscard]] nlohmann::json json() const { return nlohmann::json::parse(out); }
};

/// Asks the batch program in this process.
inline Answer ask(const std::vector<std::string>& words) {
  std::ostringstream out;
  std::ostringstream err;
  const int code = run_batch(words, out, err);
  return {code, out.str(), err.str()};
}

inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// A folder of a test's own, gone when the test ends.
class BatchDesk : public testing::Test {
 protected:
  void SetUp() override {
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::path(testing::TempDir()) /
              ("prismwright-" + std::to_string(getpid()) + "-" + test->test_suite_name() + "-" + test->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string at(const std::string& name) const { return (folder_ / name).string(); }

  /// A small belt lens whose solids are soon made; `settings` follow KEY=VALUE.
  std::string make_small_belt(const std::vector<std::string>& settings = {}) {
    const std::string book = make_book({"--order", "6", "--work", "belt", "--panels", "3"});
    std::vector<std::string> words = {"set", book, "section.refracting_to_deg=15", "section.upper_to_deg=30",
                                      "section.lower_to_deg=15"};
    words.insert(words.end(), settings.begin(), settings.end());
    EXPECT_EQ(ask(words).code, 0);
    return book;
  }

  [[nodiscard]] std::set<std::string> files_in(const std::string& name) const {
    std::set<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder_ / name))
      names.insert(entry.path().filename().string());
    return names;
  }

  /// A book made by `new` with these further words; the test fails when it cannot be made.
  std::string make_book(const std::vector<std::string>& words, const std::string& name = "lens.lensbook") {
    std::vector<std::string> all = {"new", at(name)};
    all.insert(all.end(), words.begin(), words.end());
    const Answer answer = ask(all);
    EXPECT_EQ(answer.code, 0) << answer.err;
    return at(name);
  }

  std::filesystem::path folder_;
};

/// The row of a list of objects whose member `name` is `value`; null when there is none.
inline nlohmann::json row_where(const nlohmann::json& rows, const std::string& name, const std::string& value) {
  for (const auto& row : rows) {
    if (row.at(name) == value) return row;
  }
  return nullptr;
}

/// A book that is asked for its works.
class WorksDeskTest : public BatchDesk {
 protected:
  Answer works(std::vector<std::string> words) const {
    words.insert(words.begin(), {"works", book_});
    return ask(words);
  }

  std::string book_;  ///< to be made by the test's SetUp
};

}  // namespace prismwright
