#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

#include "ui/style/before_window.h"
#include "ui/style/dress.h"

/// The window tests run on a real X screen (tests/support/with_screen) with settings of their own, so that
/// nothing of the person who runs them is read or changed.
int main(int argc, char** argv) {
  testing::InitGoogleTest(&argc, argv);
  const QTemporaryDir settings;
  qputenv("XDG_CONFIG_HOME", settings.path().toUtf8());
  prismwright::prepare_for_drawing();
  QApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("prismwright"));
  QCoreApplication::setOrganizationName(QStringLiteral("prismwright"));
  QGuiApplication::setQuitOnLastWindowClosed(false);
  prismwright::dress(application);
  return RUN_ALL_TESTS();
}
