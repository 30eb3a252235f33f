#include "geometry/despatch/pack.h"

#include <csignal>

#include <gmock/gmock.h>
#include <sys/resource.h>

#include "geometry/despatch/pack_manifest.h"
#include "geometry/despatch/sha256.h"
#include "tests/support/empty_folder.h"
#include "tests/support/other_program.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

namespace fs = std::filesystem;

/// Groups whose files are soon made; the journey packs them all.
const std::vector<DespatchGroup> kQuick = {DespatchGroup::prisms, DespatchGroup::frame, DespatchGroup::cutting,
                                           DespatchGroup::lists, DespatchGroup::record};

Outcome<PackReport> pack(const DespatchSource& source, const std::string& folder,
                         const std::vector<DespatchGroup>& groups = kQuick,
                         const std::string& date = "2026-03-31", const Progress& progress = {}) {
  DespatchDesk desk(source, papers_on(date));
  return write_pack(desk, {folder, groups}, progress);
}

/// The source after a change of values that leaves glass and brass as they were made.
DespatchSource with_change(const std::string& key, const std::string& text) {
  const std::vector<Assignment> change = {{key, text}};
  const auto values = with_assignments(few_prisms(), change);
  EXPECT_TRUE(values.ok());
  DespatchSource source = few_prisms_made();
  source.plan = std::make_shared<const LensPlan>(plan_of(*values));
  return source;
}

/// A figure of the start page says that something is amiss with the lens itself.
bool says_not_well(const PackManifest& manifest) {
  std::vector<std::pair<std::string, std::string>> figures = manifest.figures;
  figures.insert(figures.end(), manifest.light_figures.begin(), manifest.light_figures.end());
  return std::ranges::any_of(figures, [](const auto& figure) { return figure.second.starts_with("not well"); });
}

TEST(Pack, LiesInADatedFolderWithEverySumRight) {
  const EmptyFolder folder;
  const auto report = pack(few_prisms_made(), folder.file("packs"));
  ASSERT_TRUE(report.ok()) << report.problem().text;
  EXPECT_EQ(report->folder, folder.file("packs/low-head-2026-03-31"));
  EXPECT_EQ(report->manifest.revision, "A");
  EXPECT_THAT(report->withheld, IsEmpty());
  EXPECT_EQ(report->well, !says_not_well(report->manifest));
  EXPECT_EQ(report->kept, 0);
  // The tool of other hands finds every sum right.
  const std::string told = answer_of("cd '" + report->folder + "' && sha256sum -c SHA256SUMS");
  const auto files = files_below(report->folder);
  EXPECT_EQ(static_cast<std::size_t>(std::ranges::count(told, '\n')), files.size() - 1);
  EXPECT_THAT(told, Not(HasSubstr("FAILED")));
  // The manifest names every piece's files, and nothing else lies there.
  const auto manifest = read_manifest(report->folder);
  ASSERT_TRUE(manifest.ok()) << manifest.problem().text;
  std::set<std::string> known = {"manifest.json", "SHA256SUMS", "index.html", "changes.txt"};
  for (const PackedPiece& packed : manifest->pieces) {
    EXPECT_FALSE(packed.files.empty()) << packed.piece.name;
    for (const PackedFile& file : packed.files) {
      known.insert(file.path);
      EXPECT_EQ(files.at(file.path).size(), file.bytes) << file.path;
      EXPECT_EQ(sha256_of(files.at(file.path)), file.sha256) << file.path;
    }
  }
  for (const auto& [path, bytes] : files) EXPECT_TRUE(known.contains(path)) << path;
  EXPECT_EQ(known.size(), files.size());
  for (const PlannedPrism& prism : few_prisms_made().plan->prisms)
    EXPECT_TRUE(files.contains("prisms/" + prism.mark + ".step")) << prism.mark;
}

TEST(Pack, OfAnUnchangedBookKeepsEveryByteRevisionAndDate) {
  const EmptyFolder folder;
  const auto first = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(first.ok());
  const auto second = pack(few_prisms_made(), folder.path(), kQuick, "2026-04-02");
  ASSERT_TRUE(second.ok()) << second.problem().text;
  EXPECT_EQ(second->made_anew, 0);
  EXPECT_EQ(second->kept, first->made_anew);
  EXPECT_EQ(second->manifest.revision, "A");
  EXPECT_EQ(second->manifest.number, 2);
  EXPECT_THAT(second->changes, IsEmpty());
  auto before = files_below(first->folder);
  auto after = files_below(second->folder);
  for (const char* own : {"manifest.json", "SHA256SUMS", "index.html", "changes.txt"}) {
    before.erase(own);
    after.erase(own);
  }
  EXPECT_TRUE(before == after);
  for (const PackedPiece& packed : second->manifest.pieces) EXPECT_EQ(packed.date, "2026-03-31");
  EXPECT_THAT(files_below(second->folder).at("changes.txt"), HasSubstr("Nothing has changed"));
}

