#include "geometry/despatch/pack_manifest.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace prismwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kWhat = "prismwright pack";
constexpr int kManifestFormat = 1;

Json pairs_json(const std::vector<std::pair<std::string, std::string>>& pairs) {
  Json json = Json::array();
  for (const auto& [first, second] : pairs) json.push_back({first, second});
  return json;
}

std::vector<std::pair<std::string, std::string>> pairs_of(const Json& json) {
  std::vector<std::pair<std::string, std::string>> pairs;
  for (const Json& pair : json)
    pairs.emplace_back(pair.at(0).get<std::string>(), pair.at(1).get<std::string>());
  return pairs;
}

/// A file name is any bytes, and a text of JSON is none that are not UTF-8: those stand beside it as digits.
Json bytes_json(const std::string& bytes) {
  std::string digits;
  for (const char byte : bytes) digits += fmt::format("{:02x}", static_cast<unsigned char>(byte));
  return digits;
}

std::string bytes_of(const std::string& digits) {
  std::string bytes;
  for (std::size_t i = 0; i + 1 < digits.size(); i += 2)
    bytes += static_cast<char>(std::stoi(digits.substr(i, 2), nullptr, 16));
  return bytes;
}

Json estimate_json(const EstimateChoice& choice) {
  return {{"margin_percent", choice.margin_percent},
          {"valid_days", choice.valid_days},
          {"spare_sets", choice.spare_sets},
          {"note", choice.note}};
}

EstimateChoice estimate_of(const Json& json) {
  const EstimateChoice choice{json.at("margin_percent").get<double>(), json.at("valid_days").get<int>(),
                              json.at("spare_sets").get<int>(), json.at("note").get<std::string>()};
  const bool sound = choice.margin_percent >= 0 &&
                     choice.margin_percent <= EstimateChoice::kMostMargin_percent && choice.valid_days >= 1 &&
                     choice.valid_days <= EstimateChoice::kMostDays && choice.spare_sets >= 0 &&
                     choice.spare_sets <= EstimateChoice::kMostSets;
  if (!sound) throw std::runtime_error("an estimate that could not be asked for");
  return choice;
}

Json piece_json(const PackedPiece& packed) {
  Json json;
  json["group"] = name_of(packed.piece.group);
  json["name"] = packed.piece.name;
  json["words"] = packed.piece.words;
  json["key"] = packed.piece.key;
  json["is_paper"] = packed.piece.is_paper;
  json["withheld"] = packed.piece.withheld;
  json["revision"] = packed.revision;
  json["date"] = packed.date;
  json["files"] = Json::array();
  for (const PackedFile& file : packed.files)
    json["files"].push_back({{"path", file.path}, {"bytes", file.bytes}, {"sha256", file.sha256}});
  if (!packed.notes.empty()) json["notes"] = packed.notes;
  return json;
}

/// Whether a path stays within the pack: files are copied by it.
bool stays_inside(const std::string& path) {
  const std::filesystem::path parts(path);
  if (path.empty() || parts.is_absolute() || path.find('\\') != std::string::npos) return false;
  return std::ranges::none_of(parts, [](const auto& part) { return part == ".." || part == "."; });
}

Problem damaged(const std::string& where, const std::string& why) {
  return file_problem("manifest", where,
                      fmt::format("{} is damaged ({}). Leave this pack aside and pack anew.", where, why));
}

/// No pack says more of itself.
constexpr std::uintmax_t kMostBytes = 256 * 1024 * 1024;
constexpr int kMostPacks = 1000000;

