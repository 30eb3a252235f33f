#include "geometry/despatch/lens_shop.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <functional>

#include <sys/resource.h>

#include "core/works/works_checks.h"
#include "geometry/despatch/despatch_keys.h"
#include "geometry/frame_exports.h"
#include "geometry/glass_by_zone.h"

namespace prismwright {

namespace {

/// Facets of pictures and line views keep within this share of the lens's size.
constexpr double kPictureChord_share = 2e-4;
constexpr double kGramsPerKilogram = 1000;
constexpr double kCm3PerMm3 = 1e-3;

/// This thread, and those that it starts, give way to others.
void step_back() {
  constexpr int kNice = 10;
  ::setpriority(PRIO_PROCESS, 0, kNice);  // on Linux, 0 is the calling thread
}

template <class Thing, class Make>
Outcome<const Thing*> once(std::shared_ptr<const Thing>& kept, const Make& make) {
  if (!kept) {
    auto made = make();
    if (!made) return made.problem();
    kept = std::make_shared<const Thing>(std::move(made).value());
  }
  return kept.get();
}

}  // namespace

/// Work on a thread of its own.
template <class Answer>
struct LensShop::Beside {
  ~Beside() {
    wanted = false;
    if (answer.valid()) answer.wait();
  }
  [[nodiscard]] Progress progress() {
    return [this](double done, std::string_view) {
      share = done;
      return wanted.load();
    };
  }
  /// Waits for the answer; a stop by `told` stops the work.
  Answer take(const Progress& told, std::string_view what) {
    using namespace std::chrono_literals;
    while (answer.wait_for(50ms) != std::future_status::ready) {
      if (!goes_on(told, share, what)) wanted = false;
    }
    return answer.get();
  }

