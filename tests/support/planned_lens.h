#pragma once

#include <gtest/gtest.h>

#include "core/lens/plan.h"

namespace prismwright {

/// The plan of values that must give one; the test fails with the reason where they do not.
inline LensPlan plan_of(const LensValues& values) {
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problem().text);
  return plan.ok() ? *plan : LensPlan{};
}

}  // namespace prismwright
