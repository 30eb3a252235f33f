#include "core/lens/orders.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

namespace prismwright {

const std::vector<Order>& orders() {
  static const std::vector<Order> all = {
      {"hyper-radial", "hyper-radial", 1330, 14, 120},
      {"1", "first order", 920, 10, 85},
      {"2", "second order", 700, 8, 68},
      {"3", "third order", 500, 6, 52},
      {"3.5", "small third order", 375, 5, 40},
      {"4", "fourth order", 250, 4, 30},
      {"5", "fifth order", 187.5, 3.5, 24},
      {"6", "sixth order", 150, 3, 20},
  };
  return all;
}

namespace {

struct OtherName {
  std::string_view name;
  std::string_view key;
};
constexpr std::array kOtherNames = {OtherName{"hyperradial", "hyper-radial"},
                                    OtherName{"hyper", "hyper-radial"},
                                    OtherName{"first", "1"},
                                    OtherName{"1st", "1"},
                                    OtherName{"second", "2"},
                                    OtherName{"2nd", "2"},
                                    OtherName{"third", "3"},
                                    OtherName{"3rd", "3"},
                                    OtherName{"small third", "3.5"},
                                    OtherName{"small-third", "3.5"},
                                    OtherName{"3 1/2", "3.5"},
                                    OtherName{"fourth", "4"},
                                    OtherName{"4th", "4"},
                                    OtherName{"fifth", "5"},
                                    OtherName{"5th", "5"},
                                    OtherName{"sixth", "6"},
                                    OtherName{"6th", "6"}};

}  // namespace

const Order* find_order(std::string_view text) {
  std::string name(text);
  std::transform(name.begin(), name.end(), name.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (const auto tail = name.rfind(" order"); tail != std::string::npos) name.resize(tail);
  for (const OtherName& other : kOtherNames) {
    if (name == other.name) name = other.key;
  }
  for (const Order& order : orders()) {
    if (order.key == name) return &order;
  }
  return nullptr;
}

}  // namespace prismwright
