#include "ui/models/wait_while.h"

#include <QElapsedTimer>
#include <QEventLoop>
#include <QTimer>

namespace prismwright {

void wait_while(const std::function<bool()>& busy, int timeout_ms) {
  QElapsedTimer clock;
  clock.start();
  while (busy() && clock.elapsed() < timeout_ms) {
    QEventLoop loop;
    QTimer::singleShot(20, &loop, &QEventLoop::quit);
    loop.exec();
  }
}

}  // namespace prismwright
