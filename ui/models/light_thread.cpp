#include "ui/models/light_thread.h"

#include <exception>
#include <utility>

namespace prismwright {

LightThread::LightThread(Listener listener) : listener_(std::move(listener)), thread_([this] { run(); }) {}

LightThread::~LightThread() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    wanted_job_ = 0;
    next_.reset();
  }
  wake_.notify_all();
  thread_.join();
}

int LightThread::start(std::shared_ptr<const LensPlan> plan, const LightAsk& ask) {
  const std::lock_guard lock(mutex_);
  next_ = Job{++last_number_, std::move(plan), ask};
  wanted_job_ = last_number_;
  wake_.notify_all();
  return last_number_;
}

void LightThread::stop() {
  const std::lock_guard lock(mutex_);
  wanted_job_ = 0;
}

void LightThread::run() {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || next_; });
      if (closing_) return;
      job = std::move(*next_);
      next_.reset();
    }
    Outcome<LightReport> report = work(job);
    listener_.finished(job.number, std::move(report));
  }
}

Outcome<LightReport> LightThread::work(const Job& job) {
  const Progress progress = [this, &job](double share, std::string_view what) {
    listener_.progress(job.number, share, what);
    return wanted(job.number);
  };
  const BeamWatcher watcher = [this, &job](const BeamMap& beam) { listener_.sharpened(job.number, beam); };
  try {
    return light_report(*job.plan, job.ask, progress, watcher);
  } catch (const std::exception& error) {
    return request_problem("light", "", std::string("The light could not be worked out: ") + error.what());
  }
}

}  // namespace prismwright
