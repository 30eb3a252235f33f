#include "geometry/despatch/pack_lock.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <pwd.h>
#include <unistd.h>

#include "core/book/utc_clock.h"
#include "geometry/despatch/pack_folder.h"

namespace prismwright {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostWords = 400;

std::string user_name() {
  std::array<char, 4096> room{};
  passwd entry{};
  passwd* found = nullptr;
  if (::getpwuid_r(::geteuid(), &entry, room.data(), room.size(), &found) != 0 || found == nullptr)
    return fmt::format("user {}", ::geteuid());
  return entry.pw_name;
}

std::string machine_name() {
  std::array<char, 256> name{};
  return ::gethostname(name.data(), name.size() - 1) == 0 ? name.data() : "this machine";
}

/// "prismwright-batch, process 4711 of maker on bench, since 2026-03-31T09:30:00Z".
std::string own_words() {
  return fmt::format("{}, process {} of {} on {}, since {}", ::program_invocation_short_name, ::getpid(),
                     user_name(), machine_name(), now_utc());
}

/// What the holder says of itself. One that has only just taken the lock may not have said anything yet.
std::string holder_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::string words(kMostWords, '\0');
  file.read(words.data(), kMostWords);
  words.resize(static_cast<std::size_t>(file.gcount()));
  words.resize(std::min(words.size(), words.find('\n')));
  return words.empty() ? "another program" : words;
}

bool knows_no_locks(int error) {
  // EBADF: some network disks want a file opened for writing, which another user's is not.
  return error == EBADF || error == ENOLCK || error == ENOSYS || error == EINVAL || error == EOPNOTSUPP;
}

}  // namespace

Outcome<LockFile> lock_packs(const std::string& packs_folder, const std::string& book) {
  const fs::path path = fs::path(packs_folder) / ("." + pack_stem(book) + ".lock");
  LockFile lock = LockFile::take(path.string());
  if (lock.holds()) lock.say(own_words() + "\n");
  if (lock.holds() || knows_no_locks(lock.error())) return lock;
  if (lock.error() == EWOULDBLOCK)
    return file_problem(
        "busy", packs_folder,
        fmt::format("{} is being packed into {} already: by {}. Wait until that pack is finished or stop it "
                    "there, and pack again.",
                    book, packs_folder, holder_of(path)));
  return file_problem("folder", packs_folder,
                      fmt::format("No pack can be made in {} ({}). Choose another folder for the packs.",
                                  packs_folder, std::strerror(lock.error())));
}

}  // namespace prismwright
