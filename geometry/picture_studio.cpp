#include "geometry/picture_studio.h"

#include <algorithm>
#include <map>
#include <new>
#include <optional>

#include <fmt/format.h>
#include <Standard_Failure.hxx>
#include <gp_Trsf.hxx>

#include "geometry/pictures/picture_edges.h"
#include "geometry/pictures/picture_paint.h"
#include "geometry/pictures/two_threads.h"
#include "geometry/pictures/visible_lines.h"

namespace prismwright {

namespace {

constexpr int kMostPoints = 8000;

Problem stopped() {
  return {Trouble::stopped, "stopped", "", "The picture was stopped before it was ready. Start it again."};
}

Problem undivided(const std::string& name, std::string_view why) {
  return request_problem("picture", name,
                         fmt::format("{}: its skin could not be divided into facets for a picture ({}). Leave "
                                     "pictures out, or change its measures by a hundredth of a millimetre.",
                                     name, why));
}

SpaceFrame frame_of(const gp_Trsf& place) {
  const auto along = [&](double x, double y, double z) {
    const gp_Vec v = gp_Vec(x, y, z).Transformed(place);
    return SpaceVector{v.X(), v.Y(), v.Z()};
  };
  const gp_XYZ& o = place.TranslationPart();
  return {{o.X(), o.Y(), o.Z()}, along(1, 0, 0), along(0, 1, 0), along(0, 0, 1)};
}

/// The shapes of the parts, each once, and the first part that has it.
struct OwnShapes {
  std::vector<std::size_t> first_part;
  std::vector<std::size_t> of_part;
};
OwnShapes own_shapes(const std::vector<PicturePart>& parts) {
  OwnShapes own;
  std::map<std::pair<const void*, int>, std::size_t> known;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const TopoDS_Shape& shape = parts[i].shape;
    const auto [at, fresh] =
        known.try_emplace({shape.TShape().get(), shape.Orientation()}, own.first_part.size());
    if (fresh) own.first_part.push_back(i);
    own.of_part.push_back(at->second);
  }
  return own;
}

/// A solid, or why it has none.
struct Divided {
  std::shared_ptr<const PicturedSolid> solid;
  std::string trouble;
};
Divided divided(const TopoDS_Shape& shape, double chord_mm) {
  try {
    if (shape.IsNull()) return {nullptr, "there is none"};
    return {std::make_shared<const PicturedSolid>(pictured_solid(shape.Located(TopLoc_Location()), chord_mm)),
            ""};
  } catch (const Standard_Failure& failure) {
    return {nullptr, failure.GetMessageString()};
  } catch (const std::bad_alloc&) {
    return {nullptr, "memory ran out"};
  }
}

}  // namespace

struct PictureStudio::Inside {
  double chord_mm;
  PictureScene scene;
};

PictureStudio::PictureStudio(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
PictureStudio::PictureStudio(PictureStudio&&) noexcept = default;
PictureStudio& PictureStudio::operator=(PictureStudio&&) noexcept = default;
PictureStudio::~PictureStudio() = default;

std::vector<PicturePart> picture_parts(const LensBodies& bodies, const std::vector<FrameBody>& metal) {
  std::vector<PicturePart> parts;
  for (const PrismBody& prism : bodies.prisms) parts.push_back({prism.mark, prism.shape, PartStuff::glass});
  for (const FrameBody& body : metal) parts.push_back({body.mark, body.shape, PartStuff::metal});
  return parts;
}

Outcome<PictureStudio> PictureStudio::of(const std::vector<PicturePart>& parts, double chord_mm,
                                         const Progress& progress) {
  if (!(chord_mm > 0)) {
    return request_problem(
        "chord", "picture",
        fmt::format("Facets cannot keep within {:g} mm of a face. Give more than 0.", chord_mm));
  }
  if (parts.empty())
    return request_problem("empty", "picture", "There is no solid to be pictured. Give one at least.");
  const OwnShapes own = own_shapes(parts);
  std::vector<Divided> solids(own.first_part.size());
  const auto divide = [&](std::size_t i) { solids[i] = divided(parts[own.first_part[i]].shape, chord_mm); };
  if (!in_two_threads(solids.size(), {progress, "facets", 0, 1}, divide)) return stopped();
  for (std::size_t i = 0; i < solids.size(); ++i) {
    if (!solids[i].solid) return undivided(parts[own.first_part[i]].name, solids[i].trouble);
  }
  std::vector<ScenePart> placed;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    placed.push_back({solids[own.of_part[i]].solid, frame_of(parts[i].shape.Location().Transformation()),
                      parts[i].stuff == PartStuff::glass});
  }
  return PictureStudio(std::unique_ptr<Inside>(new Inside{chord_mm, PictureScene(std::move(placed))}));
}

Outcome<PointImage> PictureStudio::picture(const PictureEye& eye, int wide, int high,
                                           const Progress& progress) const {
  if (std::min(wide, high) < 1 || std::max(wide, high) > kMostPoints) {
    return request_problem(
        "size", "picture",
        fmt::format("A picture of {} by {} points cannot be made. Ask for 1 to {} points a side.", wide, high,
                    kMostPoints));
  }
  const ViewPlane plane = view_plane(eye);
  const PictureFit fit = fit_picture(inside_->scene, plane, wide, high);
  auto image = painted_faces(inside_->scene, plane, fit, progress);
  if (!image || !draw_edges(inside_->scene, plane, fit, inside_->chord_mm, *image, progress)) return stopped();
  return *std::move(image);
}

Outcome<LineView> PictureStudio::lines(const PictureEye& eye, const Progress& progress) const {
  auto view = visible_lines(inside_->scene, view_plane(eye), inside_->chord_mm, progress);
  if (!view) return stopped();
  return *std::move(view);
}

}  // namespace prismwright
