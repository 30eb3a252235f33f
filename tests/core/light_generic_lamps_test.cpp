#include <gtest/gtest.h>

#include <set>
#include <string_view>

#include "core/lens/generic_lamps.h"
#include "core/lens/quantities.h"
#include "core/light/chromaticity.h"
#include "core/light/lamp_body.h"
#include "core/light/signal_regions.h"

namespace prismwright {
namespace {

TEST(GenericLamps, HaveKeysAndWordsOfTheirOwn) {
  std::set<std::string_view> names;
  for (const GenericLamp& lamp : generic_lamps()) {
    EXPECT_TRUE(names.insert(lamp.key).second) << lamp.key;
    EXPECT_TRUE(names.insert(lamp.words).second) << lamp.words;
    EXPECT_EQ(find_generic_lamp(lamp.key), &lamp);
    EXPECT_EQ(find_generic_lamp(lamp.words), &lamp);
  }
  EXPECT_EQ(find_generic_lamp("candle"), nullptr);
}

TEST(GenericLamps, AreLampsThatALensTakes) {
  for (const GenericLamp& generic : generic_lamps()) {
    LensValues values;
    values.lamp = generic.lamp;
    const Done checked = check_values(values);
    EXPECT_TRUE(checked.ok()) << generic.key << ": " << (checked.ok() ? "" : checked.problem().text);
    EXPECT_TRUE(LampBody::make(generic.lamp).ok()) << generic.key;
  }
}

// Luminances typical of their kinds, cd/mm2, from memory: oil flames some hundredths, mantles some tenths,
// filaments, arcs and LEDs 5 to 40. The test guards against a slip of the point in a size or a flux.
TEST(GenericLamps, AreAsBrightAsTheirKind) {
  for (const GenericLamp& generic : generic_lamps()) {
    const double luminance = LampBody::make(generic.lamp)->luminance_cd_mm2();
    const bool flame = generic.key.starts_with("oil");
    const bool mantle = generic.key.starts_with("mantle");
    EXPECT_GT(luminance, flame ? 0.01 : mantle ? 0.1 : 5) << generic.key;
    EXPECT_LT(luminance, flame ? 0.1 : mantle ? 0.6 : 40) << generic.key;
  }
}

TEST(GenericLamps, AreWhiteButForTheYellowOilFlames) {
  for (const GenericLamp& generic : generic_lamps()) {
    const auto light = spectrum_of(generic.lamp);
    ASSERT_TRUE(light.ok()) << generic.key;
    const Chromaticity at = colour_of(*light).at;
    EXPECT_EQ(holds(signal_regions()[0], at), !generic.key.starts_with("oil"))
        << generic.key << " " << at.x << " " << at.y;
  }
}

TEST(GenericLamps, PutIntoALensLeaveWhereItStands) {
  Lamp present;
  present.above_mm = 3;
  present.aside_x_mm = -1;
  present.aside_y_mm = 2;
  present.facing_deg = 45;
  present.facing_up_deg = 90;
  const Lamp lamp = with_generic(present, *find_generic_lamp("led-ring-8"));
  EXPECT_EQ(lamp.above_mm, 3);
  EXPECT_EQ(lamp.aside_x_mm, -1);
  EXPECT_EQ(lamp.aside_y_mm, 2);
  EXPECT_EQ(lamp.facing_deg, 45);
  EXPECT_EQ(lamp.facing_up_deg, 90);
  EXPECT_EQ(lamp.count, 8);
  EXPECT_EQ(lamp.light, LampLight::white_led);
}

}  // namespace
}  // namespace prismwright
