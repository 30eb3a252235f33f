#include "app/batch/json_print.h"

#include <cmath>
#include <sstream>

namespace prismwright {

namespace {

/// Path of the first number that is not finite, or empty.
std::string unfinished_number(const Json& value, const std::string& path) {
  if (value.is_number_float() && !std::isfinite(value.get<double>())) return path;
  if (!value.is_structured()) return {};
  for (const auto& [key, member] : value.items()) {
    std::string found = unfinished_number(member, path + '/' + key);
    if (!found.empty()) return found;
  }
  return {};
}

Json face_json(const Face& face) {
  Json json;
  json["face"] = name_of(face.role);
  json["kind"] = name_of(face.kind);
  json["points_mm"] = Json::array();
  for (const SectionPoint& point : face.points) json["points_mm"].push_back(to_json(point));
  if (face.kind == FaceKind::arc) {
    json["radius_mm"] = face.radius_mm;
    json["centre_mm"] = to_json(face.centre);
  }
  return json;
}

Json member_json(const std::string& text, const Quantity& quantity) {
  const auto number = read_number(text, quantity.unit);
  if (!number) return text;
  // A flag list holds the numbers of those panels that are flagged.
  if (quantity.form == QuantityForm::flag_list) return static_cast<int>(*number);
  return *number;
}

/// Members of a list as it is written in keys: parted by commas or spaces.
Json list_json(std::string text, const Quantity& quantity) {
  for (char& letter : text) {
    if (letter == ',') letter = ' ';
  }
  Json list = Json::array();
  std::istringstream members(text);
  for (std::string member; members >> member;) list.push_back(member_json(member, quantity));
  return list;
}

}  // namespace

ExitCode print_json(const Json& answer, ExitCode code, std::ostream& out, std::ostream& err) {
  const std::string place = unfinished_number(answer, "");
  if (!place.empty()) {
    err << "The figure " << place << " came out without end; nothing is printed. Please report it.\n";
    return ExitCode::not_well;
  }
  // A path may hold any bytes; those that are no letters are told as such.
  out << answer.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  return code;
}

Json to_json(SectionPoint point) { return Json::array({point.r, point.z}); }

Json to_json(const Profile& profile) {
  Json faces = Json::array();
  for (const Face& face : profile.faces) faces.push_back(face_json(face));
  return faces;
}

Json value_json(const LensValues& values, const Quantity& quantity) {
  const std::string text = value_text(values, quantity.key);
  switch (quantity.form) {
    case QuantityForm::flag_list:
    case QuantityForm::number_list:
      return list_json(text, quantity);
    case QuantityForm::choice:
    case QuantityForm::text:
      return text;
    case QuantityForm::count:
      return text.empty() ? Json() : Json(std::stoll(text));
    case QuantityForm::number:
      break;
  }
  return text.empty() ? Json() : member_json(text, quantity);
}

Json group_json(const LensValues& values, const std::string& group) {
  Json json = Json::object();
  const std::string prefix = group + '.';
  for (const Quantity& quantity : quantities()) {
    if (quantity.key.starts_with(prefix)) {
      json[quantity.key.substr(prefix.size())] = value_json(values, quantity);
    }
  }
  return json;
}

}  // namespace prismwright
