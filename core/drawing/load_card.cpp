#include "core/drawing/load_card.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/drawing/card_pages.h"
#include "core/drawing/title_block.h"
#include "core/drawing/traveller_parts.h"
#include "core/drawing/vessel_view.h"
#include "core/works/works_cautions.h"

namespace prismwright {

namespace {

constexpr double kRow_mm = CardPages::kRow_mm;
constexpr double kTitle_mm = 6;
constexpr int kShelvesTogether = 6;
constexpr double kMm3PerCm3 = 1000;
constexpr double kGramPerKg = 1000;

using Cells = std::vector<std::string>;

std::string hours(double h) { return fmt::format("{:.1f}", h); }

std::string mass(double g) {
  return g < 10               ? fmt::format("{:.2f} g", g)
         : g < 2 * kGramPerKg ? fmt::format("{:.1f} g", g)
                              : fmt::format("{:.0f} g", g);
}

/// One card while it is being written.
class CardWriter {
 public:
  CardWriter(const LoadPlan& plan, std::size_t index, const std::vector<LoadPiece>& pieces,
             const WorksSettings& works, const LoadCardWords& words)
      : plan_(plan),
        index_(index),
        load_(plan.loads.at(index)),
        pieces_(pieces),
        works_(works),
        words_(words),
        cure_(plan_cure(works, load_.thickest_mm)),
        pages_(words.paper) {}

  Drawing write() {
    title();
    weighing();
    moulds();
    vessel();
    steps();
    pages_.heading("To know", height_of_lines({cure_.notes.front()}, pages_.wide()));
    std::vector<std::string> known = cure_.notes;
    known.push_back(way_up_note(pieces_));
    pages_.lines(known);
    cautions();
    return finished();
  }

 private:
  void title() {
    const std::string words = fmt::format("Load {} of {}", index_ + 1, plan_.loads.size());
    const PaperPoint place = pages_.place();
    pages_.maker().write({words, {place.x, place.y - kTitle_mm}, kTitle_mm, Anchor::left, false, true});
    pages_.skip(kTitle_mm + 3.5);
    pages_.lines(
        {fmt::format("{} castings of {:.1f} cm3 in all; thickest section {:.1f} mm, thinnest {:.1f} mm; moulds "
                     "fill {:.0f} % of the vessel.",
                     load_.places.size(), load_.masses.castings_mm3 / kMm3PerCm3, load_.thickest_mm,
                     load_.thinnest_mm, 100 * load_.filled_share)});
  }

  void weighing() {
    pages_.heading("Weigh out", 3 * kRow_mm);
    const LoadMasses& masses = load_.masses;
    const auto named = [](const char* what, const std::string& name) {
      return name.empty() ? std::string(what) : fmt::format("{}: {}", what, name);
    };
    std::vector<Cells> rows = {
        {named("Resin", works_.resin), mass(masses.resin_g), "", works_.resin_batch, ""},
        {fmt::format("Initiator, {:g} % of the resin", works_.initiator_percent), mass(masses.initiator_g)}};
    if (masses.tint_g > 0) {
      rows.push_back(
          {named(fmt::format("Tint, {:g} % of the resin", works_.tint_percent).c_str(), works_.tint_name),
           mass(masses.tint_g)});
    }
    pages_.table({0.4, 0.15, 0.15, 0.18, 0.12}, {"what", "mass", "weighed", "lot", "by"}, rows);
    pages_.skip(1);
    pages_.lines(
        {fmt::format("Resin is {:g} % over the castings' own volume, for shrinkage, gate and vents, at {:g} "
                     "g/cm3.",
                     works_.resin_head_percent, works_.resin_density_g_cm3)});
  }

  [[nodiscard]] std::string shelves_of(std::size_t piece) const {
    std::set<int> shelves;
    for (const LoadPlace& place : load_.places)
      if (place.piece == piece) shelves.insert(place.shelf + 1);
    std::string words;
    for (const int shelf : shelves) words += (words.empty() ? "" : ", ") + std::to_string(shelf);
    return words;
  }
  [[nodiscard]] std::string stands_of(std::size_t piece) const {
    std::set<std::string> stands;
    for (const LoadPlace& place : load_.places)
      if (place.piece == piece) stands.insert(name_of(place.upward));
    std::string words;
    for (const std::string& stand : stands) words += (words.empty() ? "" : ", ") + stand;
    return words;
  }

