#pragma once

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <string>

namespace prismwright {

/// What a program of other hands prints for a shell command.
inline std::string answer_of(const std::string& command) {
  std::string said;
  std::array<char, 4096> part{};
  FILE* pipe = ::popen(command.c_str(), "r");
  while (pipe != nullptr) {
    const std::size_t count = std::fread(part.data(), 1, part.size(), pipe);
    if (count == 0) break;
    said.append(part.data(), count);
  }
  if (pipe == nullptr || ::pclose(pipe) != 0) ADD_FAILURE() << command;
  return said;
}

}  // namespace prismwright
