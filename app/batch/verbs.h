#pragma once

#include <memory>
#include <vector>

#include "app/batch/verb.h"

namespace prismwright {

std::unique_ptr<Verb> new_verb();
std::unique_ptr<Verb> set_verb();
std::unique_ptr<Verb> undo_verb();
std::unique_ptr<Verb> redo_verb();
std::unique_ptr<Verb> keys_verb();
std::unique_ptr<Verb> show_verb();
std::unique_ptr<Verb> prove_verb();
std::unique_ptr<Verb> section_verb();
std::unique_ptr<Verb> bodies_verb();
std::unique_ptr<Verb> frame_verb();
std::unique_ptr<Verb> clearances_verb();
std::unique_ptr<Verb> light_verb();
std::unique_ptr<Verb> works_verb();
std::unique_ptr<Verb> bench_verb();
std::unique_ptr<Verb> papers_verb();
std::unique_ptr<Verb> pack_verb();

/// Every verb, in the order in which the help lists them.
std::vector<std::unique_ptr<Verb>> all_verbs();

}  // namespace prismwright
