#include "core/works/works_cautions.h"

namespace prismwright {

namespace {

constexpr Caution kCautions[] = {
    {"Monomer",
     "Its vapour is harmful and burns: flash point 11.5 C, lower explosive limit 1.7 %, exposure limits of 50 "
     "to "
     "100 ppm. Ventilate, keep sparks away, wear gloves; the maker's safety sheet wins over this text."},
    {"Exotherm",
     "Resin heats itself as it sets, thick sections the most, and a vessel in use stays shut until it has "
     "cooled. Too much initiator or heat can make it boil or run away. Try a small casting first, and follow "
     "the "
     "resin maker's sheet."},
    {"Pressure",
     "Casting pots are pressure vessels: in the EU above 0.5 bar, in the UK with a written scheme of "
     "examination "
     "from 250 bar litre. Never open one under pressure. Local code and a competent person decide how they are "
     "built, examined and used, not this program."},
};

}  // namespace

std::span<const Caution> casting_cautions() { return kCautions; }

}  // namespace prismwright
