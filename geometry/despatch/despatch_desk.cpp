#include "geometry/despatch/despatch_desk.h"

#include <algorithm>
#include <array>
#include <new>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "geometry/despatch/lens_figures.h"
#include "geometry/despatch/lens_shop.h"
#include "geometry/despatch/ready_piece.h"

namespace prismwright {

namespace {

using MakePieces = ReadyPieces (*)(LensShop&);

/// In the order of DespatchGroup.
constexpr std::array<MakePieces, kDespatchGroups> kMakers = {
    prism_pieces, panel_pieces, lens_pieces,   frame_pieces,   cutting_pieces,  master_pieces, drawing_pieces,
    list_pieces,  light_pieces, record_pieces, dossier_pieces, estimate_pieces, picture_pieces};

/// Shares of the time that the pieces' list takes: solids and clearances, then the keys.
constexpr double kMeasured = 0.9;

Problem unknown_piece(const DespatchPiece& piece) {
  return request_problem(
      "piece", piece.name,
      fmt::format("{} {} is nothing that goes out of this book.", name_of(piece.group), piece.name));
}

/// What the kernel throws is told as a refusal of the thing in hand.
template <class Answer, class Work>
Answer guarded(const std::string& name, const Work& work) {
  try {
    return work();
  } catch (const Standard_Failure& failure) {
    return request_problem("solid", name,
                           fmt::format("{} could not be made ({}).", name, failure.GetMessageString()));
  } catch (const std::bad_alloc&) {
    return file_problem(
        "memory", name,
        fmt::format("Memory ran out while {} was made. Close other programs and pack again.", name));
  }
}

}  // namespace

struct DespatchDesk::Inside {
  Inside(DespatchSource source, PaperChoice choice) : shop(std::move(source), std::move(choice)) {}

  Done make_pieces(const Progress& progress) {
    if (made) return {};
    const Progress measuring = [&](double share, std::string_view what) {
      return goes_on(progress, kMeasured * share, what);
    };
    if (const auto clearances = shop.clearances(measuring); !clearances) return clearances.problem();
    ready.clear();
    for (std::size_t i = 0; i < kMakers.size(); ++i) {
      const double share = kMeasured + (1 - kMeasured) * static_cast<double>(i) / kDespatchGroups;
      if (!goes_on(progress, share, words_of(static_cast<DespatchGroup>(i))))
        return Problem{Trouble::stopped, "stopped", "", "The work was stopped."};
      auto pieces = kMakers[i](shop);
      if (!pieces) return pieces.problem();
      for (ReadyPiece& piece : *pieces) ready.push_back(std::move(piece));
    }
    made = true;
    return {};
  }

  void take(const PaperChoice& choice) {
    PaperChoice undated = choice;
    undated.date = shop.choice().date;
    undated.revision = shop.choice().revision;
    if (!(undated == shop.choice())) {
      made = false;
      ready.clear();
    }
    shop.set_choice(choice);
  }

  /// The piece of that name, made ready where it was not yet.
  Outcome<const ReadyPiece*> find(const DespatchPiece& piece, const Progress& progress) {
    if (const Done done = make_pieces(progress); !done) return done.problem();
    const auto found = std::ranges::find_if(ready, [&](const ReadyPiece& one) {
      return one.piece.group == piece.group && one.piece.name == piece.name;
    });
    if (found == ready.end()) return unknown_piece(piece);
    return &*found;
  }

  LensShop shop;
  std::vector<ReadyPiece> ready;
  bool made = false;
};

DespatchDesk::DespatchDesk(DespatchSource source, PaperChoice choice)
    : inside_(std::make_unique<Inside>(std::move(source), std::move(choice))) {}
DespatchDesk::~DespatchDesk() = default;
DespatchDesk::DespatchDesk(DespatchDesk&&) noexcept = default;

Outcome<std::vector<DespatchPiece>> DespatchDesk::pieces(const Progress& progress) {
  using Answer = Outcome<std::vector<DespatchPiece>>;
  return guarded<Answer>("the list of pieces", [&]() -> Answer {
    if (const Done done = inside_->make_pieces(progress); !done) return done.problem();
    std::vector<DespatchPiece> pieces;
    for (const ReadyPiece& ready : inside_->ready) pieces.push_back(ready.piece);
    return pieces;
  });
}

Outcome<Drawing> DespatchDesk::paper(const DespatchPiece& piece, const Progress& progress) {
  return guarded<Outcome<Drawing>>(piece.name, [&]() -> Outcome<Drawing> {
    const auto ready = inside_->find(piece, progress);
    if (!ready) return ready.problem();
    if (!(*ready)->paper) return unknown_piece(piece);
    return (*ready)->paper(progress);
  });
}

Outcome<std::vector<std::string>> DespatchDesk::write(const DespatchPiece& piece, const std::string& folder,
                                                      const Progress& progress) {
  using Answer = Outcome<std::vector<std::string>>;
  return guarded<Answer>(piece.name, [&]() -> Answer {
    const auto ready = inside_->find(piece, progress);
    if (!ready) return ready.problem();
    const std::string& withheld = (*ready)->piece.withheld;
    if (!withheld.empty()) return request_problem("withheld", piece.name, withheld);
    return (*ready)->write(folder, progress);
  });
}

void DespatchDesk::expect(std::span<const DespatchPiece> wanted) {
  const auto any = [&](const auto& is) {
    return std::ranges::any_of(wanted,
                               [&](const DespatchPiece& piece) { return piece.withheld.empty() && is(piece); });
  };
  const bool dossier = any([](const auto& piece) { return piece.group == DespatchGroup::dossier; });
  const bool light = any([](const auto& piece) { return piece.group == DespatchGroup::light; });
  std::vector<PictureEye> eyes;
  for (const LensPicture& picture : lens_pictures()) {
    const bool goes_out = any([&](const auto& piece) {
      return piece.group == DespatchGroup::pictures && piece.name == picture.name;
    });
    if (goes_out || (dossier && picture.eye == kThreeQuarters)) eyes.push_back(picture.eye);
  }
  inside_->shop.begin_beside(light || dossier, eyes);
}

void DespatchDesk::set_revision(const std::string& revision) { inside_->shop.set_revision(revision); }

void DespatchDesk::set_choice(const PaperChoice& choice) { inside_->take(choice); }

void DespatchDesk::forget_notes() { inside_->shop.notes.clear(); }

const std::vector<std::string>& DespatchDesk::notes() const { return inside_->shop.notes; }

std::vector<std::string> DespatchDesk::clashes() const { return inside_->shop.clashes().sentences(); }

std::vector<std::pair<std::string, std::string>> DespatchDesk::figures() const {
  return lens_figures(inside_->shop);
}

std::vector<std::pair<std::string, std::string>> DespatchDesk::light_figures() const {
  const LightReport* light = inside_->shop.known_light();
  return light ? prismwright::light_figures(*light) : std::vector<std::pair<std::string, std::string>>{};
}

const DespatchSource& DespatchDesk::source() const { return inside_->shop.source(); }

const PaperChoice& DespatchDesk::choice() const { return inside_->shop.choice(); }

}  // namespace prismwright
