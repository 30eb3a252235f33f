#include "core/works/stage.h"

#include <cstddef>

namespace prismwright {
namespace {

constexpr std::array<std::string_view, kStages.size()> kNames = {
    "drawn", "mastered", "moulded", "cast", "annealed", "polished", "proved", "glazed", "scrapped"};

}  // namespace

std::string_view name_of(Stage stage) { return kNames.at(static_cast<std::size_t>(stage)); }

std::optional<Stage> find_stage(std::string_view name) {
  for (const Stage stage : kStages)
    if (name_of(stage) == name) return stage;
  return std::nullopt;
}

std::optional<Stage> next_stage(Stage stage) {
  if (stage == Stage::glazed || stage == Stage::scrapped) return std::nullopt;
  return static_cast<Stage>(static_cast<int>(stage) + 1);
}

}  // namespace prismwright
