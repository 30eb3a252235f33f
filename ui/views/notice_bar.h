#pragma once

#include <QFrame>
#include <QString>
#include <QStringList>

class QLabel;
class QPushButton;

namespace prismwright {

/// A bar above the page with a whole sentence. A standing notice stays until it is no longer true; refusals are
/// added one by one, the newest in sight, and stay listed until the window closes.
class NoticeBar : public QFrame {
  Q_OBJECT

 public:
  enum class Kind { quiet, amiss };
  /// `name` is the object name; the label is NAME.text, the buttons NAME.dismiss and NAME.earlier.
  NoticeBar(Kind kind, const QString& name, QWidget* parent = nullptr);

  /// Shows this sentence alone; an empty one hides the bar.
  void tell(const QString& sentence);
  /// Shows this sentence and keeps those before it.
  void add(const QString& sentence);
  [[nodiscard]] const QStringList& all() const { return all_; }
  [[nodiscard]] QString shown() const;

 private:
  void showEarlier();
  QLabel* text_;
  QPushButton* earlier_;
  QPushButton* dismiss_;
  QStringList all_;
};

}  // namespace prismwright
