#include "ui/models/light_thread.h"

#include <exception>
#include <utility>

namespace prismwright {

int LightThread::start(std::shared_ptr<const LensPlan> plan, const LightAsk& ask) {
  return thread_.start([this, plan = std::move(plan), ask](int job, const WorkThread::Wanted& wanted) {
    listener_.finished(job, work(job, *plan, ask, wanted));
  });
}

Outcome<LightReport> LightThread::work(int job, const LensPlan& plan, const LightAsk& ask,
                                       const WorkThread::Wanted& wanted) {
  const Progress progress = [&](double share, std::string_view what) {
    listener_.progress(job, share, what);
    return wanted();
  };
  const BeamWatcher watcher = [&](const BeamMap& beam) { listener_.sharpened(job, beam); };
  try {
    return light_report(plan, ask, progress, watcher);
  } catch (const std::exception& error) {
    return request_problem("light", "", std::string("The light could not be worked out: ") + error.what());
  }
}

}  // namespace prismwright