TEST(Pack, OfAChangedBookMakesAnewWhatChangedAndSaysSo) {
  const EmptyFolder folder;
  ASSERT_TRUE(pack(few_prisms_made(), folder.path()).ok());
  const auto report = pack(with_change("frame.sheet_spacing_mm", "8"), folder.path());
  ASSERT_TRUE(report.ok()) << report.problem().text;
  EXPECT_EQ(report->folder, folder.file("low-head-2026-03-31-2"));
  EXPECT_EQ(report->manifest.revision, "B");
  EXPECT_THAT(report->changes, Contains("frame.sheet_spacing_mm 6 -> 8 mm"));
  EXPECT_THAT(report->changes, Contains("Cut files of the frame made anew: sheets"));
  EXPECT_EQ(report->made_anew, 3) << "the sheets to be cut, their list, and the parts' list that names sheets";
  EXPECT_EQ(piece_of(report->manifest, DespatchGroup::cutting, "sheets")->revision, "B");
  EXPECT_EQ(piece_of(report->manifest, DespatchGroup::prisms, "P01-C")->revision, "A");
  EXPECT_THAT(files_below(report->folder).at("changes.txt"), HasSubstr("frame.sheet_spacing_mm 6 -> 8 mm"));
}

TEST(Pack, MakesADamagedFileOfTheLastPackAnewAndSaysSo) {
  const EmptyFolder folder;
  const auto first = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(first.ok());
  const std::string whole = files_below(first->folder).at("prisms/P01-C.step");
  std::ofstream(first->folder + "/prisms/P01-C.step", std::ios::app) << "x";
  fs::remove(first->folder + "/lists/zones.csv");
  const auto second = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(second.ok()) << second.problem().text;
  EXPECT_EQ(second->made_anew, 2);
  EXPECT_EQ(second->notes.size(), 2u);
  EXPECT_THAT(second->notes, Contains(HasSubstr("prisms/P01-C.step")));
  EXPECT_THAT(second->notes, Contains(HasSubstr("zones.csv")));
  EXPECT_EQ(files_below(second->folder).at("prisms/P01-C.step"), whole);
}

TEST(Pack, OfSomeGroupsLetsTheOthersBeTakenFromAnOlderPackLater) {
  const EmptyFolder folder;
  ASSERT_TRUE(pack(few_prisms_made(), folder.path()).ok());
  const auto lists = pack(few_prisms_made(), folder.path(), {DespatchGroup::lists}, "2026-04-01");
  ASSERT_TRUE(lists.ok());
  EXPECT_EQ(lists->made_anew, 0);
  EXPECT_FALSE(fs::exists(lists->folder + "/prisms"));
  const auto all = pack(few_prisms_made(), folder.path(), kQuick, "2026-04-02");
  ASSERT_TRUE(all.ok()) << all.problem().text;
  EXPECT_EQ(all->made_anew, 0);
  EXPECT_EQ(all->manifest.revision, "A");
  EXPECT_THAT(all->changes, IsEmpty());
  EXPECT_TRUE(fs::exists(all->folder + "/prisms/P01-C.step"));
}

