#pragma once

#include <QWidget>

class QToolButton;

namespace prismwright {

/// A sub-head that opens and shuts what stands under it. Object names: "fold.NAME" (the head), and the body is
/// given.
class Fold : public QWidget {
  Q_OBJECT

 public:
  Fold(const QString& name, const QString& title, QWidget* body, QWidget* parent = nullptr);
  void setOpen(bool open);
  [[nodiscard]] bool isOpen() const;

 private:
  QToolButton* head_;
  QWidget* body_;
};

}  // namespace prismwright
