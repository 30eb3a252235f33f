#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "core/base/outcome.h"

namespace prismwright {

/// The SHA-256 sum (FIPS 180-4) of bytes that come bit by bit.
class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(Sha256&&) noexcept;
  Sha256& operator=(Sha256&&) noexcept;

  void add(std::string_view bytes);
  /// The sum so far as 64 small hexadecimal digits; more may be added afterwards.
  [[nodiscard]] std::string hex() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

std::string sha256_of(std::string_view bytes);

/// What was read of a file.
struct FileSum {
  std::uint64_t bytes = 0;
  std::string sha256;
};
/// Refused (file Problem, code "read"): a file that cannot be read to its end.
Outcome<FileSum> sum_of_file(const std::string& path);

/// Copies a file and sums it on the way; the copy is on the disk when the call returns. Refused: what cannot be
/// read (code "read") or written (code "write"); then no copy is left.
Outcome<FileSum> copy_with_sum(const std::string& from, const std::string& to);

}  // namespace prismwright
