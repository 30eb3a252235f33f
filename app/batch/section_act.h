#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/batch/verb.h"

namespace prismwright {

/// One thing that `section FILE ...` can do. Its options are asked for first, it is run once afterwards.
class SectionAct {
 public:
  virtual ~SectionAct() = default;

  [[nodiscard]] virtual std::string_view name() const = 0;
  [[nodiscard]] virtual std::string_view help() const = 0;  ///< one line
  virtual void configure(CLI::App& command) = 0;
  virtual ExitCode run(const std::string& book_path, Voice& voice) = 0;
};

std::unique_ptr<SectionAct> section_list();
std::unique_ptr<SectionAct> section_divide();
std::unique_ptr<SectionAct> section_edit();
std::unique_ptr<SectionAct> section_comparison();
std::unique_ptr<SectionAct> section_keep();
std::unique_ptr<SectionAct> section_take();
std::unique_ptr<SectionAct> section_rename();
std::unique_ptr<SectionAct> section_drop();
std::unique_ptr<SectionAct> section_draw_act();

/// All of them, in the order in which the help lists them.
std::vector<std::unique_ptr<SectionAct>> all_section_acts();

}  // namespace prismwright
