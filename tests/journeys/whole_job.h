#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "tests/support/batch_desk.h"

namespace prismwright {

/// The steps that every job has in common; each asks the batch program and checks what it answers.
class WholeJob : public BatchDesk {
 protected:
  /// Light leaves level within `level_deg` and none escapes.
  void expect_proved(const std::string& book, double level_deg) {
    const Answer answer = ask({"prove", book, "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto proof = answer.json();
    EXPECT_EQ(proof.at("share_escaped"), 0);
    EXPECT_LT(proof.at("worst_departure_deg").get<double>(), level_deg);
    EXPECT_GT(proof.at("share_level").get<double>(), 0.9);
  }

  /// Every pair has a verdict, and none clashes.
  nlohmann::json expect_no_clash(const std::string& book) {
    const Answer answer = ask({"clearances", book, "--json"});
    EXPECT_EQ(answer.code, 0) << answer.err;
    const auto clearances = answer.json();
    EXPECT_EQ(clearances.at("counts").at("clash"), 0);
    EXPECT_FALSE(clearances.at("pairs").empty());
    return clearances;
  }

  /// Marks of all prisms, in the order of the plan.
  static std::vector<std::string> marks_of(const std::string& book) {
    std::vector<std::string> marks;
    const auto works = ask({"works", book, "list", "--json"}).json();
    for (const auto& prism : works.at("prisms")) marks.push_back(prism.at("mark"));
    return marks;
  }

  /// The folder holds exactly these files, each a STEP file with its end.
  void expect_step_files(const std::string& folder, std::vector<std::string> names) {
    std::vector<std::string> found;
    for (const auto& entry : std::filesystem::directory_iterator(at(folder))) {
      found.push_back(entry.path().filename().string());
      const std::string text = bytes_of(entry.path());
      EXPECT_TRUE(text.starts_with("ISO-10303-21;")) << found.back();
      EXPECT_NE(text.find("END-ISO-10303-21;"), std::string::npos) << found.back();
    }
    std::sort(found.begin(), found.end());
    std::sort(names.begin(), names.end());
    EXPECT_EQ(found, names);
  }

  static nlohmann::json value_of(const std::string& book, const std::string& key) {
    return row_where(ask({"keys", book, "--json"}).json().at("keys"), "key", key).at("value");
  }

  static int count_of(const std::string& book, const std::string& stage) {
    return ask({"works", book, "list", "--json"}).json().at("counts").at(stage);
  }

  static void record(const std::string& book, std::vector<std::string> words) {
    words.insert(words.begin(), {"works", book, "record"});
    const Answer answer = ask(words);
    EXPECT_EQ(answer.code, 0) << testing::PrintToString(words) << answer.err;
  }
};

}  // namespace prismwright
