#include <algorithm>
#include <atomic>
#include <map>
#include <mutex>
#include <thread>

#include <fmt/format.h>

#include "geometry/mould.h"
#include "geometry/quiet_kernel.h"
#include "geometry/solid_check.h"

namespace prismwright {

namespace {

/// Whatever shapes a mould or its figures: the prism's shape, its master and the settings.
std::string key_of(const MouldOrder& order, const WorksSettings& s) {
  const double volume = order.master.IsNull() ? 0 : measured(order.master).volume_mm3;
  return fmt::format("{}|{:.6f}|{}|{}|{}|{}|{}|{}|{}|{}|{}", order.prism.shape_key, volume, s.mould_wall_mm,
                     s.mould_draft_deg, s.gate_mm, s.vent_mm, s.pin_mm, s.pin_gap_mm, s.resin_head_percent,
                     s.resin_density_g_cm3, s.vessel_height_mm);
}

Problem stopped(std::size_t made) {
  return {Trouble::stopped, "stopped", "",
          fmt::format("The work was stopped; {} moulds are made and kept.", made)};
}

}  // namespace

struct MouldShop::Inside {
  std::map<std::string, MouldAnswer> kept;
  int made_anew = 0;
};

namespace {

/// Two threads take the moulds that are wanted one after the other.
class Bench {
 public:
  Bench(std::vector<std::pair<std::string, const MouldOrder*>> wanted, const WorksSettings& settings,
        const Progress& progress, std::map<std::string, MouldAnswer>& kept)
      : wanted_(std::move(wanted)), settings_(settings), progress_(progress), kept_(kept) {}

  bool run() {
    std::thread helper([this] { work(); });
    work();
    helper.join();
    return !halted_;
  }
  [[nodiscard]] int made() const { return static_cast<int>(made_); }

 private:
  void work() {
    while (!halted_) {
      const std::size_t mine = next_++;
      if (mine >= wanted_.size()) return;
      if (!asked(*wanted_[mine].second)) return;
      MouldAnswer answer = make_mould(*wanted_[mine].second, settings_);
      const std::lock_guard lock(mutex_);
      kept_.emplace(wanted_[mine].first, std::move(answer));
      ++made_;
    }
  }

  bool asked(const MouldOrder& order) {
    const std::lock_guard lock(mutex_);
    const double share = static_cast<double>(made_) / static_cast<double>(wanted_.size());
    if (!halted_ && !goes_on(progress_, share, order.prism.mark)) halted_ = true;
    return !halted_;
  }

  std::vector<std::pair<std::string, const MouldOrder*>> wanted_;
  const WorksSettings& settings_;
  const Progress& progress_;
  std::map<std::string, MouldAnswer>& kept_;
  std::atomic<std::size_t> next_ = 0;
  std::atomic<bool> halted_ = false;
  std::size_t made_ = 0;
  std::mutex mutex_;
};

/// A kept answer under the name of the prism that now asks for it.
MouldAnswer renamed(MouldAnswer answer, const PlannedPrism& prism) {
  if (answer.problem && answer.problem->where == answer.mark) {
    const std::size_t at = answer.problem->text.find(answer.mark);
    if (at == 0) answer.problem->text.replace(0, answer.mark.size(), prism.mark);
    answer.problem->where = prism.mark;
  }
  answer.mark = prism.mark;
  if (answer.mould) answer.mould->facts.mark = prism.mark;
  return answer;
}

}  // namespace

MouldShop::MouldShop() : inside_(std::make_unique<Inside>()) { quiet_kernel(); }
MouldShop::~MouldShop() = default;

int MouldShop::made_anew() const { return inside_->made_anew; }

Outcome<std::vector<MouldAnswer>> MouldShop::make(const std::vector<MouldOrder>& orders,
                                                  const WorksSettings& settings, const Progress& progress) {
  std::vector<std::string> keys;
  std::vector<std::pair<std::string, const MouldOrder*>> wanted;
  for (const MouldOrder& order : orders) {
    keys.push_back(key_of(order, settings));
    const bool asked =
        std::any_of(wanted.begin(), wanted.end(), [&](const auto& w) { return w.first == keys.back(); });
    if (!asked && inside_->kept.find(keys.back()) == inside_->kept.end())
      wanted.emplace_back(keys.back(), &order);
  }
  Bench bench(wanted, settings, progress, inside_->kept);
  const bool whole = bench.run();
  inside_->made_anew = bench.made();
  if (!whole) return stopped(static_cast<std::size_t>(bench.made()));
  std::vector<MouldAnswer> answers;
  for (std::size_t i = 0; i < orders.size(); ++i)
    answers.push_back(renamed(inside_->kept.at(keys[i]), orders[i].prism));
  goes_on(progress, 1, "");
  return answers;
}

}  // namespace prismwright
