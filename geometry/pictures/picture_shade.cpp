#include "geometry/pictures/picture_shade.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr PointColour tint_of(int red, int green, int blue) {
  return {static_cast<float>(red) / 255, static_cast<float>(green) / 255, static_cast<float>(blue) / 255};
}
constexpr PointColour kGlass = tint_of(0x8C, 0xC0, 0xAE);
constexpr PointColour kGlassEdge = tint_of(0x2F, 0x6B, 0x62);
constexpr PointColour kBrass = tint_of(0xA9, 0x81, 0x2F);
constexpr PointColour kBrassShade = tint_of(0x5E, 0x44, 0x14);
constexpr PointColour kBrassGleam = tint_of(0xF3, 0xDD, 0xA0);
constexpr PointColour kWhite = {1, 1, 1};

constexpr float kSeenThrough = 0.03F;  ///< what is left of the light when nothing more is told apart
constexpr float kPalest = 0.45F;

PointColour mix(const PointColour& a, const PointColour& b, float t) {
  return {a.red + t * (b.red - a.red), a.green + t * (b.green - a.green), a.blue + t * (b.blue - a.blue)};
}

float part_of(double share) { return static_cast<float>(std::clamp(share, 0.0, 1.0)); }

}  // namespace

PictureShade::PictureShade(const PictureScene& scene, const ViewPlane& plane, double depth_mm)
    : scene_(scene), depth_mm_(depth_mm) {
  const SpaceVector key = unit(-0.55 * plane.right + 0.75 * plane.up + 0.7 * plane.eye);
  const SpaceVector shine = unit(key + plane.eye);
  for (const ScenePart& part : scene.parts()) {
    const SpaceFrame& f = part.place;
    lights_.push_back({f.into(plane.eye), f.into(key), f.into(shine), f.into(plane.up)});
  }
}

SpaceVector PictureShade::normal(const Meeting& m) const {
  const PicturedSolid& solid = *scene_.parts()[m.part].solid;
  const auto& [a, b, c] = solid.facets[m.facet].corners;
  const double u = m.u, v = m.v;
  const SpaceVector n =
      (1 - u - v) * solid.nodes[a].normal + u * solid.nodes[b].normal + v * solid.nodes[c].normal;
  const double size = length(n);
  return size > 0 ? (1 / size) * n : n;
}

float PictureShade::paleness(const Meeting& m) const { return kPalest * part_of(m.along_mm / depth_mm_); }

PictureShade::Layer PictureShade::glass(const Meeting& m) const {
  const Lights& light = lights_[m.part];
  SpaceVector n = normal(m);
  const double straight = std::abs(dot(n, light.eye));
  const double graze = std::pow(1 - std::min(1.0, straight), 3);
  Layer layer;
  layer.cover = static_cast<float>(0.17 + 0.42 * graze);
  const double lit = 0.5 + 0.5 * dot(n, light.key);
  layer.tint =
      mix(mix(kGlass, kGlassEdge, part_of(0.02 + 0.55 * (1 - lit) + 0.5 * graze)), kWhite, paleness(m));
  if (m.front) {
    const double gleam = std::pow(std::max(0.0, dot(n, light.shine)), 160);
    layer.tint = mix(layer.tint, kWhite, part_of(0.6 * gleam));
    layer.cover = std::min(0.9F, layer.cover + static_cast<float>(0.2 * gleam));
  }
  return layer;
}

PointColour PictureShade::brass(const Meeting& m) const {
  const Lights& light = lights_[m.part];
  const SpaceVector n = normal(m);
  const double head = std::max(0.0, dot(n, light.eye));
  const double key = std::max(0.0, dot(n, light.key));
  const double sky = 0.5 + 0.5 * dot(n, light.up);
  const double lit = 0.18 + 0.3 * head + 0.42 * key + 0.16 * sky;
  PointColour tint = lit < 0.7 ? mix(kBrassShade, kBrass, part_of(lit / 0.7))
                               : mix(kBrass, kBrassGleam, part_of((lit - 0.7) / 0.55));
  tint = mix(tint, kWhite, part_of(0.35 * std::pow(std::max(0.0, dot(n, light.shine)), 30)));
  return mix(tint, kWhite, 0.8F * paleness(m));
}

PointColour PictureShade::colour(const std::vector<Meeting>& met) const {
  PointColour sum = {0, 0, 0};
  float left = 1;
  const auto add = [&](const PointColour& tint, float share) {
    sum.red += share * tint.red, sum.green += share * tint.green, sum.blue += share * tint.blue;
  };
  for (const Meeting& m : met) {
    if (!scene_.parts()[m.part].glass) {
      add(brass(m), left);
      return sum;
    }
    const Layer layer = glass(m);
    add(layer.tint, left * layer.cover);
    left *= 1 - layer.cover;
    if (left < kSeenThrough) break;
  }
  add(kWhite, left);
  return sum;
}

std::uint64_t PictureShade::faces(const std::vector<Meeting>& met) const {
  // Seven layers of glass let so little through that an edge behind them need not be smooth.
  constexpr std::size_t kLayers = 7;
  std::uint64_t word = 1469598103934665603ULL;
  for (std::size_t i = 0; i < std::min(met.size(), kLayers); ++i) {
    const auto face = scene_.parts()[met[i].part].solid->facets[met[i].facet].face;
    word = (word ^ (met[i].part * 4096ULL + face)) * 1099511628211ULL;
  }
  return word;
}

}  // namespace prismwright
