#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/batch/verb.h"

namespace prismwright {

/// One thing that `works FILE ...` can do. Its options are asked for first, it is run once afterwards.
class WorksAct {
 public:
  virtual ~WorksAct() = default;

  [[nodiscard]] virtual std::string_view name() const = 0;
  [[nodiscard]] virtual std::string_view help() const = 0;  ///< one line
  virtual void configure(CLI::App& command) = 0;
  virtual ExitCode run(const std::string& book_path, Voice& voice) = 0;
};

/// Acts that belong together under one word: `works FILE photo add`, `works FILE photo list`.
class WorksGroup : public WorksAct {
 public:
  WorksGroup(std::string name, std::string help, std::vector<std::unique_ptr<WorksAct>> acts);

  [[nodiscard]] std::string_view name() const override { return name_; }
  [[nodiscard]] std::string_view help() const override { return help_; }
  void configure(CLI::App& command) override;
  ExitCode run(const std::string& book_path, Voice& voice) override;

 private:
  std::string name_;
  std::string help_;
  std::vector<std::unique_ptr<WorksAct>> acts_;
  WorksAct* chosen_ = nullptr;
};

std::unique_ptr<WorksAct> works_list();
std::unique_ptr<WorksAct> works_record();
std::unique_ptr<WorksAct> works_correct();
std::unique_ptr<WorksAct> works_life();
std::unique_ptr<WorksAct> works_make();
std::unique_ptr<WorksAct> works_masters();
std::unique_ptr<WorksAct> works_moulds();
std::unique_ptr<WorksAct> works_loads();
std::unique_ptr<WorksAct> works_shrink();
std::unique_ptr<WorksAct> works_inspect();
std::unique_ptr<WorksAct> works_photo();
std::unique_ptr<WorksAct> works_spare();
std::unique_ptr<WorksAct> works_spend();
std::unique_ptr<WorksAct> works_plan();
std::unique_ptr<WorksAct> works_labels();
std::unique_ptr<WorksAct> works_travellers();

/// All of them, in the order in which the help lists them.
std::vector<std::unique_ptr<WorksAct>> all_works_acts();

}  // namespace prismwright
