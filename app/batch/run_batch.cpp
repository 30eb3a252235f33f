#include "app/batch/run_batch.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <exception>
#include <new>

#include "app/batch/verbs.h"

namespace prismwright {

namespace {

constexpr const char* kAbout =
    "Prismwright without a screen: from an order to proved, solid lens prisms.\n"
    "Exit codes: 0 done; 1 done, and something is not well; 2 the request is wrong; "
    "3 a file could not be read or written.";

/// The command line with one subcommand for each verb; a chosen verb is remembered in `chosen`.
void put_verbs_on(CLI::App& app, const std::vector<std::unique_ptr<Verb>>& verbs, Verb*& chosen) {
  app.require_subcommand(1);
  for (const auto& verb : verbs) {
    CLI::App* command = app.add_subcommand(std::string(verb->name()), std::string(verb->help()));
    verb->configure(*command);
    command->final_callback([&chosen, &verb] { chosen = verb.get(); });
  }
}

/// Help is an answer; anything else that the reader of the command line throws is a wrong request.
int end_of_parsing(const CLI::App& app, const CLI::ParseError& error, Voice& voice) {
  if (error.get_exit_code() == 0) return app.exit(error, voice.out, voice.err);
  std::string path = "prismwright-batch";
  for (const CLI::App* command : app.get_subcommands()) path += ' ' + command->get_name();
  voice.err << error.what() << ".\n" << path << " --help tells how it is asked.\n";
  return static_cast<int>(ExitCode::bad_request);
}

int run_chosen(Verb& verb, Voice& voice) {
  const ExitCode code = verb.run(voice);
  voice.out.flush();
  if (voice.out) return static_cast<int>(code);
  voice.err << "The answer could not be written in whole: make room on the disk, or send it elsewhere.\n";
  return static_cast<int>(ExitCode::file_trouble);
}

int parse_and_run(const std::vector<std::string>& words, Voice& voice) {
  const auto verbs = all_verbs();
  Verb* chosen = nullptr;
  CLI::App app(kAbout, "prismwright-batch");
  put_verbs_on(app, verbs, chosen);
  try {
    app.parse(std::vector<std::string>(words.rbegin(), words.rend()));
  } catch (const CLI::ParseError& error) {
    return end_of_parsing(app, error, voice);
  }
  return run_chosen(*chosen, voice);
}

}  // namespace

int run_batch(const std::vector<std::string>& words, std::ostream& out, std::ostream& err,
              bool err_is_terminal) {
  Voice voice{out, err, err_is_terminal};
  try {
    return parse_and_run(words, voice);
  } catch (const std::bad_alloc&) {
    err << "The machine ran out of memory; the lensbook is as it was. Close other programs and ask again.\n";
  } catch (const std::exception& error) {
    err << "The program failed (" << error.what() << "); the lensbook is as it was. Please report it.\n";
  }
  return static_cast<int>(ExitCode::file_trouble);
}

}  // namespace prismwright
