#include <gmock/gmock.h>
#include <sys/wait.h>

#include <cstdlib>

#include "core/book/lensbook.h"
#include "tests/journeys/whole_job.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
namespace fs = std::filesystem;

/// A request that cannot be met: what is asked, and the words that its sentence must hold (value, limit, key
/// or zone, what to do).
struct Refused {
  const char* situation;
  std::vector<std::string> asked;
  std::vector<std::string> words;
};

class RefusedValues : public BatchDesk, public testing::WithParamInterface<Refused> {};

TEST_P(RefusedValues, GetASentenceAndChangeNothing) {
  const std::string book = make_book({"--order", "4"});
  ASSERT_EQ(ask({"works", book, "record", "P01-C", "mastered"}).code, 0);
  const std::string before = bytes_of(book);
  std::vector<std::string> words = {"set", book, "brief.title=must not be taken either"};
  words.insert(words.end(), GetParam().asked.begin(), GetParam().asked.end());
  const Answer answer = ask(words);
  EXPECT_EQ(answer.code, 2);
  EXPECT_TRUE(answer.out.empty()) << answer.out;
  for (const std::string& word : GetParam().words) EXPECT_THAT(answer.err, HasSubstr(word));
  EXPECT_EQ(bytes_of(book), before);
}

INSTANTIATE_TEST_SUITE_P(
    BadInput, RefusedValues,
    testing::Values(
        Refused{"IndexTooLow", {"material.index=1.2"}, {"material.index", "1.2", "1.3", "2"}},
        Refused{"IndexTooHigh", {"material.index=2.4"}, {"material.index", "2.4", "1.3", "2"}},
        Refused{"IndexNotANumber", {"material.index=nan"}, {"material.index", "nan"}},
        Refused{"FocalDistanceTooShort", {"brief.focal_mm=2"}, {"brief.focal_mm", "2 mm", "50"}},
        Refused{"FocalDistanceTooLong", {"brief.focal_mm=1e9"}, {"brief.focal_mm", "3000"}},
        Refused{"NoPanel", {"brief.panels=0"}, {"brief.panels", "0", "2", "32"}},
        Refused{"TooManyPanels", {"brief.panels=400"}, {"brief.panels", "400", "32"}},
        Refused{"HalfAPanel", {"brief.panels=7.5"}, {"brief.panels", "7.5", "whole"}},
        Refused{"WidthsThatDoNotAddUp", {"panels.widths_deg=100,100,100"}, {"300", "360", "60 deg wider"}},
        Refused{"MarginsThatDoNotRise",
                {"section.refracting_margins_mm=30,50,45"},
                {"section.refracting_margins_mm", "45", "50", "rise"}},
        Refused{"MarginsTooCloseForTheGap",
                {"section.refracting_margins_mm=30,30.1"},
                {"section.refracting_margins_mm", "30.1", "R1"}},
        Refused{"ElevationsWithoutTotalReflection",
                {"material.index=1.3"},
                {"U11", "total", "section.upper_to_deg", "higher index"}},
        Refused{"ElevationsTooSteepForRings",
                {"section.refracting_margins_mm=30,900"},
                {"R1", "900", "60 deg", "reflecting prisms"}},
        Refused{"LandsThatEatTheFace",
                {"section.land_mm=12"},
                {"U01", "section.land_mm", "12 mm", "30 mm", "5 mm", "narrower"}},
        Refused{"PocketDeeperThanTheRib", {"frame.pocket_mm=7"}, {"frame.pocket_mm", "7", "5", "shallower"}},
        Refused{"SheetNarrowerThanAnyPlate", {"frame.sheet_width_mm=10"}, {"frame.sheet_width_mm", "10", "50"}},
        Refused{"CureBeyondTheVesselsPlate",
                {"works.vessel_max_bar=3", "works.cure_bar=5"},
                {"works.cure_bar", "5 bar", "3 bar", "plate"}},
        Refused{"StartThatIsNoDay", {"works.start_date=2027-02-30"}, {"2027-02-30", "YYYY-MM-DD"}},
        Refused{"UnknownKey", {"section.twist_deg=4"}, {"section.twist_deg", "keys"}},
        Refused{"UnknownOrder", {"brief.order=12"}, {"brief.order", "12", "hyper-radial"}},
        Refused{"BlindPanelThatIsNotThere", {"panels.blind=9"}, {"panels.blind", "9", "8"}}),
    [](const auto& request) { return request.param.situation; });

