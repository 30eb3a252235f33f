#pragma once

#include <QStringList>
#include <QWidget>

class QVBoxLayout;

namespace prismwright {

/// What the window shows while no lensbook is open: what can be begun, the books opened lately, and the
/// cautions. Object names: start.new, start.open, start.recent.N.
class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);
  void setRecent(const QStringList& paths);

 signals:
  void newWanted();
  void openWanted();
  void bookWanted(const QString& path);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QVBoxLayout* recent_;
};

}  // namespace prismwright
