#include "geometry/despatch/sha256.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <new>
#include <vector>

#include <fmt/format.h>
#include <openssl/evp.h>

#include "geometry/safe_file.h"

namespace prismwright {

namespace {

constexpr std::size_t kBlock_bytes = 1 << 20;

using Context = std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)>;

Context new_context() {
  Context context(EVP_MD_CTX_new(), &EVP_MD_CTX_free);
  if (!context) throw std::bad_alloc();
  return context;
}

Problem unread(const std::string& path) {
  return file_problem("read", path, fmt::format("{} cannot be read ({}).", path, std::strerror(errno)));
}

}  // namespace

struct Sha256::Inside {
  Context context = new_context();
};

Sha256::Sha256() : inside_(std::make_unique<Inside>()) {
  if (EVP_DigestInit_ex(inside_->context.get(), EVP_sha256(), nullptr) != 1) throw std::bad_alloc();
}
Sha256::~Sha256() = default;
Sha256::Sha256(Sha256&&) noexcept = default;
Sha256& Sha256::operator=(Sha256&&) noexcept = default;

void Sha256::add(std::string_view bytes) {
  EVP_DigestUpdate(inside_->context.get(), bytes.data(), bytes.size());
}

std::string Sha256::hex() const {
  const Context ending = new_context();
  std::array<unsigned char, EVP_MAX_MD_SIZE> sum{};
  unsigned size = 0;
  if (EVP_MD_CTX_copy_ex(ending.get(), inside_->context.get()) != 1) throw std::bad_alloc();
  EVP_DigestFinal_ex(ending.get(), sum.data(), &size);
  std::string digits;
  for (unsigned i = 0; i < size; ++i) digits += fmt::format("{:02x}", sum[i]);
  return digits;
}

std::string sha256_of(std::string_view bytes) {
  Sha256 sum;
  sum.add(bytes);
  return sum.hex();
}

Outcome<FileSum> sum_of_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return unread(path);
  std::vector<char> block(kBlock_bytes);
  Sha256 sum;
  FileSum read;
  while (file) {
    file.read(block.data(), static_cast<std::streamsize>(block.size()));
    const auto count = static_cast<std::size_t>(file.gcount());
    sum.add({block.data(), count});
    read.bytes += count;
  }
  if (!file.eof()) return unread(path);
  read.sha256 = sum.hex();
  return read;
}

Outcome<FileSum> copy_with_sum(const std::string& from, const std::string& to) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(from, error)) return unread(from);
  const auto count = std::filesystem::file_size(from, error);
  if (error) return unread(from);
  std::string bytes(count, '\0');
  std::ifstream file(from, std::ios::binary);
  if (!file.read(bytes.data(), static_cast<std::streamsize>(count))) return unread(from);
  if (const Done written = write_whole(to, bytes); !written) return written.problem();
  return FileSum{bytes.size(), sha256_of(bytes)};
}

}  // namespace prismwright