/// The same of the works: nothing is recorded, nothing is written.
class RefusedWorks : public BatchDesk, public testing::WithParamInterface<Refused> {};

TEST_P(RefusedWorks, GetASentenceAndRecordNothing) {
  const std::string book = make_book({"--order", "4"});
  for (const char* stage : {"mastered", "moulded"})
    ASSERT_EQ(ask({"works", book, "record", "P01-C", stage}).code, 0);
  const std::string before = bytes_of(book);
  std::vector<std::string> words = {"works", book};
  words.insert(words.end(), GetParam().asked.begin(), GetParam().asked.end());
  const Answer answer = ask(words);
  EXPECT_EQ(answer.code, 2) << answer.err;
  EXPECT_TRUE(answer.out.empty()) << answer.out;
  for (const std::string& word : GetParam().words) EXPECT_THAT(answer.err, HasSubstr(word));
  EXPECT_EQ(bytes_of(book), before);
}

INSTANTIATE_TEST_SUITE_P(
    BadInput, RefusedWorks,
    testing::Values(
        Refused{"NoStage", {"record", "P01-C", "varnished"}, {"varnished", "annealed"}},
        Refused{"NoPrism", {"record", "P99-C", "cast"}, {"P99-C"}},
        Refused{"NoCasting", {"record", "41", "annealed"}, {"casting no. 41"}},
        Refused{"SkippedStage", {"record", "P01-C", "polished"}, {"P01-C", "cast", "note"}},
        Refused{"NoLoad", {"record", "P01-C", "cast", "--load", "3"}, {"load 3", "--new-load"}},
        Refused{"LoadWithoutCast", {"record", "P02-C", "mastered", "--lot", "A"}, {"cast", "mastered"}},
        Refused{"LoadWithoutResin", {"record", "P01-C", "cast", "--lot", "A"}, {"resin"}},
        Refused{"SpareOfNoPiece", {"record", "S01-Q7", "mastered"}, {"S01-Q7"}},
        Refused{"CorrectionWithoutReason", {"correct", "P01-C", "drawn"}, {"--note"}},
        Refused{"NoLife", {"life", "17"}, {"17"}},
        Refused{"NoDirection", {"shrink", "record", "C", "aslant", "100", "99"}, {"aslant", "length"}},
        Refused{"NoMaster", {"shrink", "record", "Q7", "length", "100", "99"}, {"Q7"}},
        Refused{"ShrunkByHalf", {"shrink", "record", "C", "length", "100", "50"}, {"50"}},
        Refused{"NoReadingsToTake", {"shrink", "fit", "--take"}, {"3 readings"}},
        Refused{"NoFeature", {"inspect", "record", "P01-C", "width.Q-X=3"}, {"width.Q-X"}},
        Refused{"NoMeasurement", {"inspect", "record", "P01-C", "wide"}, {"wide", "FEATURE=VALUE"}},
        Refused{"NoDecision", {"inspect", "decide", "P01-C", "polish", "--note", "x"}, {"polish", "shim"}},
        Refused{"DecisionWithoutReason", {"inspect", "decide", "P01-C", "accept"}, {"reason"}},
        Refused{"ManyPrismsMeasured", {"inspect", "list", "P0*-C"}, {"P0*-C", "name one"}},
        Refused{"NoStepOfThePlan", {"spend", "varnish", "--hours", "2"}, {"varnish", "polish"}},
        Refused{"NothingSpent", {"spend", "mould"}, {"hours", "money"}},
        Refused{"SpareThatIsNone", {"spare", "give", "P01-R1", "P02-C"}, {"P01-R1"}},
        Refused{"NoRowsOfLabels", {"labels", "--out", "x.pdf", "--rows", "0"}, {"0 rows", "1 to 40"}},
        Refused{"PaperForNoLabels", {"labels", "--out", "x.pdf", "--paper", "A0"}, {"A0"}},
        Refused{"TravellerOfNoPrism", {"travellers", "P77-*", "--out", "x.pdf"}, {"P77-*"}}),
    [](const auto& request) { return request.param.situation; });

