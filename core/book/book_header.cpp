#include "core/book/book_header.h"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <memory>
#include <string_view>
#include <vector>

#include "core/book/schema.h"

namespace prismwright {
namespace {

// SQLite's file format, https://www.sqlite.org/fileformat.html section 1.3 (from memory, held by the tests
// against files that SQLite writes).
constexpr std::size_t kHeaderBytes = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kPageSizeAt = 16;
constexpr std::size_t kWriteFormatAt = 18;
constexpr std::size_t kReadFormatAt = 19;
constexpr std::size_t kPageCountAt = 28;
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

struct Head {
  std::array<unsigned char, kHeaderBytes> bytes{};
  std::int64_t file_size = 0;

  [[nodiscard]] std::uint32_t number_at(std::size_t at, std::size_t width) const {
    std::uint32_t number = 0;
    for (std::size_t i = at; i < at + width; ++i) number = (number << 8) | bytes.at(i);
    return number;
  }
};

struct CloseFile {
  void operator()(sqlite3_file* file) const {
    if (file->pMethods != nullptr) file->pMethods->xClose(file);
  }
};

Head read_head(const BookName& book) {
  sqlite3_vfs* vfs = sqlite3_vfs_find(nullptr);
  std::vector<char> room(static_cast<std::size_t>(vfs->szOsFile));
  // SQLite wants the name in a form of its own, with room for parameters behind it.
  const std::unique_ptr<const char, void (*)(const char*)> name(
      sqlite3_create_filename(book.file.c_str(), "", "", 0, nullptr),
      [](const char* made) { sqlite3_free_filename(const_cast<char*>(made)); });
  auto* raw = reinterpret_cast<sqlite3_file*>(room.data());
  int code = vfs->xOpen(vfs, name.get(), raw, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, nullptr);
  const std::unique_ptr<sqlite3_file, CloseFile> file(raw);
  if (code != SQLITE_OK) throw SQLite::Exception(sqlite3_errstr(code), code);
  Head head;
  sqlite3_int64 size = 0;
  code = file->pMethods->xFileSize(raw, &size);
  if (code == SQLITE_OK) code = file->pMethods->xRead(raw, head.bytes.data(), kHeaderBytes, 0);
  if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ) throw SQLite::Exception(sqlite3_errstr(code), code);
  head.file_size = size;
  return head;
}

Problem not_a_lensbook(const BookName& book, const std::string& why) {
  return file_problem(
      "not_a_lensbook", book.path,
      fmt::format("{} is not a lensbook: {}. Open a file that Prismwright has made.", book.name, why));
}

Problem newer_version(const BookName& book, std::uint32_t version) {
  return file_problem(
      "newer_version", book.path,
      fmt::format("{} was written by a newer Prismwright (book version {}; this one reads up to {}). "
                  "Open it with the newer program.",
                  book.name, version, kBookVersion));
}

Done check_size(const BookName& book, const Head& head) {
  const std::uint32_t stated = head.number_at(kPageSizeAt, 2);
  const std::int64_t page_bytes = stated == 1 ? 65536 : stated;
  const std::int64_t whole = page_bytes * head.number_at(kPageCountAt, 4);
  if (head.file_size >= whole) return {};
  return file_problem(
      "truncated", book.path,
      fmt::format("{} is cut short: {} of its {} bytes are there. It was left as it is; go back to a "
                  "copy of it.",
                  book.name, head.file_size, whole));
}

Done check_head(const BookName& book, const Head& head) {
  const std::string_view words(reinterpret_cast<const char*>(head.bytes.data()), kMagic.size());
  if (words != kMagic) return not_a_lensbook(book, "it does not begin as one does");
  const std::uint32_t id = head.number_at(kApplicationIdAt, 4);
  if (id != kApplicationId) return not_a_lensbook(book, "it is a database of another kind");
  const std::uint32_t version = head.number_at(kUserVersionAt, 4);
  if (version == 0 || version > 0x7FFFFFFF) return damaged_problem(book, "it states no version");
  if (version > kBookVersion) return newer_version(book, version);
  // A book is never in write-ahead form, and asking SQLite to read one that claims so could leave files beside
  // it.
  if (head.bytes.at(kWriteFormatAt) != 1 || head.bytes.at(kReadFormatAt) != 1)
    return damaged_problem(book, "its header is not that of a lensbook");
  return check_size(book, head);
}

}  // namespace

Done check_there(const BookName& book) {
  std::error_code error;
  const std::filesystem::file_status status = std::filesystem::status(book.file, error);
  if (status.type() == std::filesystem::file_type::not_found)
    return file_problem("missing_file", book.path,
                        fmt::format("{} does not exist. Check its name and folder.", book.path));
  if (error) return system_problem(book, "read", error);
  if (std::filesystem::is_directory(status))
    return file_problem("is_folder", book.path,
                        fmt::format("{} is a folder, not a lensbook. Name a file in it.", book.path));
  if (!std::filesystem::is_regular_file(status))
    return file_problem(
        "not_a_lensbook", book.path,
        fmt::format("{} is a device, not a lensbook. Open a file that Prismwright has made.", book.path));
  if (std::filesystem::file_size(book.file, error) == 0 && !error)
    return file_problem(
        "empty_file", book.path,
        fmt::format("{} is empty (0 bytes), so it is no lensbook. Go back to a copy of it.", book.name));
  return {};
}

Done check_header(const BookName& book) {
  return guarded<Done>(book, "read", [&]() -> Done { return check_head(book, read_head(book)); });
}

bool has_journal(const BookName& book) {
  std::error_code error;
  return std::filesystem::exists(book.file + "-journal", error);
}

}  // namespace prismwright
