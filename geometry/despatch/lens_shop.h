#pragma once

#include <chrono>
#include <future>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/drawing/house_words.h"
#include "core/frame/landings.h"
#include "core/frame/nest.h"
#include "core/frame/parts_list.h"
#include "core/light/bench_plan.h"
#include "core/light/light_report.h"
#include "core/optics/proof.h"
#include "core/works/works_reckoning.h"
#include "geometry/despatch/clash_list.h"
#include "geometry/despatch/despatch_desk.h"
#include "geometry/fit_up.h"
#include "geometry/picture_studio.h"

namespace prismwright {

/// Pictures of the whole lens.
inline constexpr int kPictureWide = 1200;
inline constexpr int kPictureHigh = 900;
inline constexpr PictureEye kThreeQuarters{30, 22};

/// One of the pictures that go out.
struct LensPicture {
  std::string name;
  PictureEye eye;
  std::string words;
};
const std::vector<LensPicture>& lens_pictures();

/// What the pieces of a pack are made of, each made when it is first asked for and then kept. What a source
/// brings is taken as it is. For one thread at a time.
class LensShop {
 public:
  LensShop(DespatchSource source, PaperChoice choice);
  ~LensShop();
  LensShop(const LensShop&) = delete;
  LensShop& operator=(const LensShop&) = delete;

  [[nodiscard]] const DespatchSource& source() const { return source_; }
  [[nodiscard]] const PaperChoice& choice() const { return choice_; }
  void set_revision(const std::string& revision) { choice_.revision = revision; }
  /// Nothing that is kept here depends on it.
  void set_choice(const PaperChoice& choice) { choice_ = choice; }
  [[nodiscard]] const LensPlan& plan() const { return *source_.plan; }
  [[nodiscard]] const LensValues& values() const { return source_.plan->values; }

  /// Of the papers as they are drawn; and without date and revision, as they count for keys.
  [[nodiscard]] HouseWords words() const;
  [[nodiscard]] HouseWords undated_words() const;

  const FramePlan& frame();
  /// How the prisms bear in the ribs.
  const std::vector<Landing>& landings();
  /// Sums over all prisms, and over all metal, for the keys of what comes of the whole lens.
  const std::string& glass_sum();
  const std::string& metal_sum();
  const WorksKinds& kinds();
  const std::vector<Master>& masters() { return kinds().masters; }
  /// Make list, loads, time and money as they stand on a day.
  WorksReckoning reckoning(std::chrono::sys_days today);
  /// The day of the papers.
  [[nodiscard]] std::chrono::sys_days day() const;
  const Proof& proof();
  /// Null where the laser cannot be aimed.
  const BenchPlan* bench();
  const StageByMark& stages();

  Outcome<const LensBodies*> bodies(const Progress& progress = {});
  Outcome<const std::vector<FrameBody>*> metal(const Progress& progress = {});
  Outcome<const std::vector<Clearance>*> clearances(const Progress& progress = {});
  const ClashList& clashes();  ///< of the clearances, which must have been found
  Outcome<const Nest*> nest(const Progress& progress = {});
  Outcome<const std::vector<PanelFit>*> fits(const Progress& progress = {});
  Outcome<const PictureStudio*> studio(const Progress& progress = {});
  /// Of the whole lens, kPictureWide by kPictureHigh points.
  Outcome<std::shared_ptr<const PointImage>> picture(PictureEye eye, const Progress& progress = {});
  Outcome<const LightReport*> light(const Progress& progress = {});
  /// Null until it has been worked out.
  [[nodiscard]] const LightReport* known_light() const { return light_.get(); }
  /// Begins the light, then these pictures of the whole lens, beside other work: they need no kernel once
  /// solids are meshed, which is done before this answers. Stopped when the shop closes.
  void begin_beside(bool light, const std::vector<PictureEye>& eyes);

  /// Volumes of metal parts by their solids, which are made where they are missing; and by closed forms alone,
  /// as they count for keys.
  Outcome<KnownVolumes> volumes(const Progress& progress = {});
  KnownVolumes drawn_volumes();
  double brass_kg();
  double drawn_glass_kg();  ///< by closed integrals

  /// What was told while pieces were made.
  std::vector<std::string> notes;

 private:
  DespatchSource source_;
  PaperChoice choice_;
  std::string glass_sum_;
  std::string metal_sum_;
  std::optional<std::vector<Landing>> landings_;
  std::optional<WorksKinds> kinds_;
  std::optional<Proof> proof_;
  std::optional<StageByMark> stages_;
  std::optional<ClashList> clashes_;
  bool bench_tried_ = false;
  std::optional<BenchPlan> bench_;
  std::shared_ptr<const Nest> nest_;
  std::shared_ptr<const std::vector<PanelFit>> fits_;
  std::shared_ptr<const PictureStudio> studio_;
  std::map<std::pair<double, double>, std::shared_ptr<const PointImage>> pictures_;  // by azimuth, elevation
  std::shared_ptr<const LightReport> light_;
  std::optional<Problem> no_light_;
  void begin_light();
  Outcome<std::shared_ptr<const PointImage>> picture_beside(PictureEye eye, const Progress& progress);
  template <class Answer>
  struct Beside;
  std::unique_ptr<Beside<Outcome<LightReport>>> light_work_;
  using Eye = std::pair<double, double>;
  std::map<Eye, std::unique_ptr<Beside<Outcome<PointImage>>>> picture_work_;
};

}  // namespace prismwright
