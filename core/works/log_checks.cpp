#include "core/works/log_checks.h"

#include <fmt/format.h>

#include <cmath>
#include <vector>

namespace prismwright {
namespace {

constexpr double kMostMass_g = 1e6;
constexpr double kMostLength_mm = 5000;
constexpr double kMostMeasured = 1e5;
constexpr double kMostHours = 1e5;
constexpr double kMostMoney = 1e7;

bool is_blank(std::string_view text) { return text.find_first_not_of(" \t\r\n") == std::string_view::npos; }

/// `where` names the field; `what` is how a sentence begins ("A decision"), `which` what it lacks.
Done there(std::string_view text, const char* where, const char* what, const char* which, const char* hint) {
  if (!is_blank(text)) return {};
  return request_problem("works.blank", where, fmt::format("{} needs {}. {}.", what, which, hint));
}

Done check_serial(long long serial) {
  if (serial >= 0) return {};
  return request_problem(
      "works.serial", std::to_string(serial),
      fmt::format("Serial number {} cannot be: they count from 1, and 0 stands for none. Take "
                  "it from the ledger.",
                  serial));
}

Done within(double value, double least, double most, const char* where, const char* what, const char* unit) {
  if (value >= least && value <= most) return {};  // written so that what is no number is refused too
  return request_problem("works.number", where,
                         fmt::format("{} is {:g}{}; it lies between {:g} and {:g}. Read it again.", what, value,
                                     unit, least, most));
}

Done not_more_than_resin(double part_g, double resin_g, const char* where, const char* what) {
  if (part_g <= resin_g) return {};
  return request_problem(
      "works.mass", where,
      fmt::format("{} is {:g} g, more than the resin's {:g} g. Weigh it again.", what, part_g, resin_g));
}

/// The first of some checks that fails.
template <class... Checks>
Done first_problem(Checks&&... checks) {
  Done done;
  static_cast<void>(((done = checks()).ok() && ...));
  return done;
}

Done check_shrinkage(const ShrinkReading& reading) {
  const double shrink = 100 * (1 - reading.casting_mm / reading.master_mm);
  if (shrink >= kLeastShrink_percent && shrink <= kMostShrink_percent) return {};
  return request_problem(
      "works.shrink", reading.piece,
      fmt::format(
          "A casting of {:g} mm from a master of {:g} mm has shrunk {:.1f} %; resins shrink {:g} to {:g} %. "
          "Measure both again, between the same two places.",
          reading.casting_mm, reading.master_mm, shrink, kLeastShrink_percent, kMostShrink_percent));
}

Done check_bytes(const Photograph& photograph) {
  const std::string& bytes = photograph.bytes;
  if (bytes.size() > kMostPhotograph_bytes)
    return request_problem(
        "works.photograph_size", photograph.name,
        fmt::format("{} has {:.1f} MB; the book takes photographs up to {} MB. Save it smaller.",
                    photograph.name, static_cast<double>(bytes.size()) / 1e6,
                    kMostPhotograph_bytes / 1'000'000));
  const std::string media = media_of(bytes);
  if (media.empty())
    return request_problem(
        "works.photograph_kind", photograph.name,
        fmt::format("{} is neither a JPEG nor a PNG picture. Save it as one of these.", photograph.name));
  if (media == photograph.media) return {};
  return request_problem("works.photograph_kind", photograph.name,
                         fmt::format("{} holds {}, not \"{}\". Name its kind by what it holds.",
                                     photograph.name, media, photograph.media));
}

Done check_amount(const Spending& spending) {
  if (spending.hours == 0 && spending.money == 0)
    return request_problem("works.nothing_spent", spending.step,
                           "Neither hours nor money are named. Name at least one of them.");
  if ((spending.hours >= 0 && spending.money >= 0) || !is_blank(spending.note)) return {};
  return request_problem(
      "works.taken_back", spending.step,
      "Hours or money below nought take an earlier entry back. Write in a note which and why.");
}

template <class Entry>
Done check_each(const std::vector<Entry>& entries, Done (*check)(const Entry&)) {
  for (const Entry& entry : entries)
    if (Done fit = check(entry); !fit) return fit;
  return {};
}

constexpr const char* kTakeMark = "Take one from the list of prisms, for instance P01-C";

}  // namespace

Done check_load(const VesselLoad& load) {
  return first_problem(
      [&] {
        return there(load.resin, "resin", "A load", "the name of its resin",
                     "Take it from the can, or set works.resin");
      },
      [&] { return within(load.resin_g, 0, kMostMass_g, "resin_g", "The resin", " g"); },
      [&] { return within(load.initiator_g, 0, kMostMass_g, "initiator_g", "The initiator", " g"); },
      [&] { return within(load.tint_g, 0, kMostMass_g, "tint_g", "The tint", " g"); },
      [&] { return not_more_than_resin(load.initiator_g, load.resin_g, "initiator_g", "The initiator"); },
      [&] { return not_more_than_resin(load.tint_g, load.resin_g, "tint_g", "The tint"); });
}

Done check_measurement(const Measurement& measurement) {
  return first_problem(
      [&] { return there(measurement.mark, "mark", "A measurement", "the mark of its prism", kTakeMark); },
      [&] {
        return there(measurement.feature, "feature", "A measurement", "to say what was measured",
                     "Take it from the prism's list of what to measure");
      },
      [&] { return check_serial(measurement.serial); },
      [&] {
        return within(measurement.measured, -kMostMeasured, kMostMeasured, "measured", "What was measured", "");
      });
}

Done check_decision(const Decision& decision) {
  return first_problem(
      [&] { return there(decision.mark, "mark", "A decision", "the mark of its prism", kTakeMark); },
      [&] { return there(decision.note, "note", "A decision", "a reason", "Write in its note why"); },
      [&] { return check_serial(decision.serial); });
}

Done check_shrink_reading(const ShrinkReading& reading) {
  constexpr double kLeast_mm = 0.1;  // shorter lengths tell nothing of shrinkage
  return first_problem(
      [&] {
        return there(reading.piece, "piece", "A reading of shrinkage", "the name of its master",
                     "Take it from the make list");
      },
      [&] { return within(reading.master_mm, kLeast_mm, kMostLength_mm, "master_mm", "The master", " mm"); },
      [&] { return within(reading.casting_mm, kLeast_mm, kMostLength_mm, "casting_mm", "The casting", " mm"); },
      [&] { return check_shrinkage(reading); });
}

Done check_photograph(const Photograph& photograph) {
  return first_problem(
      [&] { return there(photograph.mark, "mark", "A photograph", "the mark of its prism", kTakeMark); },
      [&] {
        return there(photograph.name, "name", "A photograph", "a name", "Name the file that it comes from");
      },
      [&] { return check_serial(photograph.serial); }, [&] { return check_bytes(photograph); });
}

Done check_spending(const Spending& spending) {
  return first_problem(
      [&] {
        return there(spending.step, "step", "An entry of hours and money", "the step that it went into",
                     "Take it from the plan");
      },
      [&] { return within(spending.hours, -kMostHours, kMostHours, "hours", "The time", " h"); },
      [&] { return within(spending.money, -kMostMoney, kMostMoney, "money", "The money", ""); },
      [&] { return check_amount(spending); });
}

Done check_log(const WorksLog& log) {
  return first_problem([&] { return check_each(log.loads, check_load); },
                       [&] { return check_each(log.measurements, check_measurement); },
                       [&] { return check_each(log.decisions, check_decision); },
                       [&] { return check_each(log.shrink, check_shrink_reading); },
                       [&] { return check_each(log.photographs, check_photograph); },
                       [&] { return check_each(log.spendings, check_spending); });
}

std::string media_of(std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("\xFF\xD8\xFF"sv)) return "image/jpeg";
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return "image/png";
  return "";
}

}  // namespace prismwright
