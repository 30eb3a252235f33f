#include <fmt/format.h>

#include "app/batch/bench_print.h"
#include "app/batch/books.h"
#include "app/batch/verbs.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

class BenchVerb : public Verb {
 public:
  std::string_view name() const override { return "bench"; }
  std::string_view help() const override {
    return "laser bench: where each prism's spot should fall, readings, and the shims that mend them";
  }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.require_subcommand(1);
    command.footer(std::string(kLaserCaution));
    configure_list(*command.add_subcommand("list",
                                           "how the laser is aimed, where the spots should fall, and "
                                           "what the readings say"));
    configure_record(*command.add_subcommand("record", "record where a prism's spot fell"));
  }

  ExitCode run(Voice& voice) override { return recording_->parsed() ? record(voice) : list(voice); }

 private:
  void configure_both(CLI::App& command) {
    command.footer(std::string(kLaserCaution));
    command.add_option("--within", within_deg_, "a beam this near its way is left alone, degrees")
        ->check(CLI::Range(0.001, 5.0))
        ->capture_default_str();
    command
        .add_option("--board", settings_.board_mm,
                    "distance of the board from the focus, mm; light.board_mm unless said")
        ->check(CLI::Range(500.0, 100000.0));
    command.add_flag("--json", json_, "answer in JSON");
  }

  void configure_list(CLI::App& command) {
    configure_both(command);
    command
        .add_option("--laser-nm", settings_.laser_nm,
                    "wavelength of the laser; the design wavelength unless said")
        ->check(CLI::Range(400.0, 1000.0));
    command.add_option("--csv", csv_, "write the plan to this file");
  }

  void configure_record(CLI::App& command) {
    recording_ = &command;
    command.add_option("MARK", reading_.mark, "of the prism: \"P01-U05\"")->required();
    command.add_option("HEIGHT_MM", reading_.height_mm, "of the spot over where it should fall")->required();
    command.add_option("--aside", reading_.aside_mm,
                       "of the spot to the left of where it should fall, as seen from the focus, mm");
    command.add_option("--by", reading_.by, "who read it");
    command.add_option("--note", reading_.note, "as \"after the shim\"");
    configure_both(command);
  }

  ExitCode list(Voice& voice) {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto bench = bench_of(*book);
    if (!bench) return refuse(bench.problem(), voice.err);
    const std::vector<BenchedPrism> prisms = benched(*bench, book->readings(), within_deg_);
    const BenchAnswer answer{*bench, prisms, book->readings(), within_deg_};
    if (!csv_.empty()) {
      if (const Done written = write_whole(csv_, bench_csv(answer)); !written)
        return refuse(written.problem(), voice.err);
    }
    const BenchSummary sum = summary_of(prisms);
    const ExitCode code = sum.within == sum.read ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(bench_json(answer), code, voice.out, voice.err);
    print_bench(answer, voice.out);
    return code;
  }

  ExitCode record(Voice& voice) {
    auto book = open_to_change(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto bench = bench_of(*book);
    if (!bench) return refuse(bench.problem(), voice.err);
    reading_.board_mm = bench->board_mm;
    if (const Done fit = check_reading(*bench, reading_); !fit) return refuse(fit.problem(), voice.err);
    if (const Done kept = book->record_readings({&reading_, 1}); !kept)
      return refuse(kept.problem(), voice.err);
    const BenchMend mend = mend_of(*bench->find(reading_.mark), reading_, within_deg_);
    const ExitCode code = mend.within ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(mend_json(mend), code, voice.out, voice.err);
    voice.out << mend_line(reading_.mark, mend) << '\n';
    return code;
  }

  [[nodiscard]] Outcome<BenchPlan> bench_of(const Lensbook& book) const {
    const auto plan = plan_lens(book.values());
    if (!plan) return plan.problem();
    return bench_plan(*plan, settings_);
  }

  std::string path_;
  std::string csv_;
  BenchSettings settings_;
  BenchReading reading_;
  double within_deg_ = kBenchWithin_deg;
  CLI::App* recording_ = nullptr;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<Verb> bench_verb() { return std::make_unique<BenchVerb>(); }

}  // namespace prismwright
