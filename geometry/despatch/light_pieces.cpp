#include "core/light/lamp_body.h"
#include "core/light/light_colours.h"
#include "core/papers/light_paper.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/despatch/lens_csv.h"
#include "geometry/despatch/light_key.h"
#include "geometry/despatch/paper_piece.h"
#include "geometry/despatch/piece_files.h"
#include "geometry/despatch/ready_piece.h"

namespace prismwright {

namespace {

/// Raised when light_paper comes to be drawn otherwise.
constexpr int kLightPaperFormat = 1;

/// Why there can be no light report, at once; empty where there can.
std::string no_light(const LensValues& values) {
  const auto lamp = LampBody::make(values.lamp);
  if (!lamp) return lamp.problem().text;
  const auto colours = LensColours::make(values);
  return colours ? "" : colours.problem().text;
}

ReadyPiece report_paper(LensShop& shop) {
  PieceKey key = light_key(shop, "light paper");
  key << kLightPaperFormat << kPaperFilesFormat;
  add_values(key, shop.values(), {"brief"});
  key << shop.choice().inches << shop.choice().paper.has_value() << shop.choice().paper.value_or(Paper::a4);
  ReadyPiece ready;
  ready.piece = {DespatchGroup::light, "light-report", "Light report", key.text(), true, {}};
  ready.paper = [&shop](const Progress& progress) -> Outcome<Drawing> {
    const auto light = shop.light(progress);
    if (!light) return light.problem();
    return light_paper(shop.plan(), shop.proof(), **light, shop.words());
  };
  ready.write = [draw = ready.paper](const std::string& folder,
                                     const Progress& progress) -> Outcome<std::vector<std::string>> {
    const auto drawing = draw(progress);
    if (!drawing) return drawing.problem();
    PieceFiles files(folder);
    files.put_drawing("light/light-report", *drawing, false);
    return files.paths();
  };
  return ready;
}

ReadyPiece table(LensShop& shop, const std::string& name, const std::string& words,
                 std::string (*text)(const LightReport&)) {
  DespatchPiece piece{DespatchGroup::light, name, words, light_key(shop, name).text(), false, {}};
  return {std::move(piece),
          [&shop, text, path = "light/" + name + ".csv"](
              const std::string& folder, const Progress& progress) -> Outcome<std::vector<std::string>> {
            const auto light = shop.light(progress);
            if (!light) return light.problem();
            return one_file(folder, path, text(**light));
          }};
}

std::string beam_text(const LightReport& report) { return beam_csv(report.beam); }

}  // namespace

ReadyPieces light_pieces(LensShop& shop) {
  std::vector<ReadyPiece> pieces;
  pieces.push_back(report_paper(shop));
  pieces.push_back(table(shop, "beam", "Map of the beam", beam_text));
  pieces.push_back(table(shop, "flashes", "Flashes", flashes_csv));
  pieces.push_back(table(shop, "ranges", "Ranges", ranges_csv));
  pieces.push_back(table(shop, "flux", "Where the light goes", flux_csv));
  const std::string reason = no_light(shop.values());
  for (ReadyPiece& ready : pieces) ready.piece.withheld = reason;
  return pieces;
}

}  // namespace prismwright
