#pragma once

#include <gtest/gtest.h>

#include <map>
#include <string>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"

namespace prismwright {

/// The plan of values that must give one; the test fails with the reason where they do not.
inline LensPlan plan_of(const LensValues& values) {
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problem().text);
  return plan.ok() ? *plan : LensPlan{};
}

/// A lens with its frame.
struct FramedLens {
  LensPlan plan;
  FramePlan frame;
};

/// The lens of that name, worked out once for all tests of a program that ask for it.
inline const FramedLens& framed_once(const std::string& name, const LensValues& values) {
  static std::map<std::string, FramedLens> known;
  const auto [place, is_new] = known.try_emplace(name);
  if (is_new) {
    place->second.plan = plan_of(values);
    place->second.frame = plan_frame(place->second.plan);
  }
  return place->second;
}

}  // namespace prismwright
