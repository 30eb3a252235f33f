#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "geometry/clearances.h"

namespace prismwright {

/// Which parts stand in a clash, so that no solid, cut file or master of theirs goes out.
class ClashList {
 public:
  ClashList() = default;
  explicit ClashList(const std::vector<Clearance>& clearances);

  /// Why a thing made of these parts does not go out: a sentence that names the pair with the greatest overlap,
  /// and how many others there are; empty where none of them stands in a clash.
  [[nodiscard]] std::string why(std::span<const std::string> marks) const;
  /// Of everything.
  [[nodiscard]] std::string why_any() const;
  [[nodiscard]] std::size_t count() const { return clashes_.size(); }
  /// "P01-U07 and P01-rib-left overlap by 12.3 mm3", worst first.
  [[nodiscard]] const std::vector<std::string>& sentences() const { return sentences_; }

 private:
  [[nodiscard]] std::string told(const std::vector<std::size_t>& which) const;

  std::vector<Clearance> clashes_;  // the worst first
  std::vector<std::string> sentences_;
  std::map<std::string, std::vector<std::size_t>> of_;  // by mark
};

}  // namespace prismwright
