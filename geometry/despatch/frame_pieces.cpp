#include <algorithm>
#include <map>

#include <fmt/format.h>
#include <TopLoc_Location.hxx>

#include "core/frame/cut_words.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"
#include "geometry/despatch/step_key.h"
#include "geometry/step_writer.h"

namespace prismwright {

namespace {

/// Parts of one make for which a drawing in the plane is not enough.
struct MachinedShape {
  std::vector<std::string> marks;  ///< the first gives the file its name
  std::string key;
};

class MachinedShapes {
 public:
  explicit MachinedShapes(const FramePlan& frame) {
    for (const FlatPart& part : frame.flats)
      if (part.making == PartMaking::machined || (part.making == PartMaking::cut_flat && !part.bores.empty()))
        add(part);
    for (const TurnedBar& part : frame.bars)
      if (part.making == PartMaking::machined) add(part);
    for (const RoundPart& part : frame.rounds)
      if (part.making == PartMaking::machined) add(part);
  }
  [[nodiscard]] const std::vector<MachinedShape>& shapes() const { return shapes_; }

 private:
  static std::string likeness(const FlatPart& part) { return "flat " + part.shape_key; }
  static std::string likeness(const RoundPart& part) { return "round " + part.shape_key; }
  static std::string likeness(const TurnedBar& part) {
    PieceKey key("bar", 1);
    key << part.shape.shape_key;
    for (const PlateBore& bore : part.bores)
      key << bore.from.x << bore.from.y << bore.from.z << bore.along.x << bore.along.y << bore.along.z
          << bore.depth_mm << bore.diameter_mm;
    return key.text();
  }

  template <class Part>
  void add(const Part& part) {
    const auto [place, is_new] = known_.try_emplace(likeness(part), shapes_.size());
    if (is_new) {
      PieceKey key = step_key("machined part");
      key << part.mark;
      add_solid(key, part);
      shapes_.push_back({{}, key.text()});
    }
    shapes_[place->second].marks.push_back(part.mark);
  }

  std::map<std::string, std::size_t> known_;
  std::vector<MachinedShape> shapes_;
};

Outcome<std::vector<std::string>> write_machined(LensShop& shop, const std::string& mark,
                                                 const std::string& path, const std::string& folder,
                                                 const Progress& progress) {
  const auto brass = shop.metal(progress);
  if (!brass) return brass.problem();
  const auto body = std::ranges::find(**brass, mark, &FrameBody::mark);
  // Where the part's own frame is the file's.
  return one_file(folder, path, step_text({mark, body->shape.Located(TopLoc_Location()), PartStuff::metal}));
}

Outcome<std::vector<std::string>> write_frame(LensShop& shop, const std::string& folder,
                                              const Progress& progress) {
  const auto brass = shop.metal(progress);
  if (!brass) return brass.problem();
  std::vector<StepPart> parts;
  for (const FrameBody& body : **brass) parts.push_back({body.mark, body.shape, PartStuff::metal});
  return one_file(folder, "frame/frame.step", step_text("frame", parts));
}

std::vector<std::string> marks_of(const FramePlan& frame) {
  std::vector<std::string> marks;
  const auto take = [&](const auto& parts) {
    for (const auto& part : parts) marks.push_back(part.mark);
  };
  take(frame.ribs);
  take(frame.rings);
  take(frame.flats);
  take(frame.bars);
  take(frame.rounds);
  return marks;
}

ReadyPiece whole_frame(LensShop& shop) {
  PieceKey key = step_key("frame");
  key << shop.metal_sum();
  DespatchPiece piece{DespatchGroup::frame, "frame", "The whole frame",
                      key.text(),           false,   shop.clashes().why(marks_of(shop.frame()))};
  return {std::move(piece), [&shop](const std::string& folder, const Progress& progress) {
            return write_frame(shop, folder, progress);
          }};
}

}  // namespace

ReadyPieces frame_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  if (marks_of(shop.frame()).empty()) return pieces;
  pieces.push_back(whole_frame(shop));
  const MachinedShapes machined(shop.frame());
  for (const MachinedShape& shape : machined.shapes()) {
    const std::string name = safe_stem(fmt::format("{}_x{}", shape.marks.front(), shape.marks.size()));
    DespatchPiece piece{
        DespatchGroup::frame,           name, "Machined: " + short_marks(shape.marks), shape.key, false,
        shop.clashes().why(shape.marks)};
    const auto write = [&shop, mark = shape.marks.front(), path = "frame/" + name + ".step"](
                           const std::string& folder, const Progress& progress) {
      return write_machined(shop, mark, path, folder, progress);
    };
    pieces.push_back({std::move(piece), write});
  }
  return pieces;
}

}  // namespace prismwright
