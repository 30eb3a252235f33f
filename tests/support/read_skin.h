#pragma once

#include <array>
#include <map>
#include <string>
#include <utility>

#include <assimp/postprocess.h>
#include <assimp/scene.h>
#include <assimp/Importer.hpp>

namespace prismwright {

/// What another program reads out of a mesh file.
struct ReadSkin {
  std::string trouble;
  double volume_mm3 = 0;
  int facets = 0;
  int open_edges = 0;  ///< directed edges without exactly one partner the other way
};

inline ReadSkin read_skin(const std::string& path) {
  Assimp::Importer importer;
  const aiScene* scene = importer.ReadFile(path, aiProcess_Triangulate);
  if (!scene) return {importer.GetErrorString()};
  if (scene->mNumMeshes != 1) return {"it holds " + std::to_string(scene->mNumMeshes) + " meshes"};
  const aiMesh& mesh = *scene->mMeshes[0];
  using Place = std::array<float, 3>;
  const auto place = [&](unsigned i) {
    return Place{mesh.mVertices[i].x, mesh.mVertices[i].y, mesh.mVertices[i].z};
  };
  ReadSkin skin;
  std::map<std::pair<Place, Place>, int> runs;
  for (unsigned f = 0; f < mesh.mNumFaces; ++f) {
    if (mesh.mFaces[f].mNumIndices != 3) return {"a facet is no triangle"};
    std::array<Place, 3> p;
    for (std::size_t i = 0; i < 3; ++i) p[i] = place(mesh.mFaces[f].mIndices[i]);
    for (std::size_t i = 0; i < 3; ++i) ++runs[{p[i], p[(i + 1) % 3]}];
    const auto& [a, b, c] = p;
    skin.volume_mm3 += (double(a[0]) * (double(b[1]) * c[2] - double(b[2]) * c[1]) +
                        double(a[1]) * (double(b[2]) * c[0] - double(b[0]) * c[2]) +
                        double(a[2]) * (double(b[0]) * c[1] - double(b[1]) * c[0])) /
                       6;
    ++skin.facets;
  }
  for (const auto& [run, count] : runs) {
    const auto back = runs.find({run.second, run.first});
    if (count != 1 || back == runs.end() || back->second != 1) ++skin.open_edges;
  }
  return skin;
}

}  // namespace prismwright
