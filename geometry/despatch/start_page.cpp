#include "geometry/despatch/start_page.h"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "core/light/bench_plan.h"
#include "geometry/despatch/pack_manifest.h"

namespace prismwright {

namespace {

constexpr const char* kStyle = R"(
:root{--paper:#F7F5F0;--surface:#FFFFFF;--ink:#1C2A33;--muted:#5B6B75;--line:#D9D4C7;
--brass:#A9812F;--sea:#1F4E5F;--bad:#B03A24}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,sans-serif;
font-variant-numeric:tabular-nums}
main,header,footer{max-width:64rem;margin:0 auto;padding:1rem 1.25rem}
header{border-bottom:3px solid var(--brass)}
h1{margin:.5rem 0 .25rem;font-size:1.75rem;line-height:1.2}
h2{margin:2rem 0 .5rem;font-size:1.15rem;color:var(--sea)}
p{margin:.25rem 0}
.muted{color:var(--muted)}
a{color:var(--sea)}
.pictures{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:.75rem}
.pictures img{width:100%;height:auto;display:block;background:var(--surface);border:1px solid var(--line)}
figure{margin:0}figcaption{color:var(--muted);font-size:.9rem}
dl{display:grid;grid-template-columns:minmax(8rem,max-content) 1fr;gap:.25rem 1rem;margin:0}
dt{color:var(--muted)}dd{margin:0;overflow-wrap:anywhere}
section.box{background:var(--surface);border:1px solid var(--line);padding:.75rem 1rem;margin:1rem 0}
section.bad{border-left:5px solid var(--bad)}
section.care{border-left:5px solid var(--brass)}
details{background:var(--surface);border:1px solid var(--line);margin:.5rem 0}
summary{cursor:pointer;padding:.6rem 1rem;font-weight:600}
details ul{margin:0;padding:0 1rem 1rem 2rem;columns:22rem;column-gap:2rem}
li{break-inside:avoid;margin:.15rem 0;overflow-wrap:anywhere}
@media(max-width:34rem){dl{grid-template-columns:1fr}dd{margin-bottom:.4rem}h1{font-size:1.4rem}}
@media print{body{background:#fff}details{break-inside:avoid-page}}
)";

std::string size_words(std::uint64_t bytes) {
  constexpr double kKilo = 1000;
  const auto size = static_cast<double>(bytes);
  if (size < kKilo) return fmt::format("{} bytes", bytes);
  if (size < kKilo * kKilo) return fmt::format("{:.0f} kB", size / kKilo);
  return fmt::format("{:.1f} MB", size / kKilo / kKilo);
}

std::string link(const std::string& path, const std::string& words) {
  return fmt::format("<a href=\"{}\">{}</a>", html_address(path), html_words(words));
}

std::string list_of(const std::vector<std::string>& lines) {
  std::string html = "<ul>\n";
  for (const std::string& line : lines) html += "<li>" + html_words(line) + "</li>\n";
  return html + "</ul>\n";
}

/// A box with a heading; nothing where there is nothing to tell.
std::string box(const char* kind, const char* heading, const std::vector<std::string>& lines) {
  if (lines.empty()) return {};
  return fmt::format("<section class=\"box {}\"><h2>{}</h2>\n{}</section>\n", kind, heading, list_of(lines));
}

std::string ending_of(const std::string& path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string::npos ? path : path.substr(dot + 1);
}

/// One piece: its words with a link for every file.
std::string piece_item(const PackedPiece& packed) {
  std::string html = "<li>" + html_words(packed.piece.words);
  if (!packed.piece.withheld.empty()) return html + ": withheld</li>\n";
  std::string before = ": ";
  for (const PackedFile& file : packed.files) {
    const bool many = packed.files.size() > 2;
    const std::string name = many ? file.path.substr(file.path.rfind('/') + 1) : ending_of(file.path);
    html += before + link(file.path, name) +
            fmt::format(" <span class=\"muted\">{}</span>", size_words(file.bytes));
    before = ", ";
  }
  if (packed.piece.is_paper)
    html += fmt::format(" <span class=\"muted\">revision {}, {}</span>", html_words(packed.revision),
                        html_words(packed.date));
  return html + "</li>\n";
}

std::string group_part(const PackManifest& manifest, DespatchGroup group) {
  std::string items;
  std::size_t count = 0;
  for (const PackedPiece& packed : manifest.pieces) {
    if (packed.piece.group != group) continue;
    items += piece_item(packed);
    ++count;
  }
  if (count == 0) return {};
  constexpr std::size_t kOpenUpTo = 8;
  return fmt::format(
      "<details{}><summary>{} <span class=\"muted\">{}</span></summary>\n<ul>\n{}</ul></details>\n",
      count <= kOpenUpTo ? " open" : "", words_of(group), count, items);
}

std::string pictures_part(const PackManifest& manifest) {
  std::string html;
  for (const PackedPiece& packed : manifest.pieces) {
    if (packed.piece.group != DespatchGroup::pictures || packed.files.empty()) continue;
    const std::string address = html_address(packed.files.front().path);
    const std::string words = html_words(packed.piece.words);
    html += fmt::format(
        "<figure><a href=\"{}\"><img src=\"{}\" alt=\"{}\"></a><figcaption>{}</figcaption></figure>\n", address,
        address, words, words);
  }
  return html.empty() ? html : "<div class=\"pictures\">\n" + html + "</div>\n";
}

std::string figures_part(const PackManifest& manifest) {
  std::string html = "<h2>The lens</h2>\n<dl>\n";
  for (const auto* figures : {&manifest.figures, &manifest.light_figures})
    for (const auto& [caption, words] : *figures)
      html += fmt::format("<dt>{}</dt><dd>{}</dd>\n", html_words(caption), html_words(words));
  return html + "</dl>\n";
}

std::vector<std::string> cautions() {
  return {
      "Sun: the lens gathers sunlight to a spot that can kindle wood and melt a lamp holder, inside and out. "
      "Keep "
      "it covered until it stands in its lantern, and whenever the sun can reach it without its blinds.",
      "Laser bench: " + std::string(kLaserCaution),
      "Lifting: glass and brass are heavy and break at their edges. Lift panels by the frame, never by a "
      "prism, "
      "two people or a hoist, with gloves and eye protection.",
      "What a light may show is decided by the authority for aids to navigation of the place; electrical work, "
      "lifting gear and work at height belong to those licensed for them there."};
}

std::string own_files() {
  return fmt::format(
      "<p class=\"muted\">{}: what changed. {}: every piece with its key and sums. {}: <code>sha256sum -c "
      "{}</code> "
      "in this folder tells whether a file has changed since. Solids are in mm; names in them are the "
      "marks.</p>\n",
      link(kChangesName, kChangesName), link(kManifestName, kManifestName), link(kSumsName, kSumsName),
      kSumsName);
}

}  // namespace

std::string html_words(std::string_view words) {
  std::string html;
  for (const char letter : words) {
    switch (letter) {
      case '&':
        html += "&amp;";
        break;
      case '<':
        html += "&lt;";
        break;
      case '>':
        html += "&gt;";
        break;
      case '"':
        html += "&quot;";
        break;
      case '\'':
        html += "&#39;";
        break;
      default:
        html += letter;
    }
  }
  return html;
}

std::string html_address(std::string_view path) {
  std::string address;
  for (const char letter : path) {
    const auto byte = static_cast<unsigned char>(letter);
    const bool plain = byte < 0x80 && (std::isalnum(byte) != 0 ||
                                       std::string_view("-_./").find(letter) != std::string_view::npos);
    address += plain ? std::string(1, letter) : fmt::format("%{:02X}", byte);
  }
  return address;
}

std::string start_page(const PackReport& report) {
  const PackManifest& manifest = report.manifest;
  const std::string title = html_words(manifest.title.empty() ? readable_name(manifest.book) : manifest.title);
  std::string html = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, "
      "initial-scale=1\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n",
      title, kStyle);
  html += fmt::format("<header><h1>{}</h1>\n<p>Revision {}, {}</p></header>\n<main>\n", title,
                      html_words(manifest.revision), html_words(manifest.date));
  html += box("bad", "Withheld", report.withheld);
  html += pictures_part(manifest);
  html += figures_part(manifest);
  html += box("", "Changed since the last pack", report.changes);
  html += "<h2>Files</h2>\n";
  for (int i = 0; i < kDespatchGroups; ++i) html += group_part(manifest, static_cast<DespatchGroup>(i));
  html += box("", "Notes", report.notes);
  html += box("care", "Cautions", cautions());
  return html + "</main>\n<footer>\n" + own_files() + "</footer>\n</body>\n</html>\n";
}

std::string changes_text(const PackReport& report) {
  const PackManifest& manifest = report.manifest;
  std::string text = fmt::format("{}, revision {}, {}\n\n",
                                 manifest.title.empty() ? readable_name(manifest.book) : manifest.title,
                                 manifest.revision, manifest.date);
  if (manifest.number == 1) return text + "The first pack of this book.\n";
  if (report.changes.empty()) return text + "Nothing has changed since the last pack.\n";
  text += "Changed since the last pack:\n";
  for (const std::string& line : report.changes) text += "- " + line + "\n";
  return text;
}

}  // namespace prismwright
