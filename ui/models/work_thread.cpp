#include "ui/models/work_thread.h"

#include <utility>

namespace prismwright {

WorkThread::WorkThread() : thread_([this] { run(); }) {}

WorkThread::~WorkThread() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    wanted_job_ = 0;
    next_.reset();
  }
  wake_.notify_all();
  thread_.join();
}

int WorkThread::start(Work work) {
  const std::lock_guard lock(mutex_);
  next_ = Job{++last_number_, std::move(work)};
  wanted_job_ = last_number_;
  wake_.notify_all();
  return last_number_;
}

void WorkThread::stop() {
  const std::lock_guard lock(mutex_);
  wanted_job_ = 0;
}

void WorkThread::run() {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || next_; });
      if (closing_) return;
      job = std::move(*next_);
      next_.reset();
    }
    job.work(job.number, [this, number = job.number] { return wanted_job_.load() == number; });
  }
}

}  // namespace prismwright
