#include "geometry/despatch/pack.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <new>
#include <stdexcept>

#include <fmt/format.h>

#include "core/lens/quantities.h"
#include "core/works/works_checks.h"
#include "geometry/despatch/lens_figures.h"
#include "geometry/despatch/pack_folder.h"
#include "geometry/despatch/pack_lock.h"
#include "geometry/despatch/pack_manifest.h"
#include "geometry/despatch/sha256.h"
#include "geometry/despatch/start_page.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

namespace fs = std::filesystem;

/// Until the list of pieces stands, this share of the time has gone (as measured on the fourth-order sample).
constexpr double kListed = 0.35;

/// What a piece of each group takes to make, next to the others, in the order of the groups; and to copy.
constexpr std::array<double, kDespatchGroups> kCost = {0.1,  0.5, 5,    0.5, 0.02, 0.6, 0.3,
                                                       0.05, 3,   0.02, 2,   0.1,  1.5};
constexpr double kCopyCost = 0.02;

Problem stopped() { return {Trouble::stopped, "stopped", "", "The pack was stopped; nothing of it was left."}; }

Done check_ask(const DespatchDesk& desk, const PackAsk& ask) {
  if (ask.packs_folder.empty())
    return request_problem("folder", "", "No folder for the packs was named. Choose one.");
  return check_pack_date(desk.choice().date);
}

/// Making one pack, from the list of its pieces to its place among the others.
class Packing {
 public:
  Packing(DespatchDesk& desk, const PackAsk& ask, const Progress& progress)
      : desk_(desk), ask_(ask), progress_(progress) {}

  Outcome<PackReport> run() {
    if (const Done sound = check_ask(desk_, ask_); !sound) return sound.problem();
    if (const Done ready = ready_folder(ask_.packs_folder); !ready) return ready.problem();
    const auto lock = lock_packs(ask_.packs_folder, book());
    if (!lock) return lock.problem();
    if (!lock->holds())
      report_.notes.push_back(
          fmt::format("The disk of {} knows no locks: see to it that no other program packs "
                      "this book into it at the same time.",
                      ask_.packs_folder));
    clear_leftovers(ask_.packs_folder, book());
    if (const Done listed = list_pieces(); !listed) return listed.problem();
    auto folder = WorkFolder::open(ask_.packs_folder, free_pack_name(ask_.packs_folder, book(), date()));
    if (!folder) return folder.problem();
    if (const Done packed = pack_pieces(folder->path()); !packed) return packed.problem();
    if (const Done told = write_texts(*folder); !told) return told.problem();
    if (!goes_on(progress_, 1, "")) return stopped();
    auto place = folder->keep(book(), date());
    if (!place) return place.problem();
    report_.folder = std::move(*place);
    return std::move(report_);
  }

 private:
  [[nodiscard]] const std::string& book() const { return desk_.source().book_name; }
  [[nodiscard]] const std::string& date() const { return desk_.choice().date; }
  [[nodiscard]] PackManifest& manifest() { return report_.manifest; }

  Done list_pieces() {
    const auto pieces = desk_.pieces(
        [&](double share, std::string_view what) { return goes_on(progress_, kListed * share, what); });
    if (!pieces) return pieces.problem();
    for (const DespatchPiece& piece : *pieces)
      if (ask_.groups.empty() || std::ranges::find(ask_.groups, piece.group) != ask_.groups.end())
        wanted_.push_back(piece);
    if (wanted_.empty())
      return request_problem("nothing", "",
                             "Nothing of what was asked for goes out of this book: ask for more groups.");
    last_ = last_pack(ask_.packs_folder, book());
    begin_manifest();
    return {};
  }

  void begin_manifest() {
    PackManifest& now = manifest();
    const LensValues& values = desk_.source().plan->values;
    now.book = book();
    now.title = values.brief.title;
    now.date = date();
    now.estimate = desk_.choice().estimate;
    now.number = last_ ? last_->manifest.number + 1 : 1;
    for (const Quantity& quantity : quantities())
      now.values.emplace_back(quantity.key, value_text(values, quantity.key));
    now.revision = desk_.choice().revision;
    if (now.revision.empty())
      now.revision =
          !last_ || differs() ? next_revision(last_ ? last_->manifest.revision : "") : last_->manifest.revision;
    desk_.set_revision(now.revision);
  }

