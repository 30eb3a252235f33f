#pragma once

#include <QObject>
#include <QString>
#include <chrono>
#include <functional>

#include "core/base/progress.h"
#include "ui/models/work_thread.h"

namespace prismwright {

/// A bar needs no more steps a second than this.
inline constexpr std::chrono::milliseconds kBarEvery{40};

/// Progress of work in another thread, shown in the receiver's: `show` is called through the receiver's event
/// loop, not after the receiver's end, for no more than one step in every `every` (0: for all). The work goes
/// on while `wanted` says so.
Progress window_progress(QObject* receiver, WorkThread::Wanted wanted,
                         std::function<void(double share, const QString& what)> show,
                         std::chrono::milliseconds every);

}  // namespace prismwright
