#include "core/works/works_csv.h"

#include <fmt/format.h>

#include "core/base/csv_cell.h"
#include "core/lens/choice_words.h"

namespace prismwright {
namespace {

std::string cell_of(std::string_view words) { return csv_cell(words); }
std::string cell_of(double number) { return fmt::format("{}", number); }
/// Nought stands for none.
std::string cell_of(long long number) { return number == 0 ? "" : std::to_string(number); }

template <class... Cells>
std::string row_of(const Cells&... cells) {
  std::string row;
  ((row += cell_of(cells), row += ','), ...);
  row.back() = '\n';
  return row;
}

template <class Entries, class Row>
std::string table_of(const char* columns, const Entries& entries, const Row& row) {
  std::string text = fmt::format("{}\n", columns);
  for (const auto& entry : entries) text += row(entry);
  return text;
}

}  // namespace

std::string ledger_csv(std::span<const LedgerEntry> ledger) {
  return table_of(
      "number,when_utc,mark,from,to,by,note,back_to,serial,load", ledger, [](const LedgerEntry& line) {
        return row_of(line.number, line.when_utc, line.mark, name_of(line.from), name_of(line.to), line.by,
                      line.note, line.back_to ? name_of(*line.back_to) : std::string_view(), line.serial,
                      line.load);
      });
}

std::string vessel_loads_csv(std::span<const VesselLoad> loads) {
  return table_of("number,when_utc,resin,resin_lot,tint,resin_g,initiator_g,tint_g,by,note", loads,
                  [](const VesselLoad& load) {
                    return row_of(load.number, load.when_utc, load.resin, load.resin_lot, load.tint,
                                  load.resin_g, load.initiator_g, load.tint_g, load.by, load.note);
                  });
}

std::string measurements_csv(std::span<const Measurement> measurements) {
  return table_of("number,when_utc,mark,serial,feature,measured,by,note", measurements,
                  [](const Measurement& one) {
                    return row_of(one.number, one.when_utc, one.mark, one.serial, one.feature, one.measured,
                                  one.by, one.note);
                  });
}

std::string decisions_csv(std::span<const Decision> decisions) {
  return table_of("number,when_utc,mark,serial,kind,by,note", decisions, [](const Decision& one) {
    return row_of(one.number, one.when_utc, one.mark, one.serial, word_of(one.kind), one.by, one.note);
  });
}

std::string shrink_readings_csv(std::span<const ShrinkReading> readings) {
  return table_of("number,when_utc,piece,direction,master_mm,casting_mm,resin,resin_lot,by,note", readings,
                  [](const ShrinkReading& one) {
                    return row_of(one.number, one.when_utc, one.piece, word_of(one.direction), one.master_mm,
                                  one.casting_mm, one.resin, one.resin_lot, one.by, one.note);
                  });
}

std::string photographs_csv(std::span<const Photograph> photographs) {
  return table_of("number,when_utc,mark,serial,name,media,by,note", photographs, [](const Photograph& one) {
    return row_of(one.number, one.when_utc, one.mark, one.serial, one.name, one.media, one.by, one.note);
  });
}

std::string spendings_csv(std::span<const Spending> spendings) {
  return table_of("number,when_utc,step,hours,money,by,note", spendings, [](const Spending& one) {
    return row_of(one.number, one.when_utc, one.step, one.hours, one.money, one.by, one.note);
  });
}

}  // namespace prismwright