PackedPiece piece_of(const Json& json) {
  PackedPiece packed;
  const auto group = find_despatch_group(json.at("group").get<std::string>());
  if (!group) throw std::runtime_error("a group of no known name");
  packed.piece = {*group,
                  json.at("name").get<std::string>(),
                  json.at("words").get<std::string>(),
                  json.at("key").get<std::string>(),
                  json.at("is_paper").get<bool>(),
                  json.at("withheld").get<std::string>()};
  packed.revision = json.at("revision").get<std::string>();
  packed.date = json.at("date").get<std::string>();
  for (const Json& file : json.at("files")) {
    packed.files.push_back({file.at("path").get<std::string>(), file.at("bytes").get<std::uint64_t>(),
                            file.at("sha256").get<std::string>()});
    if (!stays_inside(packed.files.back().path)) throw std::runtime_error("a path that leads out of the pack");
  }
  if (json.contains("notes")) packed.notes = json.at("notes").get<std::vector<std::string>>();
  return packed;
}

PackManifest manifest_of(const Json& json) {
  PackManifest manifest;
  manifest.book = json.contains("book_bytes") ? bytes_of(json.at("book_bytes").get<std::string>())
                                              : json.at("book").get<std::string>();
  manifest.title = json.at("title").get<std::string>();
  manifest.date = json.at("date").get<std::string>();
  manifest.revision = json.at("revision").get<std::string>();
  manifest.number = json.at("number").get<int>();
  if (manifest.number < 1 || manifest.number > kMostPacks)
    throw std::runtime_error("a number that no pack has");
  manifest.values = pairs_of(json.at("values"));
  manifest.figures = pairs_of(json.at("figures"));
  manifest.light_figures = pairs_of(json.at("light_figures"));
  if (json.contains("estimate")) manifest.estimate = estimate_of(json.at("estimate"));
  for (const Json& piece : json.at("pieces")) manifest.pieces.push_back(piece_of(piece));
  return manifest;
}

}  // namespace

std::string readable_name(const std::string& book) {
  return Json::parse(Json(book).dump(-1, ' ', false, Json::error_handler_t::replace)).get<std::string>();
}

std::string manifest_text(const PackManifest& manifest) {
  Json json;
  json["what"] = kWhat;
  json["format"] = kManifestFormat;
  json["book"] = readable_name(manifest.book);
  if (readable_name(manifest.book) != manifest.book) json["book_bytes"] = bytes_json(manifest.book);
  json["title"] = manifest.title;
  json["date"] = manifest.date;
  json["revision"] = manifest.revision;
  json["number"] = manifest.number;
  json["figures"] = pairs_json(manifest.figures);
  json["light_figures"] = pairs_json(manifest.light_figures);
  json["values"] = pairs_json(manifest.values);
  if (manifest.estimate) json["estimate"] = estimate_json(*manifest.estimate);
  json["pieces"] = Json::array();
  for (const PackedPiece& packed : manifest.pieces) json["pieces"].push_back(piece_json(packed));
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Outcome<PackManifest> manifest_of(const std::string& text, const std::string& where) {
  try {
    const Json json = Json::parse(text);
    if (json.at("what") != kWhat) return damaged(where, "it is no pack's");
    if (json.at("format").get<int>() > kManifestFormat)
      return file_problem("newer", where,
                          fmt::format("{} was written by a newer program than this one. Use that one to pack "
                                      "this book on.",
                                      where));
    return manifest_of(json);
  } catch (const std::exception& error) {
    return damaged(where, error.what());
  }
}

Outcome<PackManifest> read_manifest(const std::string& pack_folder) {
  const std::string path = (std::filesystem::path(pack_folder) / kManifestName).string();
  std::error_code error;
  const bool plain = std::filesystem::is_regular_file(path, error);
  const auto bytes = plain ? std::filesystem::file_size(path, error) : 0;
  if (error || !plain || bytes > kMostBytes)
    return file_problem("read", path, fmt::format("{} cannot be read: there is no pack here.", path));
  std::string text(bytes, '\0');
  std::ifstream file(path, std::ios::binary);
  if (!file.read(text.data(), static_cast<std::streamsize>(bytes)))
    return file_problem("read", path, fmt::format("{} cannot be read. See to its rights and its disk.", path));
  return manifest_of(text, path);
}

}  // namespace prismwright
