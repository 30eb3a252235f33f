#include "app/batch/verbs.h"

namespace prismwright {

std::vector<std::unique_ptr<Verb>> all_verbs() {
  std::vector<std::unique_ptr<Verb>> verbs;
  verbs.push_back(new_verb());
  verbs.push_back(set_verb());
  verbs.push_back(undo_verb());
  verbs.push_back(redo_verb());
  verbs.push_back(keys_verb());
  verbs.push_back(show_verb());
  verbs.push_back(prove_verb());
  verbs.push_back(section_verb());
  verbs.push_back(bodies_verb());
  verbs.push_back(frame_verb());
  verbs.push_back(clearances_verb());
  verbs.push_back(light_verb());
  verbs.push_back(works_verb());
  verbs.push_back(bench_verb());
  verbs.push_back(papers_verb());
  verbs.push_back(pack_verb());
  return verbs;
}

}  // namespace prismwright
