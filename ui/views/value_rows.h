#pragma once

#include <vector>

#include "ui/models/workbench.h"

class QFormLayout;
class QLabel;

namespace prismwright {

class QuantityEditor;

/// A quantity of a form with its label.
struct ValueRow {
  QLabel* label;
  QuantityEditor* editor;
};

/// The rows under a sub-head of a form beside a page, empty yet; `body` holds them.
QFormLayout* make_value_form(QWidget* body);

/// Adds a row for each quantity, edited in place. Every key must stand in the quantity table.
std::vector<ValueRow> add_value_rows(QFormLayout& form, Workbench* bench, const std::vector<const char*>& keys);

}  // namespace prismwright
