#pragma once

#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "core/papers/money.h"
#include "core/works/works_reckoning.h"

namespace prismwright {

/// One spare casting of a kind, sound, polished and proved, poured with the lens from its own moulds.
struct SpareOffer {
  std::string kind;     ///< name of the master
  int prisms = 0;       ///< of the lens that are of this kind
  double resin_kg = 0;  ///< scrap too
  double hours = 0;     ///< scrap too
  Money price;          ///< margin included
};

/// What may be had beyond the lens, priced at the rates of the works page. All prices hold the margin.
struct EstimateOptions {
  std::vector<SpareOffer> spares;  ///< one for each kind
  Money one_set;                   ///< sum of their prices: one casting of every kind
  int sets = 0;                    ///< as asked for
  Money all_sets;
  int further_moulds = 0;  ///< that so many sets ask for, because the lens's own would be worn out
  Money further_moulds_price;
  Money new_moulds;   ///< one of every kind, unused, to be handed over
  Money new_masters;  ///< one of every kind, printed and finished, to be handed over
};

/// A casting that comes out sound costs what one costs over the share that comes out:
///
///   price = [ V m c + (p A + q + L / N) h ] / (1 - s) (1 + g)
///
/// V its volume, m the resin poured per volume and c its cost (the resin of the whole lens over the volume of
/// its castings: initiator, tint and head are in it), A its optical area at p hours, q the hours of proving, L
/// the hours of hands at all loads of vessel and oven over the N castings of the lens, h the cost of an hour, s
/// the scrap rate and g the margin. A mould costs its tooling and works.mould_h, a master its print and
/// works.master_h; where solids gave the tooling and the prints of the whole lens, their sum is shared out by
/// the kinds' own volume.
EstimateOptions estimate_options(const LensPlan& plan, const WorksReckoning& works, double margin_percent,
                                 int sets);

}  // namespace prismwright
