#pragma once

#include <string>
#include <vector>

#include "core/drawing/lengths.h"
#include "core/lens/plan.h"
#include "core/light/light_report.h"
#include "core/papers/document_pages.h"

namespace prismwright {

// Parts of the light report as papers tell them; the light paper has all, the dossier some. Each begins with
// its own heading.

void write_lamp(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
                const LengthWords& lengths);
/// The beam's figures and its two cuts.
void write_beam(DocumentPages& pages, const LightReport& light, const LengthWords& lengths);
void write_budget(DocumentPages& pages, const LightReport& light);
/// Character against the brief, flashes, the figure of one period.
void write_rhythm(DocumentPages& pages, const LensPlan& plan, const LightReport& light);
void write_ranges(DocumentPages& pages, const LensPlan& plan, const LightReport& light);
void write_colours(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
                   const LengthWords& lengths);
void write_sun(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
               const LengthWords& lengths);

/// What the sun does at the focus, and what to do about it, in sentences.
std::vector<std::string> sun_sentences(const LensPlan& plan, const LightReport& light,
                                       const LengthWords& lengths);
std::string candela_words(double cd);  ///< "12345 cd"
/// "Fl 10s, as asked for", or what differs from the brief's.
std::string character_words(const LensPlan& plan, const LightReport& light);

}  // namespace prismwright
