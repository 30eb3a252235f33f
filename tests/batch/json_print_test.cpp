#include "app/batch/json_print.h"

#include <gmock/gmock.h>

#include <sstream>

namespace prismwright {
namespace {

TEST(PrintJson, TellsAPathWhoseBytesAreNoLetters) {
  Json json;
  json["folder"] = "packs/\xE9toile-2026-03-31";
  std::ostringstream out;
  std::ostringstream err;
  EXPECT_EQ(print_json(json, ExitCode::done, out, err), ExitCode::done);
  EXPECT_EQ(err.str(), "");
  EXPECT_EQ(nlohmann::json::parse(out.str()).at("folder"), "packs/\xEF\xBF\xBDtoile-2026-03-31");
}

}  // namespace
}  // namespace prismwright
