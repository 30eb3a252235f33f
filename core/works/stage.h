#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace prismwright {

/// How far a prism has come, in the order of the work.
enum class Stage { drawn, mastered, moulded, cast, annealed, polished, proved, glazed, scrapped };

inline constexpr std::array<Stage, 9> kStages = {Stage::drawn,  Stage::mastered, Stage::moulded,
                                                 Stage::cast,   Stage::annealed, Stage::polished,
                                                 Stage::proved, Stage::glazed,   Stage::scrapped};

std::string_view name_of(Stage stage);
std::optional<Stage> find_stage(std::string_view name);

/// The stage that comes next, or blank after glazed and scrapped.
std::optional<Stage> next_stage(Stage stage);

}  // namespace prismwright
