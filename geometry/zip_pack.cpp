#include "geometry/zip_pack.h"

#include <cstdint>
#include <new>

#include <zlib.h>

namespace prismwright {

namespace {

constexpr std::uint16_t kVersion = 20;  ///< 2.0: deflate
constexpr std::uint16_t kDeflated = 8;
constexpr std::uint16_t kUtf8Names = 0x0800;
constexpr std::uint16_t kFirstDay = 0x0021;  ///< 1980-01-01

void put16(std::string& bytes, std::uint16_t v) {
  bytes.push_back(static_cast<char>(v & 0xff));
  bytes.push_back(static_cast<char>(v >> 8));
}
void put32(std::string& bytes, std::size_t v) {
  put16(bytes, static_cast<std::uint16_t>(v & 0xffff));
  put16(bytes, static_cast<std::uint16_t>((v >> 16) & 0xffff));
}

/// A raw deflate stream, as ZIP has it.
std::string deflated(const std::string& bytes) {
  z_stream stream = {};
  if (deflateInit2(&stream, 9, Z_DEFLATED, -MAX_WBITS, 9, Z_DEFAULT_STRATEGY) != Z_OK) throw std::bad_alloc();
  std::string packed(deflateBound(&stream, bytes.size()), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef*>(packed.data());
  stream.avail_out = static_cast<uInt>(packed.size());
  const int end = deflate(&stream, Z_FINISH);
  packed.resize(stream.total_out);
  deflateEnd(&stream);
  if (end != Z_STREAM_END) throw std::bad_alloc();
  return packed;
}

std::size_t checksum(const std::string& bytes) {
  return crc32(0, reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uInt>(bytes.size()));
}

/// What the local and the central head have in common.
std::string head_of(const ZipEntry& entry, std::size_t packed_bytes) {
  std::string head;
  put16(head, kVersion);
  put16(head, kUtf8Names);
  put16(head, kDeflated);
  put16(head, 0);
  put16(head, kFirstDay);
  put32(head, checksum(entry.bytes));
  put32(head, packed_bytes);
  put32(head, entry.bytes.size());
  put16(head, static_cast<std::uint16_t>(entry.path.size()));
  put16(head, 0);
  return head;
}

}  // namespace

std::string zip_bytes(const std::vector<ZipEntry>& entries) {
  std::string bytes;
  std::string directory;
  for (const ZipEntry& entry : entries) {
    const std::string packed = deflated(entry.bytes);
    const std::string head = head_of(entry, packed.size());
    const std::size_t place = bytes.size();
    bytes += "PK\x03\x04" + head + entry.path + packed;
    directory += "PK\x01\x02";
    put16(directory, kVersion);
    directory += head;
    put16(directory, 0);  // comment
    put16(directory, 0);  // disk
    put16(directory, 0);  // attributes within
    put32(directory, 0);  // attributes of the file
    put32(directory, place);
    directory += entry.path;
  }
  const std::size_t start = bytes.size();
  bytes += directory + "PK\x05\x06";
  put32(bytes, 0);
  put16(bytes, static_cast<std::uint16_t>(entries.size()));
  put16(bytes, static_cast<std::uint16_t>(entries.size()));
  put32(bytes, directory.size());
  put32(bytes, start);
  put16(bytes, 0);
  return bytes;
}

}  // namespace prismwright
