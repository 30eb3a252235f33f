#pragma once

#include <QStringList>
#include <QWidget>
#include <functional>

#include "ui/models/errors_words.h"
#include "ui/views/light_tables.h"

class QLabel;

namespace prismwright {

/// A table of results under its name, with a button that saves it as CSV. Its rows speak of prisms or zones and
/// can be selected by hand.
///
/// Object names: NAME (the table), NAME.save; the dialog is NAME.saveTo.
class SavedTable : public QWidget {
  Q_OBJECT

 public:
  SavedTable(const QString& name, const QString& title, QWidget* parent);

  /// `meaning` is told where the pointer rests on the title.
  void setTitle(const QString& title, const QString& meaning);
  void setTable(const ErrorsTable& table);
  /// Marks the rows that speak of these, and shows the first of them.
  void showMarks(const std::function<bool(const QString& mark)>& chosen);
  /// What the rows chosen by hand speak of, the row stood on first.
  [[nodiscard]] QStringList marks() const;
  [[nodiscard]] FigureTable* view() const { return view_; }

 signals:
  void chosen();  ///< rows were selected by hand

 private:
  void save();

  QString name_;
  QLabel* title_;
  FigureTable* view_;
  QWidget* save_;
  ErrorsTable table_;
  bool following_ = false;
};

}  // namespace prismwright
