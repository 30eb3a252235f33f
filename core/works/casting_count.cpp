#include "core/works/casting_count.h"

#include <set>

#include "core/works/spares.h"

namespace prismwright {
namespace {

bool is_cast(Stage stage) { return stage >= Stage::cast && stage != Stage::scrapped; }

/// Walks the ledger with what stands for each mark.
class CastingWalk {
 public:
  void take(const LedgerEntry& line) {
    Casting& casting = standing_[line.mark];
    if (is_cast(line.to)) return casting.stands ? keep_number(line) : make(line, casting);
    if (!casting.stands) return;
    const bool scrapped = line.to == Stage::scrapped;
    if (scrapped && line.back_to.value_or(Stage::moulded) >= Stage::cast) return;
    casting.stands = false;
    if (scrapped) {
      ++counts_[line.mark].scrapped;
    } else if (casting.counted && !gives_away(line)) {
      --counts_[line.mark].made;
    }
  }

  std::map<std::string, CastingCount> counts() { return std::move(counts_); }

 private:
  struct Casting {
    bool stands = false;
    bool counted = false;
  };

  void make(const LedgerEntry& line, Casting& casting) {
    casting.stands = true;
    casting.counted = line.serial == 0 || numbers_.insert(line.serial).second;
    if (casting.counted) ++counts_[line.mark].made;
  }
  void keep_number(const LedgerEntry& line) {
    if (line.serial != 0) numbers_.insert(line.serial);
  }

  std::map<std::string, Casting> standing_;
  std::map<std::string, CastingCount> counts_;
  std::set<long long> numbers_;
};

}  // namespace

std::map<std::string, CastingCount> count_castings(std::span<const LedgerEntry> ledger) {
  CastingWalk walk;
  for (const LedgerEntry& line : ledger) walk.take(line);
  return walk.counts();
}

}  // namespace prismwright
