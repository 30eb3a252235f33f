#include "geometry/three_mf_writer.h"

#include <iterator>

#include <fmt/format.h>

#include "geometry/zip_pack.h"

namespace prismwright {

namespace {

constexpr const char* kHead = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

std::string escaped(const std::string& words) {
  std::string text;
  for (const char c : words) {
    switch (c) {
      case '&':
        text += "&amp;";
        break;
      case '<':
        text += "&lt;";
        break;
      case '"':
        text += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20) text += c;
    }
  }
  return text;
}

std::string model_text(const std::string& name, const SkinMesh& mesh) {
  std::string text = kHead;
  auto to = std::back_inserter(text);
  fmt::format_to(to,
                 "<model unit=\"millimeter\" xml:lang=\"en\" "
                 "xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n"
                 "<metadata name=\"Title\">{}</metadata>\n<resources>\n"
                 "<object id=\"1\" type=\"model\" name=\"{}\">\n<mesh>\n<vertices>\n",
                 escaped(name), escaped(name));
  for (const SpacePoint& p : mesh.corners) {
    fmt::format_to(to, "<vertex x=\"{}\" y=\"{}\" z=\"{}\"/>\n", static_cast<float>(p.x),
                   static_cast<float>(p.y), static_cast<float>(p.z));
  }
  text += "</vertices>\n<triangles>\n";
  for (const auto& [a, b, c] : mesh.facets) {
    fmt::format_to(to, "<triangle v1=\"{}\" v2=\"{}\" v3=\"{}\"/>\n", a, b, c);
  }
  text +=
      "</triangles>\n</mesh>\n</object>\n</resources>\n<build>\n<item objectid=\"1\"/>\n</build>\n</model>\n";
  return text;
}

}  // namespace

std::string three_mf_bytes(const std::string& name, const SkinMesh& mesh) {
  const std::string types =
      std::string(kHead) +
      "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
      "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
      "<Default Extension=\"model\" ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/>"
      "</Types>\n";
  const std::string relations =
      std::string(kHead) +
      "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
      "<Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" "
      "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/></Relationships>\n";
  return zip_bytes({{"[Content_Types].xml", types},
                    {"_rels/.rels", relations},
                    {"3D/3dmodel.model", model_text(name, mesh)}});
}

}  // namespace prismwright
