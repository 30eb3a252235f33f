#pragma once

#include <nlohmann/json.hpp>
#include <ostream>
#include <string>

#include "app/batch/exit_code.h"
#include "core/lens/quantities.h"
#include "core/optics/profile.h"

namespace prismwright {

/// JSON whose keys stay in the order in which they are set.
using Json = nlohmann::ordered_json;

/// Prints the answer, numbers so that they read back exactly. Refuses to print one that holds a number that is
/// not finite, naming where it stands; `code` is answered when all is well.
ExitCode print_json(const Json& answer, ExitCode code, std::ostream& out, std::ostream& err);

/// A point as [r, z], mm.
Json to_json(SectionPoint point);
/// Faces of a profile: face, kind, points_mm, and for arcs radius_mm and centre_mm.
Json to_json(const Profile& profile);

/// A quantity's value in its own JSON type: a number, a list, true or false, a text; null when blank.
Json value_json(const LensValues& values, const Quantity& quantity);
/// All quantities of a group ("section", "frame", ...) under their names without the group.
Json group_json(const LensValues& values, const std::string& group);

}  // namespace prismwright
