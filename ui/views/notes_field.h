#pragma once

#include <QPlainTextEdit>
#include <string>

#include "ui/models/workbench.h"

namespace prismwright {

/// A field of several lines for a text quantity, as high as its text; leaving it sends the edit. Object name:
/// "field.KEY".
class NotesField : public QPlainTextEdit {
  Q_OBJECT

 public:
  NotesField(Workbench* bench, std::string key, QWidget* parent = nullptr);

 protected:
  void focusOutEvent(QFocusEvent* event) override;
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fitHeight();
  void follow();
  void send();
  Workbench* bench_;
  std::string key_;
};

}  // namespace prismwright
