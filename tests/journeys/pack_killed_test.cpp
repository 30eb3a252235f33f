#include <fcntl.h>
#include <gmock/gmock.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>

#include <chrono>
#include <functional>
#include <thread>

#include "geometry/despatch/pack.h"
#include "tests/journeys/whole_job.h"
#include "tests/support/other_program.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::UnorderedElementsAre;

/// The batch program as a process of its own, with its words thrown away.
class RunningBatch {
 public:
  explicit RunningBatch(std::vector<std::string> words) {
    words.insert(words.begin(), BATCH_PROGRAM);
    std::vector<char*> pointers;
    for (std::string& word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t silent;
    posix_spawn_file_actions_init(&silent);
    posix_spawn_file_actions_addopen(&silent, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&silent, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    if (::posix_spawn(&process_, BATCH_PROGRAM, &silent, nullptr, pointers.data(), environ) != 0) process_ = -1;
    posix_spawn_file_actions_destroy(&silent);
  }
  ~RunningBatch() { kill(); }
  RunningBatch(const RunningBatch&) = delete;
  RunningBatch& operator=(const RunningBatch&) = delete;

  [[nodiscard]] pid_t process() const { return process_; }
  /// Once it is reaped its number may be another process's.
  [[nodiscard]] bool runs() {
    if (process_ > 0 && ::waitpid(process_, nullptr, WNOHANG) != 0) process_ = -1;
    return process_ > 0;
  }
  void send(int signal) const {
    if (process_ > 0) ::kill(process_, signal);
  }
  void kill() {
    send(SIGKILL);
    if (process_ > 0) ::waitpid(process_, nullptr, 0);
    process_ = -1;
  }

 private:
  pid_t process_ = -1;
};

/// A maker's machine goes down in the midst of a pack, or a second hand packs the same book.
class PackKilled : public WholeJob {
 protected:
  static constexpr const char* kHalf = "packs/.lens-2026-03-31.part";

  std::string make_few_prisms() {
    return make_small_belt({"section.refracting_to_deg=10", "section.upper_to_deg=18",
                            "section.lower_to_deg=10", "frame.least_brass_mm=1"});
  }
  /// Panels come last and take longest: so there is time to catch it.
  [[nodiscard]] std::vector<std::string> pack_words(const std::string& book) const {
    return {"pack", book, "--out", at("packs"), "--only", "prisms", "panels", "record", "--date", "2026-03-31"};
  }
  [[nodiscard]] std::size_t files_below(const std::string& folder) const {
    std::size_t count = 0;
    std::error_code gone;  // what is looked at is being written, or renamed
    for (std::filesystem::recursive_directory_iterator entry(at(folder), gone), end; !gone && entry != end;
         entry.increment(gone))
      if (std::filesystem::is_regular_file(entry->path(), gone)) ++count;
    return count;
  }
  /// Waits until that many files lie in the half pack.
  void wait_for_files(RunningBatch& batch, std::size_t count) const {
    using namespace std::chrono_literals;
    while (files_below(kHalf) < count) {
      ASSERT_TRUE(batch.runs()) << "it was to be caught in the midst, with " << count << " files written";
      std::this_thread::sleep_for(1ms);
    }
  }
  void expect_every_sum_right(const std::string& folder) const {
    const std::string told = answer_of("cd '" + folder + "' && sha256sum --quiet -c SHA256SUMS 2>&1");
    EXPECT_EQ(told, "");
  }
};

TEST_F(PackKilled, LeavesNothingThatTheNextOneTakesForWhole) {
  const std::string book = make_few_prisms();
  for (const std::size_t files : {1u, 6u}) {
    RunningBatch batch(pack_words(book));
    wait_for_files(batch, files);
    batch.kill();
    EXPECT_TRUE(std::filesystem::exists(at(kHalf))) << "a killed run tidies nothing";
    EXPECT_FALSE(std::filesystem::exists(at("packs/lens-2026-03-31")));
    EXPECT_FALSE(last_pack(at("packs"), "lens"));
  }
  std::vector<std::string> words = pack_words(book);
  words.emplace_back("--json");
  const Answer next = ask(words);
  ASSERT_EQ(next.code, 0) << next.err;
  EXPECT_EQ(next.json().at("number"), 1);
  EXPECT_EQ(next.json().at("revision"), "A");
  EXPECT_EQ(next.json().at("kept"), 0) << "nothing of the half pack is taken";
  EXPECT_THAT(files_in("packs"), UnorderedElementsAre("lens-2026-03-31"));
  expect_every_sum_right(next.json().at("folder"));
}

TEST_F(PackKilled, HoldsASecondOneOffWhileItLivesAndNoLonger) {
  const std::string book = make_few_prisms();
  RunningBatch batch(pack_words(book));
  wait_for_files(batch, 1);
  batch.send(SIGSTOP);
  const Answer second = ask(pack_words(book));
  EXPECT_EQ(second.code, 3);
  EXPECT_THAT(second.err,
              HasSubstr("by prismwright-batch, process " + std::to_string(batch.process()) + " of "));
  EXPECT_THAT(second.err, HasSubstr("Wait until that pack is finished or stop it there, and pack again."));
  EXPECT_EQ(second.out, "");
  batch.kill();
  const Answer after = ask(pack_words(book));
  EXPECT_EQ(after.code, 0) << after.err;
  EXPECT_THAT(files_in("packs"), UnorderedElementsAre("lens-2026-03-31"));
}

}  // namespace
}  // namespace prismwright