TEST(Pack, WithholdsWhatStandsInAClashAndTellsThePair) {
  DespatchSource source = few_prisms_made();
  std::vector<Clearance> clearances = *source.clearances;
  const auto pair = std::ranges::find(clearances, ClearanceKind::prism_metal, &Clearance::kind);
  pair->verdict = Verdict::clash;
  pair->gap_mm = 0;
  pair->overlap_mm3 = 12.34;
  const std::string first = pair->first;
  const std::string second = pair->second;
  source.clearances = std::make_shared<const std::vector<Clearance>>(clearances);
  const EmptyFolder folder;
  const auto report = pack(source, folder.path());
  ASSERT_TRUE(report.ok()) << report.problem().text;
  EXPECT_FALSE(report->well);
  EXPECT_FALSE(fs::exists(report->folder + "/prisms/" + first + ".step"));
  EXPECT_FALSE(fs::exists(report->folder + "/frame/frame.step"));
  EXPECT_TRUE(fs::exists(report->folder + "/lists/prisms.csv"));
  const std::string sentence = first + " and " + second + " overlap by 12.3 mm3";
  EXPECT_THAT(report->withheld,
              Contains("Prism " + first + ": " + sentence + ". Make room between them and pack again."));
  EXPECT_THAT(files_below(report->folder).at("index.html"), HasSubstr(sentence));
  EXPECT_EQ(piece_of(*read_manifest(report->folder), DespatchGroup::prisms, first)->piece.withheld,
            sentence + ". Make room between them and pack again.");
  std::size_t others = 0;
  for (const PlannedPrism& prism : source.plan->prisms)
    if (prism.mark != first && fs::exists(report->folder + "/prisms/" + prism.mark + ".step")) ++others;
  EXPECT_EQ(others, source.plan->prisms.size() - 1);
  // When the room is made, it goes out.
  const auto mended = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(mended.ok());
  EXPECT_THAT(mended->withheld, IsEmpty());
  EXPECT_EQ(mended->manifest.revision, "B");
  EXPECT_TRUE(fs::exists(mended->folder + "/prisms/" + first + ".step"));
}

TEST(Pack, LeavesNothingWhereverItIsStopped) {
  int calls = 0;
  const EmptyFolder whole;
  ASSERT_TRUE(pack(few_prisms_made(), whole.path(), kQuick, "2026-03-31", [&](double, std::string_view) {
                ++calls;
                return true;
              }).ok());
  for (const int stop_at : {1, calls / 3, calls}) {
    const EmptyFolder folder;
    int call = 0;
    const auto report = pack(few_prisms_made(), folder.path(), kQuick, "2026-03-31",
                             [&](double, std::string_view) { return ++call < stop_at; });
    ASSERT_FALSE(report.ok()) << stop_at << " of " << calls;
    EXPECT_EQ(report.problem().trouble, Trouble::stopped);
    EXPECT_THAT(folder.names(), IsEmpty()) << stop_at << " of " << calls;
  }
}

TEST(Pack, TellsItsProgressRisingFromNoughtToOne) {
  const EmptyFolder folder;
  double last = 0;
  ASSERT_TRUE(pack(few_prisms_made(), folder.path(), kQuick, "2026-03-31", [&](double share, std::string_view) {
                EXPECT_GE(share, last);
                EXPECT_LE(share, 1);
                last = share;
                return true;
              }).ok());
  EXPECT_EQ(last, 1);
}

/// No file may grow over a few thousand bytes: what a full disk looks like to whoever writes.
class LittleRoom {
 public:
  explicit LittleRoom(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &before_);
    rlimit little = before_;
    little.rlim_cur = bytes;
    setrlimit(RLIMIT_FSIZE, &little);
  }
  ~LittleRoom() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  LittleRoom(const LittleRoom&) = delete;
  LittleRoom& operator=(const LittleRoom&) = delete;

 private:
  rlimit before_{};
  void (*handler_)(int);
};

TEST(Pack, LeavesNothingOnAFullDiskAndTheLastPackAsItWas) {
  const EmptyFolder folder;
  const auto first = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(first.ok());
  const auto before = files_below(folder.path());
  {
    const LittleRoom room(8000);
    const auto report = pack(few_prisms_made(), folder.path());
    ASSERT_FALSE(report.ok());
    EXPECT_EQ(report.problem().trouble, Trouble::file);
    EXPECT_THAT(report.problem().text, HasSubstr("choose a folder on another disk"));
  }
  EXPECT_TRUE(files_below(folder.path()) == before);
  EXPECT_EQ(folder.names().size(), 1u);
}

TEST(Pack, ClearsAwayWhatAKilledOneLeft) {
  const EmptyFolder folder;
  fs::create_directories(folder.file(".low-head-2026-03-30.part/prisms"));
  std::ofstream(folder.file(".low-head-2026-03-30.part/prisms/P01-C.step")) << "half";
  fs::create_directories(folder.file(".other-2026-03-30.part"));
  ASSERT_TRUE(pack(few_prisms_made(), folder.path(), {DespatchGroup::record}).ok());
  EXPECT_THAT(folder.names(), testing::UnorderedElementsAre("low-head-2026-03-31", ".other-2026-03-30.part"));
}