/// Files and folders that cannot be used.
class BadFiles : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "6", "--work", "belt", "--panels", "6"});
    ASSERT_EQ(ask({"set", book_, "section.edge_mm=3.5"}).code, 0);
  }

  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream(at(name), std::ios::binary) << bytes;
  }

  /// Every verb refuses the file with code 3 and its name, and leaves its bytes alone.
  void expect_refused(const std::string& name) const {
    const std::string path = at(name);
    const std::string before = bytes_of(path);
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{"keys", path},
                                               {"prove", path},
                                               {"set", path, "section.edge_mm=3"},
                                               {"undo", path},
                                               {"frame", path},
                                               {"works", path, "record", "P01-C", "mastered"},
                                               {"bench", path, "record", "P01-C", "1"}}) {
      const Answer answer = ask(words);
      EXPECT_EQ(answer.code, 3) << words.front() << ": " << answer.out << answer.err;
      EXPECT_THAT(answer.err, HasSubstr(name));
    }
    EXPECT_EQ(bytes_of(path), before);
  }

  /// Runs the batch program with no file allowed to grow over `blocks` of 1024 bytes, as on a full disk.
  int run_on_full_disk(int blocks, const std::string& words) const {
    const std::string command = "bash -c 'trap \"\" XFSZ; ulimit -f " + std::to_string(blocks) +
                                "; exec \"" BATCH_PROGRAM "\" " + words + "' >'" + at("out") + "' 2>'" +
                                at("err") + "'";
    const int status = std::system(command.c_str());
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }

  std::vector<std::string> names_in(const std::string& folder) const {
    std::vector<std::string> names;
    if (!fs::exists(at(folder))) return names;
    for (const auto& entry : fs::directory_iterator(at(folder)))
      names.push_back(entry.path().filename().string());
    return names;
  }

  std::string book_;
};

TEST_F(BadFiles, AFileThatIsNotALensbook) {
  write("letter.lensbook", "Dear sir, the lens you asked about\n");
  expect_refused("letter.lensbook");
}

TEST_F(BadFiles, AnEmptyFile) {
  write("empty.lensbook", "");
  expect_refused("empty.lensbook");
}

TEST_F(BadFiles, ATruncatedLensbook) {
  const std::string whole = bytes_of(book_);
  write("short.lensbook", whole.substr(0, whole.size() / 2));
  expect_refused("short.lensbook");
}

TEST_F(BadFiles, AnAlteredLensbook) {
  std::string bytes = bytes_of(book_);
  // Figures in the middle of the book are altered as a failing disk would.
  for (std::size_t i = bytes.size() / 4; i < bytes.size() / 4 * 3; i += 97)
    bytes[i] = static_cast<char>(~bytes[i]);
  write("altered.lensbook", bytes);
  expect_refused("altered.lensbook");
}

TEST_F(BadFiles, AFolderInPlaceOfAFile) {
  fs::create_directory(at("folder.lensbook"));
  const Answer answer = ask({"prove", at("folder.lensbook")});
  EXPECT_EQ(answer.code, 3);
  EXPECT_THAT(answer.err, HasSubstr("folder.lensbook"));
}

