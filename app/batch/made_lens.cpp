#include "app/batch/made_lens.h"

#include <utility>

#include "app/batch/progress_line.h"

namespace prismwright {

Outcome<MadePrisms> make_prisms(const Lensbook& book, Voice& voice) {
  auto plan = plan_lens(book.values());
  if (!plan) return plan.problem();
  return make_prisms(std::move(plan).value(), voice);
}

Outcome<MadePrisms> make_prisms(LensPlan plan, Voice& voice) {
  ProgressLine line(voice);
  auto bodies = BodyShop().make(plan, line.of("Prisms"));
  if (!bodies) return bodies.problem();
  return MadePrisms{std::move(plan), std::move(bodies).value()};
}

Outcome<MadeFrame> make_metal(const LensPlan& plan, Voice& voice) {
  MadeFrame frame{plan_frame(plan), {}};
  ProgressLine line(voice);
  auto bodies = make_frame(frame.plan, line.of("Frame"));
  if (!bodies) return bodies.problem();
  frame.bodies = std::move(bodies).value();
  return frame;
}

}  // namespace prismwright