TEST(Pack, IsRefusedWithoutFolderDateOrAnythingToPack) {
  const EmptyFolder folder;
  EXPECT_EQ(pack(few_prisms_made(), "").problem().code, "folder");
  EXPECT_EQ(pack(few_prisms_made(), folder.path(), kQuick, "31.3.2026").problem().code, "date");
  std::ofstream(folder.file("file")) << "x";
  const auto in_the_way = pack(few_prisms_made(), folder.file("file"));
  EXPECT_EQ(in_the_way.problem().trouble, Trouble::file);
  EXPECT_EQ(folder.names().size(), 1u);
}

TEST(StartPage, LinksEveryFileAndNothingElseAndEscapesWords) {
  const EmptyFolder folder;
  const auto report = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(report.ok());
  const auto files = files_below(report->folder);
  const std::string& html = files.at("index.html");
  std::set<std::string> expected;
  for (const auto& [path, bytes] : files)
    if (path != "index.html") expected.insert(path);
  EXPECT_EQ(links_of(html), expected);
  EXPECT_THAT(html, HasSubstr("<h1>Low Head &lt;sixth&gt; &amp; &quot;small&quot;</h1>"));
  EXPECT_THAT(html, Not(HasSubstr("<sixth>")));
  EXPECT_THAT(html, Not(HasSubstr("<script")));
  EXPECT_THAT(html, Not(HasSubstr("http")));
  EXPECT_THAT(html, HasSubstr("Never look into the beam"));
}

TEST(Manifest, ReadsBackWhatWasWritten) {
  PackManifest manifest{"b", "Title \xC3\xA9 \"x\"", "2026-01-02", "C", 7, {{"k", "v"}}, {{"a", "b"}}, {}, {}};
  manifest.pieces.push_back({{DespatchGroup::light, "beam", "Map", "key", false, ""},
                             "B",
                             "2025-12-31",
                             {{"light/beam.csv", 12, "ab"}},
                             {}});
  const auto read = manifest_of(manifest_text(manifest), "here");
  ASSERT_TRUE(read.ok()) << read.problem().text;
  EXPECT_EQ(manifest_text(*read), manifest_text(manifest));
  EXPECT_EQ(read->pieces.front().files.front().bytes, 12u);
}

TEST(Manifest, ThatIsDamagedNewerOrLeadsOutOfThePackIsRefused) {
  PackManifest manifest{"b", "t", "2026-01-02", "C", 7, {}, {}, {}, {}};
  manifest.pieces.push_back(
      {{DespatchGroup::light, "beam", "Map", "key", false, ""}, "B", "", {{"beam.csv", 1, "a"}}, {}});
  const std::string text = manifest_text(manifest);
  const auto with = [&](const std::string& old_words, const std::string& words) {
    std::string changed = text;
    changed.replace(changed.find(old_words), old_words.size(), words);
    return manifest_of(changed, "here");
  };
  EXPECT_EQ(manifest_of(text.substr(0, text.size() / 2), "here").problem().code, "manifest");
  EXPECT_EQ(with("\"format\": 1", "\"format\": 99").problem().code, "newer");
  for (const char* path : {"../beam.csv", "/etc/beam.csv", "a/../../b", "a\\\\b", ""})
    EXPECT_EQ(with("\"beam.csv\"", std::string("\"") + path + "\"").problem().code, "manifest") << path;
  EXPECT_EQ(with("\"group\": \"light\"", "\"group\": \"lamp\"").problem().code, "manifest");
  EXPECT_TRUE(with("\"beam.csv\"", "\"light/b..csv\"").ok());
}

TEST(Revision, GoesOnFromLettersNumbersAndWords) {
  EXPECT_EQ(next_revision(""), "A");
  EXPECT_EQ(next_revision("A"), "B");
  EXPECT_EQ(next_revision("Z"), "AA");
  EXPECT_EQ(next_revision("AZ"), "BA");
  EXPECT_EQ(next_revision("ZZ"), "AAA");
  EXPECT_EQ(next_revision("9"), "10");
  EXPECT_EQ(next_revision("issue 3"), "issue 4");
  EXPECT_EQ(next_revision("draft"), "draft-2");
}

TEST(Sha256, GivesThePublishedSums) {
  // FIPS 180-2, appendix B.1 and B.2; the empty message from the same agency's test vectors.
  EXPECT_EQ(sha256_of("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_of(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

}  // namespace
}  // namespace prismwright
