#pragma once

#include <functional>
#include <string>

#include "app/batch/books.h"
#include "app/batch/verb.h"
#include "core/lens/section_edits.h"

namespace prismwright {

/// Opens the book, asks `make` for an edit of the section as it stands, writes it as one step and tells what
/// became of the section. Answers not_well when the section says, and did not say before, that something could
/// not be met as asked.
ExitCode change_section(const std::string& book_path, bool json, Voice& voice,
                        const std::function<Outcome<SectionEdit>(const LensValues&, const Section&)>& make);

/// Writes new values of an open book as one step and tells what became of the section; `notes` are told too,
/// and answer not_well.
ExitCode write_section(Lensbook& book, const LensValues& after, const std::string& what,
                       const std::vector<std::string>& notes, bool json, Voice& voice);

/// The band of that name, or a refusal that names all three.
Outcome<Band> read_band(const std::string& text);

}  // namespace prismwright