  /// Whether any piece came, went, or will be made anew for a change.
  [[nodiscard]] bool differs() const {
    for (const DespatchPiece& piece : wanted_) {
      const PackedPiece* known = find_packed(last_->manifest, piece);
      if (!known || known->piece.key != piece.key) return true;
      // What was refused when it was made is withheld in the last pack alone: it will be refused again.
      const bool refused_then = known->files.empty() && piece.withheld.empty();
      if (!refused_then && known->piece.withheld != piece.withheld) return true;
    }
    return std::ranges::any_of(last_->manifest.pieces, [&](const PackedPiece& packed) {
      const auto same_group = [&](const DespatchPiece& piece) { return piece.group == packed.piece.group; };
      const auto same = [&](const DespatchPiece& piece) {
        return same_group(piece) && piece.name == packed.piece.name;
      };
      return std::ranges::any_of(wanted_, same_group) && std::ranges::none_of(wanted_, same);
    });
  }

  /// The piece as it lies in an earlier pack, if it is still what it would be.
  [[nodiscard]] const PackedPiece* kept_piece(const DespatchPiece& piece) const {
    if (!last_ || state_of(piece, &last_->manifest) != DespatchState::fresh) return nullptr;
    const PackedPiece* known = find_packed(last_->manifest, piece);
    return known && piece.group == DespatchGroup::estimate && is_over(*known) ? nullptr : known;
  }

  /// Whether an offer of an earlier pack no longer stands on the day of this one.
  [[nodiscard]] bool is_over(const PackedPiece& offer) const {
    const auto made = read_day(offer.date);
    const auto today = read_day(date());
    if (!made || !today) return true;
    const std::chrono::days passed = std::chrono::sys_days(*today) - std::chrono::sys_days(*made);
    return passed.count() < 0 || passed.count() > desk_.choice().estimate.valid_days;
  }

  [[nodiscard]] double cost_of(const DespatchPiece& piece) const {
    if (!piece.withheld.empty()) return 0;
    return kept_piece(piece) ? kCopyCost : kCost.at(static_cast<std::size_t>(piece.group));
  }

  Done pack_pieces(const std::string& folder) {
    double whole = 0;
    std::vector<DespatchPiece> anew;
    for (const DespatchPiece& piece : wanted_) {
      whole += cost_of(piece);
      if (piece.withheld.empty() && !kept_piece(piece)) anew.push_back(piece);
    }
    desk_.expect(anew);
    double gone = 0;
    for (const DespatchPiece& piece : wanted_) {
      const auto share = [&](double part) {
        return kListed + (1 - kListed) * (gone + part * cost_of(piece)) / std::max(whole, kCopyCost);
      };
      const Progress own = [&](double part, std::string_view) {
        return goes_on(progress_, share(part), piece.words);
      };
      if (!own(0, "")) return stopped();
      if (const Done packed = pack_piece(piece, folder, own); !packed) return packed;
      gone += cost_of(piece);
    }
    return {};
  }

  Done pack_piece(const DespatchPiece& piece, const std::string& folder, const Progress& progress) {
    if (!piece.withheld.empty()) return withhold(piece, piece.withheld);
    if (const PackedPiece* known = kept_piece(piece)) {
      auto files = copied(*known, folder);
      if (files) {
        manifest().pieces.push_back({piece, known->revision, known->date, std::move(*files), {}, known->notes});
        ++report_.kept;
        return {};
      }
      if (files.problem().code == "write") return files.problem();
      report_.notes.push_back(files.problem().text + " " + piece.words + " was made anew.");
    }
    desk_.forget_notes();
    const auto paths = desk_.write(piece, folder, progress);
    // What cannot be made is told, and the rest goes out.
    if (!paths && paths.problem().trouble == Trouble::request) {
      const auto notes = desk_.notes();
      report_.notes.insert(report_.notes.end(), notes.begin(), notes.end());
      return withhold(piece, paths.problem().text);
    }
    if (!paths) return paths.problem().trouble == Trouble::stopped ? stopped() : paths.problem();
    auto files = summed(*paths, folder);
    if (!files) return files.problem();
    manifest().pieces.push_back({piece, manifest().revision, date(), std::move(*files), {}, desk_.notes()});
    ++report_.made_anew;
    return {};
  }

  Done withhold(DespatchPiece piece, const std::string& why) {
    piece.withheld = why;
    report_.withheld.push_back(piece.words + ": " + why);
    // An offer without figures is left out of many packs: nothing is amiss with the lens.
    if (piece.group != DespatchGroup::estimate) report_.well = false;
    manifest().pieces.push_back({std::move(piece), manifest().revision, date(), {}, {}});
    return {};
  }