  std::atomic<bool> wanted = true;
  std::atomic<double> share = 0;
  std::shared_future<Answer> answer;
};

LensShop::LensShop(DespatchSource source, PaperChoice choice)
    : source_(std::move(source)), choice_(std::move(choice)) {}

LensShop::~LensShop() {
  // All are told before any is waited for.
  if (light_work_) light_work_->wanted = false;
  for (auto& [eye, work] : picture_work_) work->wanted = false;
}

HouseWords LensShop::words() const {
  HouseWords words = house_words(values(), choice_.date, choice_.revision);
  words.paper = choice_.paper;
  words.inches = choice_.inches;
  return words;
}

HouseWords LensShop::undated_words() const {
  HouseWords plain = words();
  plain.date.clear();
  plain.revision.clear();
  return plain;
}

const FramePlan& LensShop::frame() {
  if (!source_.frame) source_.frame = std::make_shared<const FramePlan>(plan_frame(plan()));
  return *source_.frame;
}

const std::vector<Landing>& LensShop::landings() {
  if (!landings_) landings_ = prismwright::landings(frame(), plan());
  return *landings_;
}

const std::string& LensShop::glass_sum() {
  if (glass_sum_.empty()) {
    PieceKey key("glass", 1);
    add_glass(key, plan());
    glass_sum_ = key.text();
  }
  return glass_sum_;
}

const std::string& LensShop::metal_sum() {
  if (metal_sum_.empty()) {
    PieceKey key("metal", 1);
    add_metal(key, frame());
    metal_sum_ = key.text();
  }
  return metal_sum_;
}

const WorksKinds& LensShop::kinds() {
  if (!kinds_) kinds_ = works_kinds(plan());
  return *kinds_;
}

std::chrono::sys_days LensShop::day() const {
  return read_day(choice_.date).value_or(std::chrono::year_month_day{});
}

WorksReckoning LensShop::reckoning(std::chrono::sys_days today) {
  WorksFacts facts;
  facts.brass_kg = brass_kg();
  facts.today = today;
  return reckon_works(plan(), kinds(), source_.ledger, source_.log, facts);
}

const Proof& LensShop::proof() {
  if (!proof_) proof_ = prove(plan().section);
  return *proof_;
}

const BenchPlan* LensShop::bench() {
  if (!bench_tried_) {
    bench_tried_ = true;
    if (auto made = bench_plan(plan())) bench_ = std::move(made).value();
  }
  return bench_ ? &*bench_ : nullptr;
}

const StageByMark& LensShop::stages() {
  if (!stages_) stages_ = stages_from(source_.ledger);
  return *stages_;
}

Outcome<const LensBodies*> LensShop::bodies(const Progress& progress) {
  return once(source_.bodies, [&] { return BodyShop().make(plan(), progress); });
}

Outcome<const std::vector<FrameBody>*> LensShop::metal(const Progress& progress) {
  return once(source_.metal, [&] { return make_frame(frame(), progress); });
}

Outcome<const std::vector<Clearance>*> LensShop::clearances(const Progress& progress) {
  if (source_.clearances) return source_.clearances.get();
  const auto glass = bodies(progress);
  if (!glass) return glass.problem();
  const auto brass = metal(progress);
  if (!brass) return brass.problem();
  return once(source_.clearances, [&] { return find_clearances(plan(), **glass, frame(), **brass, progress); });
}

const ClashList& LensShop::clashes() {
  if (!clashes_) clashes_ = source_.clearances ? ClashList(*source_.clearances) : ClashList();
  return *clashes_;
}

Outcome<const Nest*> LensShop::nest(const Progress& progress) {
  return once(nest_, [&] { return nest_flats(frame().flats, values().frame, progress); });
}

Outcome<const std::vector<PanelFit>*> LensShop::fits(const Progress& progress) {
  return once(fits_, [&] { return fit_up(plan(), frame(), progress); });
}

Outcome<const PictureStudio*> LensShop::studio(const Progress& progress) {
  if (studio_) return studio_.get();
  const auto glass = bodies(progress);
  if (!glass) return glass.problem();
  const auto brass = metal(progress);
  if (!brass) return brass.problem();
  const double chord_mm = std::max(0.02, kPictureChord_share * 2 * values().brief.focal_mm);
  return once(studio_, [&] { return PictureStudio::of(picture_parts(**glass, **brass), chord_mm, progress); });
}

Outcome<std::shared_ptr<const PointImage>> LensShop::picture(PictureEye eye, const Progress& progress) {
  auto& kept = pictures_[{eye.azimuth_deg, eye.elevation_deg}];
  if (kept) return kept;
  if (picture_work_.contains({eye.azimuth_deg, eye.elevation_deg})) return picture_beside(eye, progress);
  const auto ready = studio(progress);
  if (!ready) return ready.problem();
  auto image = (*ready)->picture(eye, kPictureWide, kPictureHigh, progress);
  if (!image) return image.problem();
  kept = std::make_shared<const PointImage>(std::move(*image));
  return kept;
}

Outcome<std::shared_ptr<const PointImage>> LensShop::picture_beside(PictureEye eye, const Progress& progress) {
  const Eye name{eye.azimuth_deg, eye.elevation_deg};
  const auto work = std::move(picture_work_.extract(name).mapped());
  auto image = work->take(progress, "picture");
  if (!image) return image.problem();
  return pictures_[name] = std::make_shared<const PointImage>(std::move(*image));
}

void LensShop::begin_light() {
  if (light_ || no_light_ || light_work_) return;
  light_work_ = std::make_unique<Beside<Outcome<LightReport>>>();
  light_work_->answer = std::async(std::launch::async, [work = light_work_.get(), plan = source_.plan] {
                          step_back();
                          return light_report(*plan, {}, work->progress());
                        }).share();
}

void LensShop::begin_beside(bool light, const std::vector<PictureEye>& eyes) {
  if (light) begin_light();
  const auto ready = eyes.empty() ? Outcome<const PictureStudio*>(nullptr) : studio();
  if (!ready || *ready == nullptr) return;  // picture() tells why there is none
  // One after the other, the light first, so that they leave the other work a core.
  std::function<void()> wait = [] {};
  if (light_work_) wait = [before = light_work_->answer] { before.wait(); };
  for (const PictureEye& eye : eyes) {
    const Eye name{eye.azimuth_deg, eye.elevation_deg};
    const auto known = pictures_.find(name);
    if ((known != pictures_.end() && known->second) || picture_work_.contains(name)) continue;
    auto& work = picture_work_[name] = std::make_unique<Beside<Outcome<PointImage>>>();
    work->answer = std::async(std::launch::async, [work = work.get(), wait, eye, from = *ready] {
                     step_back();
                     wait();
                     return from->picture(eye, kPictureWide, kPictureHigh, work->progress());
                   }).share();
    wait = [before = work->answer] { before.wait(); };
  }
}

Outcome<const LightReport*> LensShop::light(const Progress& progress) {
  if (light_) return light_.get();
  if (no_light_) return *no_light_;
  begin_light();
  const auto work = std::move(light_work_);
  auto answer = work->take(progress, "light");
  if (answer) {
    light_ = std::make_shared<const LightReport>(std::move(answer).value());
    return light_.get();
  }
  if (answer.problem().trouble != Trouble::stopped) no_light_ = answer.problem();
  return answer.problem();
}

Outcome<KnownVolumes> LensShop::volumes(const Progress& progress) {
  const auto brass = metal(progress);
  if (!brass) return brass.problem();
  KnownVolumes known;
  for (const FrameBody& body : **brass) known[body.mark] = body.volume_mm3;
  return known;
}

KnownVolumes LensShop::drawn_volumes() { return prismwright::drawn_volumes(frame()); }

double LensShop::drawn_glass_kg() {
  double volume_mm3 = 0;
  for (const ZoneGlass& zone : glass_by_zone(plan())) volume_mm3 += zone.volume_mm3;
  return volume_mm3 * kCm3PerMm3 * values().material.density_g_cm3 / kGramsPerKilogram;
}

double LensShop::brass_kg() {
  return totals_of(parts_list(frame(), drawn_volumes())).brass_g / kGramsPerKilogram;
}

}  // namespace prismwright
