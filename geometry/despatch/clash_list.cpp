#include "geometry/despatch/clash_list.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "geometry/clearance_order.h"

namespace prismwright {

namespace {

std::string pair_words(const Clearance& clash) {
  if (clash.kind == ClearanceKind::surroundings)
    return fmt::format("{} reaches into the {}", clash.first, clash.second);
  return fmt::format("{} and {} overlap by {:.3g} mm3", clash.first, clash.second, clash.overlap_mm3);
}

}  // namespace

ClashList::ClashList(const std::vector<Clearance>& clearances) {
  for (const Clearance& one : clearances)
    if (one.verdict == Verdict::clash) clashes_.push_back(one);
  std::ranges::stable_sort(clashes_, is_worse);
  for (std::size_t i = 0; i < clashes_.size(); ++i) {
    sentences_.push_back(pair_words(clashes_[i]));
    of_[clashes_[i].first].push_back(i);
    if (clashes_[i].kind != ClearanceKind::surroundings) of_[clashes_[i].second].push_back(i);
  }
}

std::string ClashList::why(std::span<const std::string> marks) const {
  std::set<std::size_t> found;
  for (const std::string& mark : marks) {
    const auto known = of_.find(mark);
    if (known != of_.end()) found.insert(known->second.begin(), known->second.end());
  }
  return told({found.begin(), found.end()});
}

std::string ClashList::why_any() const {
  std::vector<std::size_t> all(clashes_.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
  return told(all);
}

std::string ClashList::told(const std::vector<std::size_t>& which) const {
  if (which.empty()) return {};
  std::string words = sentences_[which.front()];
  if (which.size() == 2) words += ", and another pair clashes too";
  if (which.size() > 2) words += fmt::format(", and {} other pairs clash too", which.size() - 1);
  return words + ". Make room between them and pack again.";
}

}  // namespace prismwright