  /// The files of a piece copied from where they lie. Refused with code "damaged" where one is not what it was.
  [[nodiscard]] Outcome<std::vector<PackedFile>> copied(const PackedPiece& known,
                                                        const std::string& folder) const {
    const std::string& from = known.lies_in.empty() ? last_->folder : known.lies_in;
    for (const PackedFile& file : known.files) {
      const fs::path to = fs::path(folder) / file.path;
      if (const Done ready = ready_folder(to.parent_path().string()); !ready) return ready.problem();
      const auto sum = copy_with_sum((fs::path(from) / file.path).string(), to.string());
      if (!sum) return sum.problem();
      if (sum->sha256 != file.sha256)
        return file_problem(
            "damaged", file.path,
            fmt::format("{} in the last pack is not what it was when it was packed.", file.path));
    }
    return known.files;
  }

  [[nodiscard]] static Outcome<std::vector<PackedFile>> summed(const std::vector<std::string>& paths,
                                                               const std::string& folder) {
    std::vector<PackedFile> files;
    for (const std::string& path : paths) {
      const auto sum = sum_of_file((fs::path(folder) / path).string());
      if (!sum) return sum.problem();
      files.push_back({path, sum->bytes, sum->sha256});
    }
    return files;
  }

  Done write_texts(WorkFolder& folder) {
    finish_report();
    std::vector<std::string> paths;
    std::string sums;
    for (const PackedPiece& packed : manifest().pieces) {
      for (const PackedFile& file : packed.files) {
        paths.push_back(file.path);
        sums += fmt::format("{}  {}\n", file.sha256, file.path);
      }
    }
    const auto put = [&](const char* name, const std::string& text) {
      paths.emplace_back(name);
      sums += fmt::format("{}  {}\n", sha256_of(text), name);
      return write_whole((fs::path(folder.path()) / name).string(), text);
    };
    if (Done done = put(kManifestName, manifest_text(manifest())); !done) return done;
    if (Done done = put(kStartPageName, start_page(report_)); !done) return done;
    if (Done done = put(kChangesName, changes_text(report_)); !done) return done;
    paths.emplace_back(kSumsName);
    folder.keep_only(paths);
    return write_whole((fs::path(folder.path()) / kSumsName).string(), sums);
  }

  void finish_report() {
    manifest().figures = desk_.figures();
    if (last_ && light_is_kept())
      manifest().light_figures = last_->manifest.light_figures;
    else if (has_light())
      manifest().light_figures = desk_.light_figures();
    for (const auto* figures : {&manifest().figures, &manifest().light_figures})
      for (const auto& [caption, words] : *figures)
        if (words.starts_with(kNotWell)) report_.well = false;
    if (last_) report_.changes = changes_since(last_->manifest, manifest());
    for (const PackedPiece& packed : manifest().pieces)
      report_.notes.insert(report_.notes.end(), packed.notes.begin(), packed.notes.end());
  }

  /// The light's first piece that goes out, or null.
  [[nodiscard]] const PackedPiece* light_piece() const {
    const auto found = std::ranges::find_if(report_.manifest.pieces, [](const PackedPiece& packed) {
      return packed.piece.group == DespatchGroup::light && !packed.files.empty();
    });
    return found == report_.manifest.pieces.end() ? nullptr : &*found;
  }
  [[nodiscard]] bool has_light() const { return light_piece() != nullptr; }
  /// The light is as it was in the last pack.
  [[nodiscard]] bool light_is_kept() const {
    const PackedPiece* packed = light_piece();
    return packed && kept_piece(packed->piece);
  }

  DespatchDesk& desk_;
  const PackAsk& ask_;
  const Progress& progress_;
  std::vector<DespatchPiece> wanted_;
  std::optional<LastPack> last_;
  PackReport report_;
};

}  // namespace

Done check_pack_date(const std::string& date) {
  if (read_day(date)) return {};
  return request_problem(
      "date", date, fmt::format("The date \"{}\" is no day of the form 2026-03-31. Give one like that.", date));
}

Outcome<PackReport> write_pack(DespatchDesk& desk, const PackAsk& ask, const Progress& progress) {
  try {
    return Packing(desk, ask, progress).run();
  } catch (const std::bad_alloc&) {
    return file_problem(
        "memory", ask.packs_folder,
        "Memory ran out while the pack was made; nothing of it was left. Close other programs and "
        "pack again.");
  } catch (const std::exception& error) {
    return file_problem("write", ask.packs_folder,
                        fmt::format("The pack could not be written to {} ({}); nothing of it was left.",
                                    ask.packs_folder, error.what()));
  }
}

}  // namespace prismwright