  void moulds() {
    pages_.heading("Moulds", 2 * kRow_mm);
    std::vector<Cells> rows;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const int count = load_.count_of(i);
      if (count == 0) continue;
      const MouldBox& box = pieces_[i].mould;
      rows.push_back({std::to_string(i + 1), pieces_[i].name, std::to_string(count),
                      fmt::format("{:.0f} x {:.0f} x {:.0f}", box.length_mm, box.depth_mm, box.height_mm),
                      stands_of(i), shelves_of(i), mass(masses_for(pieces_[i].casting_mm3, works_).resin_g)});
    }
    pages_.table({0.06, 0.2, 0.1, 0.2, 0.18, 0.1, 0.16},
                 {"no.", "piece", "moulds", "outside mm", "set down", "shelf", "resin each"}, rows);
    pages_.skip(1);
    pages_.lines(
        {"Gate and vents stay on top: where a mould's own sheet has another side up than this list, the "
         "sheet wins."});
  }

  void vessel() {
    std::vector<std::string> names;
    std::vector<std::string> numbers;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      names.push_back(pieces_[i].name);
      numbers.push_back(std::to_string(i + 1));
    }
    const VesselShelves shelves{load_, works_.vessel_diameter_mm, names, numbers};
    const int count = static_cast<int>(load_.shelf_foot_mm.size());
    for (int from = 0; from < count; from += kShelvesTogether) {
      const int to = std::min(count, from + kShelvesTogether);
      const VesselGrid grid = vessel_grid(to - from, pages_.wide());
      pages_.heading(
          fmt::format("In the vessel of {:g} mm inside, shelves seen from above", works_.vessel_diameter_mm),
          grid.height_mm() + 1);
      draw_shelves(pages_.maker(), shelves, from, to, pages_.place(), grid);
      pages_.skip(grid.height_mm());
    }
  }

  void steps() {
    std::vector<Cells> rows;
    for (const CureStep& step : cure_.steps)
      rows.push_back({step.what, hours(step.from_h), hours(step.to_h), hours(step.to_h - step.from_h)});
    pages_.heading(fmt::format("Steps, {} hours in all", hours(cure_.total_h)),
                   kRow_mm * static_cast<double>(rows.size() + 1));
    pages_.table({0.5, 0.08, 0.08, 0.08, 0.16, 0.1},
                 {"what", "from h", "to h", "takes h", "date and hour", "by"}, rows);
    pages_.skip(1);
    std::vector<std::string> lines;
    for (const CureStep& step : cure_.steps) {
      if (step.act == CureAct::cure) lines.push_back("Cure: " + step.source + ".");
      if (step.act == CureAct::hold) lines.push_back("Holding by the thickest section: " + step.source + ".");
      if (step.act == CureAct::cool) lines.push_back("Cooling: " + step.source + ".");
    }
    pages_.lines(lines);
  }

  void cautions() {
    std::vector<std::string> lines;
    for (const Caution& caution : casting_cautions())
      lines.push_back(fmt::format("{}. {}", caution.head, caution.text));
    double high = 0;
    for (const std::string& line : lines) high += height_of_lines({line}, pages_.wide()) + 1;
    pages_.heading("Cautions", high);
    pages_.lines(lines);
  }

  Drawing finished() {
    Drawing drawing;
    drawing.title = fmt::format("{}: load {} of {}", words_.title, index_ + 1, plan_.loads.size());
    drawing.date = words_.date;
    std::vector<SheetMaker> makers = pages_.take();
    for (std::size_t i = 0; i < makers.size(); ++i) {
      draw_title_block(
          makers[i],
          TitleCells{
              clean_words(words_.title),
              "Load card",
              {{{"load", fmt::format("{} of {}", index_ + 1, plan_.loads.size())},
                {"castings", std::to_string(load_.places.size())},
                {"thickest", fmt::format("{:.1f} mm", load_.thickest_mm)},
                {"load no. in book", ""},
                {"vessel", fmt::format("{:g} x {:g} mm", works_.vessel_diameter_mm, works_.vessel_height_mm)},
                {"date", words_.date},
                {"hours", hours(cure_.total_h)},
                {"sheet", fmt::format("{} of {}", i + 1, makers.size())}}}});
      drawing.sheets.push_back(makers[i].take());
    }
    return drawing;
  }

  const LoadPlan& plan_;
  std::size_t index_;
  const PlannedLoad& load_;
  const std::vector<LoadPiece>& pieces_;
  const WorksSettings& works_;
  const LoadCardWords& words_;
  CurePlan cure_;
  CardPages pages_;
};

}  // namespace

Drawing load_card(const LoadPlan& plan, std::size_t load, const std::vector<LoadPiece>& pieces,
                  const WorksSettings& works, const LoadCardWords& words) {
  return CardWriter(plan, load, pieces, works, words).write();
}

}  // namespace prismwright
