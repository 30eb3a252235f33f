#include <gmock/gmock.h>

#include <regex>

#include "tests/journeys/whole_job.h"
#include "tests/support/other_program.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

/// A maker packs a lens, changes one thing, and packs again.
class Despatch : public WholeJob {
 protected:
  [[nodiscard]] std::string words_of_pdf(const std::string& path) const {
    return answer_of("pdftotext -layout '" + at(path) + "' -");
  }
  /// How often a mark stands as a word of its own.
  static long count_of_word(const std::string& text, const std::string& mark) {
    const std::regex whole("(^|[^A-Za-z0-9-])" + mark + "(?![A-Za-z0-9-])");
    return std::distance(std::sregex_iterator(text.begin(), text.end(), whole), std::sregex_iterator());
  }
  [[nodiscard]] std::set<std::string> files_below(const std::string& folder) const {
    std::set<std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(at(folder)))
      if (entry.is_regular_file()) files.insert(entry.path().lexically_relative(at(folder)).generic_string());
    return files;
  }
};

TEST_F(Despatch, PacksALensWholeAndAfterAChangeOnlyWhatChanged) {
  const std::string book =
      make_small_belt({"brief.title=Low Head", "section.refracting_to_deg=10", "section.upper_to_deg=18",
                       "section.lower_to_deg=10", "frame.least_brass_mm=1"});
  record(book, {"P01-C", "mastered", "--by", "A"});
  const Answer first = ask({"pack", book, "--out", at("packs"), "--date", "2026-03-31", "--json"});
  ASSERT_EQ(first.code, 0) << first.err << first.out;
  const std::string folder = "packs/lens-2026-03-31";
  const auto files = files_below(folder);
  for (const char* name : {"lens.step",
                           "panels/P01.step",
                           "frame/frame.step",
                           "drawings/general-arrangement.pdf",
                           "drawings/section.pdf",
                           "drawings/prism-C.pdf",
                           "drawings/panel-chart.pdf",
                           "drawings/assembly.pdf",
                           "drawings/frame-sheets.svg",
                           "lists/make-list.csv",
                           "lists/clearances.csv",
                           "light/light-report.pdf",
                           "light/beam.csv",
                           "record/ledger.csv",
                           "owners-dossier.pdf",
                           "estimate.pdf",
                           "pictures/three-quarter.png",
                           "masters/C/C.3mf",
                           "masters/C/C-measures.pdf",
                           "index.html",
                           "manifest.json",
                           "changes.txt"})
    EXPECT_TRUE(files.contains(name)) << name;
  const std::string told = answer_of("cd '" + at(folder) + "' && sha256sum -c SHA256SUMS | grep -c ': OK$'");
  EXPECT_EQ(std::stoul(told), files.size() - 1);

  // Every prism's mark stands once in each list, and the section's numbers to the printed digit.
  const std::string dossier = words_of_pdf(folder + "/owners-dossier.pdf");
  const std::string chart = words_of_pdf(folder + "/drawings/panel-chart.pdf");
  const std::string prisms = bytes_of(at(folder + "/lists/prisms.csv"));
  for (const std::string& mark : marks_of(book)) {
    EXPECT_EQ(count_of_word(chart, mark), 1) << mark << " in the chart";
    EXPECT_EQ(count_of_word(prisms, mark), 1) << mark << " in the list";
    EXPECT_GE(count_of_word(dossier, mark), 1) << mark << " in the dossier";
    EXPECT_TRUE(files.contains("prisms/" + mark + ".step"));
  }
  const std::string section = words_of_pdf(folder + "/drawings/section.pdf");
  for (const auto& zone : ask({"prove", book, "--json"}).json().at("zones")) {
    EXPECT_THAT(section, HasSubstr(zone.at("mark").get<std::string>()));
    char degrees[32];
    std::snprintf(degrees, sizeof degrees, "%.3f", zone.at("to_deg").get<double>());
    EXPECT_THAT(section, HasSubstr(degrees));
  }

  ASSERT_EQ(ask({"set", book, "works.hour_cost=50"}).code, 0);
  const Answer second = ask({"pack", book, "--out", at("packs"), "--date", "2026-04-02", "--json"});
  ASSERT_EQ(second.code, 0) << second.err;
  EXPECT_EQ(second.json().at("revision"), "B");
  EXPECT_EQ(second.json().at("made_anew"), 1) << "the estimate alone";
  EXPECT_EQ(second.json().at("changes")[0], "works.hour_cost 45 -> 50");
  EXPECT_EQ(files_below("packs/lens-2026-04-02"), files);
  EXPECT_EQ(bytes_of(at("packs/lens-2026-04-02/drawings/section.pdf")),
            bytes_of(at(folder + "/drawings/section.pdf")));
  EXPECT_THAT(words_of_pdf("packs/lens-2026-04-02/estimate.pdf"), HasSubstr("2026-04-02"));
}

}  // namespace
}  // namespace prismwright