TEST_F(BadFiles, ANewBookInAFolderThatIsNotThere) {
  const Answer answer = ask({"new", at("no/such/folder/a.lensbook"), "--order", "4"});
  EXPECT_EQ(answer.code, 3);
  EXPECT_THAT(answer.err, HasSubstr("a.lensbook"));
}

TEST_F(BadFiles, SolidsIntoAFolderThatCannotBeMade) {
  write("a-file", "not a folder");
  const std::string before = bytes_of(book_);
  const Answer answer = ask({"bodies", book_, "--out", at("a-file/solids"), "--only", "P01-C"});
  EXPECT_EQ(answer.code, 3);
  EXPECT_THAT(answer.err, HasSubstr("a-file/solids"));
  EXPECT_EQ(bytes_of(at("a-file")), "not a folder");
  EXPECT_EQ(bytes_of(book_), before);
}

TEST_F(BadFiles, CutFilesIntoAFolderThatCannotBeMade) {
  write("a-file", "not a folder");
  const std::string before = bytes_of(book_);
  const Answer answer = ask({"frame", book_, "--out", at("a-file/cut")});
  EXPECT_EQ(answer.code, 3);
  EXPECT_TRUE(answer.out.empty());
  EXPECT_THAT(answer.err, HasSubstr("a-file/cut"));
  const Answer list = ask({"frame", book_, "--csv", at("a-file/parts.csv")});
  EXPECT_EQ(list.code, 3);
  EXPECT_THAT(list.err, HasSubstr("a-file/parts.csv"));
  EXPECT_EQ(bytes_of(at("a-file")), "not a folder");
  EXPECT_EQ(bytes_of(book_), before);
}

TEST_F(BadFiles, SolidsOntoAFullDiskLeaveTheOldFilesWholeAndNothingHalfWritten) {
  ASSERT_EQ(ask({"bodies", book_, "--out", at("solids"), "--only", "P01-C"}).code, 0);
  const std::string before = bytes_of(at("solids/P01-C.step"));
  ASSERT_GT(before.size(), 4096u);
  const int code = run_on_full_disk(4, "bodies " + book_ + " --out " + at("solids") + " --only \"P01-*\"");
  EXPECT_EQ(code, 3) << bytes_of(at("err"));
  EXPECT_THAT(bytes_of(at("err")), HasSubstr(at("solids")));
  EXPECT_EQ(bytes_of(at("solids/P01-C.step")), before);
  EXPECT_EQ(names_in("solids"), std::vector<std::string>{"P01-C.step"});
}

TEST_F(BadFiles, AnEditOntoAFullDiskLeavesTheBookAsItWas) {
  const std::string before = bytes_of(book_);
  const auto blocks = static_cast<int>(before.size() / 1024);
  const std::string notes(40000, 'x');
  const int code = run_on_full_disk(blocks, "set " + book_ + " brief.notes=" + notes);
  EXPECT_EQ(code, 3) << bytes_of(at("err"));
  EXPECT_THAT(bytes_of(at("err")), HasSubstr("lens.lensbook"));
  EXPECT_EQ(ask({"prove", book_}).code, 0);
  EXPECT_EQ(bytes_of(book_), before);
}

TEST_F(BadFiles, ABookThatSomeoneElseHasOpenCanBeReadButNotChanged) {
  auto held = Lensbook::open(book_);
  ASSERT_TRUE(held.ok());
  const std::string before = bytes_of(book_);
  EXPECT_EQ(ask({"prove", book_}).code, 0);
  EXPECT_EQ(ask({"bench", book_, "list"}).code, 0);
  for (const std::vector<std::string>& words : {std::vector<std::string>{"set", book_, "section.edge_mm=3"},
                                                {"bench", book_, "record", "P01-C", "1"}}) {
    const Answer answer = ask(words);
    EXPECT_EQ(answer.code, 3) << words.front();
    EXPECT_THAT(answer.err, testing::Not(testing::IsEmpty()));
  }
  EXPECT_EQ(bytes_of(book_), before);
}

}  // namespace
}  // namespace prismwright
