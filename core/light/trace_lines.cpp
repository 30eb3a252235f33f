#include "core/light/trace_lines.h"

#include <algorithm>

namespace prismwright {

namespace {

/// Fills parts of equal flux one after the other, each with whole slices and the pieces of those that straddle
/// two parts.
class Cutter {
 public:
  Cutter(double part, int count) : part_(part), lines_(static_cast<std::size_t>(count)), left_(lines_.size()) {}

  void add(double nm, Xyz xyz, double share) {
    while (xyz.y > room() && at_ + 1 < lines_.size()) {
      const double piece = room() / xyz.y;
      take(nm, piece * xyz, share);
      xyz = (1 - piece) * xyz;
      ++at_;
    }
    take(nm, xyz, share);
  }

  std::vector<TraceLine> done() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      TraceLine& line = lines_[i];
      if (!(line.flux > 0)) continue;
      line.nm /= line.flux;
      line.left = left_[i] / line.flux;
    }
    return std::move(lines_);
  }

 private:
  [[nodiscard]] double room() const { return std::max(0.0, part_ - lines_[at_].flux); }
  void take(double nm, const Xyz& xyz, double share) {
    lines_[at_].nm += nm * xyz.y;  // the mean's sum until done()
    lines_[at_].flux += xyz.y;
    lines_[at_].xyz += xyz;
    left_[at_] += share * xyz.y;
  }

  double part_;
  std::vector<TraceLine> lines_;
  std::vector<double> left_;  ///< of each line's flux
  std::size_t at_ = 0;
};

}  // namespace

std::vector<TraceLine> trace_lines(const LampSpectrum& light, int count,
                                   const std::function<double(double)>& through) {
  const double flux = light.flux();
  if (!(flux > 0)) return {};
  count = light.slices().size() == 1 ? 1 : std::clamp(count, 1, kMostTraceLines);
  std::vector<SpectralSlice> slices = light.slices();
  std::sort(slices.begin(), slices.end(),
            [](const SpectralSlice& a, const SpectralSlice& b) { return a.nm < b.nm; });
  Cutter cutter(flux / count, count);
  for (const SpectralSlice& slice : slices)
    cutter.add(slice.nm, slice.power * eye_at(slice.nm), through ? through(slice.nm) : 1);
  return cutter.done();
}

}  // namespace prismwright
