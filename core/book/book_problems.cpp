#include "core/book/book_problems.h"

#include <fmt/format.h>

#include <filesystem>
#include <utility>

namespace prismwright {
namespace {

bool tells_of_damage(int code) {
  return code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_CONSTRAINT || code == SQLITE_ERROR ||
         code == SQLITE_SCHEMA || code == SQLITE_MISMATCH;
}

bool tells_of_closed_door(int code) {
  return code == SQLITE_READONLY || code == SQLITE_PERM || code == SQLITE_CANTOPEN || code == SQLITE_AUTH;
}

}  // namespace

BookName::BookName(std::string its_path)
    : path(std::move(its_path)), name(std::filesystem::path(path).filename().string()) {
  if (name.empty()) name = path;
  std::error_code error;
  file = std::filesystem::weakly_canonical(std::filesystem::absolute(path, error), error).string();
  if (error || file.empty()) file = path;
}

Problem damaged_problem(const BookName& book, const std::string& detail) {
  return file_problem(
      "damaged", book.path,
      fmt::format("{} is damaged ({}) and was left as it is. Go back to a copy of it.", book.name, detail));
}

Problem sqlite_problem(const BookName& book, const std::string& act, const SQLite::Exception& error) {
  const int code = error.getErrorCode() & 0xFF;
  if (code == SQLITE_FULL)
    return file_problem(
        "disk_full", book.path,
        fmt::format("The disk that holds {} is full; nothing was changed. Make room and try again.",
                    book.name));
  if (code == SQLITE_NOMEM) return memory_problem(book);
  if (code == SQLITE_BUSY || code == SQLITE_LOCKED)
    return file_problem("busy", book.path,
                        fmt::format("{} is held by another program. Close it there and try again.", book.name));
  if (tells_of_closed_door(code))
    return file_problem("not_writable", book.path,
                        fmt::format("{} could not be {}: {}. Check who may read and write it and its folder.",
                                    book.name, act, error.what()));
  if (tells_of_damage(code)) return damaged_problem(book, error.what());
  return file_problem(
      "disk_error", book.path,
      fmt::format("{} could not be {}: {}. Check the disk and try again.", book.name, act, error.what()));
}

Problem system_problem(const BookName& book, const std::string& act, const std::error_code& error) {
  if (error == std::errc::no_space_on_device)
    return file_problem(
        "disk_full", book.path,
        fmt::format("The disk has no room for {}; nothing was changed. Make room and try again.", book.name));
  return file_problem("disk_error", book.path,
                      fmt::format("{} could not be {}: {}. Check the folder and who may write in it.",
                                  book.name, act, error.message()));
}

Problem memory_problem(const BookName& book) {
  return file_problem(
      "no_memory", book.path,
      fmt::format("There is not memory enough for {}. Close other programs and try again.", book.name));
}

}  // namespace prismwright
