#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "app/batch/works_json.h"
#include "core/works/log_checks.h"
#include "core/works/works_csv.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

Outcome<std::string> bytes_of_file(const std::string& path) {
  std::error_code error;
  const auto size = std::filesystem::file_size(path, error);
  if (error) return file_problem("read", path, fmt::format("{} cannot be read ({}).", path, error.message()));
  if (size > kMostPhotograph_bytes) {
    return request_problem(
        "large_photograph", path,
        fmt::format("{} has {:.1f} MB; the book takes photographs up to {:.0f} MB. Make it "
                    "smaller first.",
                    path, static_cast<double>(size) / 1e6, static_cast<double>(kMostPhotograph_bytes) / 1e6));
  }
  std::ifstream file(path, std::ios::binary);
  std::string bytes{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  if (!file || bytes.size() != size) return file_problem("read", path, fmt::format("{} cannot be read.", path));
  return bytes;
}

class PhotoAdd : public WorksAct {
 public:
  std::string_view name() const override { return "add"; }
  std::string_view help() const override { return "keep a photograph of a prism in the book"; }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of the prism, or the number of its casting")->required();
    command.add_option("PICTURE", picture_, "a JPEG or PNG file")->required();
    add_hand_options(command, photograph_.by, photograph_.note, "what it shows");
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    auto bytes = bytes_of_file(picture_);
    if (!bytes) return refuse(bytes.problem(), voice.err);
    auto desk = works_to_change(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto mark = mark_named(*desk, word_);
    if (!mark) return refuse(mark.problem(), voice.err);
    photograph_.mark = *mark;
    photograph_.serial = standing_serial(*desk, *mark);
    photograph_.name = std::filesystem::path(picture_).filename().string();
    photograph_.media = media_of(*bytes);
    photograph_.bytes = std::move(bytes).value();
    if (photograph_.media.empty()) {
      return refuse(request_problem(
                        "photograph_kind", picture_,
                        fmt::format("{} is no JPEG or PNG picture. Save it as one of these first.", picture_)),
                    voice.err);
    }
    WorksLog log;
    log.photographs.push_back(photograph_);
    if (const Done kept = desk->book.record({}, log); !kept) return refuse(kept.problem(), voice.err);
    voice.out << fmt::format("Photograph {} kept for {}.\n", desk->book.works_log().photographs.back().number,
                             *mark);
    return ExitCode::done;
  }

 private:
  std::string word_;
  std::string picture_;
  Photograph photograph_;
};

Json photograph_json(const Photograph& photograph) {
  Json json;
  json["number"] = photograph.number;
  json["when_utc"] = photograph.when_utc;
  json["mark"] = photograph.mark;
  json["serial"] = number_json(photograph.serial);
  json["name"] = photograph.name;
  json["media"] = photograph.media;
  json["by"] = photograph.by;
  json["note"] = photograph.note;
  return json;
}

class PhotoList : public WorksAct {
 public:
  std::string_view name() const override { return "list"; }
  std::string_view help() const override { return "the photographs that the book keeps"; }
  void configure(CLI::App& command) override {
    command.add_option("MARK", word_, "of one prism only");
    add_answer_options(command, form_);
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    std::vector<Photograph> shown = desk->book.works_log().photographs;
    if (!word_.empty()) {
      const auto mark = mark_named(*desk, word_);
      if (!mark) return refuse(mark.problem(), voice.err);
      std::erase_if(shown, [&](const Photograph& photograph) { return photograph.mark != *mark; });
    }
    if (const Done kept = keep_csv(form_, photographs_csv(shown)); !kept)
      return refuse(kept.problem(), voice.err);
    if (form_.json) {
      Json json = Json::array();
      for (const Photograph& photograph : shown) json.push_back(photograph_json(photograph));
      return print_json(json, ExitCode::done, voice.out, voice.err);
    }
    TextTable table({{"no.", true}, {"when"}, {"prism"}, {"casting", true}, {"file"}, {"by"}, {"note"}});
    for (const Photograph& photograph : shown) {
      table.add({std::to_string(photograph.number), photograph.when_utc, photograph.mark,
                 photograph.serial == 0 ? "" : std::to_string(photograph.serial), photograph.name,
                 photograph.by, photograph.note});
    }
    table.print(voice.out);
    return ExitCode::done;
  }

 private:
  std::string word_;
  AnswerForm form_;
};

class PhotoSave : public WorksAct {
 public:
  std::string_view name() const override { return "save"; }
  std::string_view help() const override { return "write a photograph from the book into a file"; }
  void configure(CLI::App& command) override {
    command.add_option("NUMBER", number_, "of the photograph: photo list tells")->required();
    command.add_option("--out", out_, "the file to write")->required();
  }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const auto bytes = desk->book.photograph_bytes(number_);
    if (!bytes) return refuse(bytes.problem(), voice.err);
    if (const Done written = write_whole(out_, *bytes); !written) return refuse(written.problem(), voice.err);
    voice.out << out_ << '\n';
    return ExitCode::done;
  }

 private:
  long long number_ = 0;
  std::string out_;
};

}  // namespace

std::unique_ptr<WorksAct> works_photo() {
  std::vector<std::unique_ptr<WorksAct>> acts;
  acts.push_back(std::make_unique<PhotoAdd>());
  acts.push_back(std::make_unique<PhotoList>());
  acts.push_back(std::make_unique<PhotoSave>());
  return std::make_unique<WorksGroup>("photo", "photographs kept in the book: add, list, save",
                                      std::move(acts));
}

}  // namespace prismwright
