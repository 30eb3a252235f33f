#include "ui/models/window_progress.h"

#include <QMetaObject>
#include <utility>

namespace prismwright {

Progress window_progress(QObject* receiver, WorkThread::Wanted wanted,
                         std::function<void(double share, const QString& what)> show,
                         std::chrono::milliseconds every) {
  using Clock = std::chrono::steady_clock;
  return [receiver, wanted = std::move(wanted), show = std::move(show), every, last_told = Clock::time_point()](
             double share, std::string_view what) mutable {
    const auto now = Clock::now();
    if (now - last_told < every) return wanted();
    last_told = now;
    const QString words = QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size()));
    QMetaObject::invokeMethod(
        receiver, [show, share, words] { show(share, words); }, Qt::QueuedConnection);
    return wanted();
  };
}

}  // namespace prismwright
