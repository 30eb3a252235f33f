#include <unistd.h>

#include <iostream>
#include <string>
#include <vector>

#include "app/batch/run_batch.h"

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + (argc > 0 ? 1 : 0), argv + argc);
  return prismwright::run_batch(words, std::cout, std::cerr, isatty(STDERR_FILENO) == 1);
}
