#pragma once

namespace prismwright {

/// How many castings to pour for a number of sound ones.
struct CastingNeed {
  int sound = 0;      ///< that are wanted
  int castings = 0;   ///< to pour: sound / (1 - scrap rate), rounded up
  double chance = 1;  ///< that those are enough: at least `sound` of them come out, each lost with the scrap
                      ///< rate by itself (binomial law), 0 to 1
};

/// `sound` 0 or more, `scrap_percent` 0 to 90 (beyond: taken as the nearer end).
CastingNeed castings_for(int sound, double scrap_percent);

/// Chance that of `castings` at least `sound` come out, by the binomial law, within 1e-12.
double chance_of_sound(int sound, int castings, double scrap_percent);

/// The fewest castings that are enough with at least this chance (0 to 0.999999).
int castings_for_chance(int sound, double scrap_percent, double chance);

}  // namespace prismwright
