#include "ui/views/value_rows.h"

#include <QFormLayout>
#include <QLabel>

#include "ui/views/quantity_editor.h"

namespace prismwright {
namespace {

constexpr int kLabelWidth = 108;  // one column through all folds of a form

}  // namespace

QFormLayout* make_value_form(QWidget* body) {
  auto* form = new QFormLayout(body);
  form->setContentsMargins(0, 4, 0, 4);
  form->setHorizontalSpacing(12);
  form->setVerticalSpacing(6);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  return form;
}

std::vector<ValueRow> add_value_rows(QFormLayout& form, Workbench* bench,
                                     const std::vector<const char*>& keys) {
  std::vector<ValueRow> rows;
  QWidget* body = form.parentWidget();
  for (const char* key : keys) {
    auto* editor = new QuantityEditor(bench, key, body);
    QLabel* label = editor->makeLabel(body);
    label->setMinimumWidth(kLabelWidth);
    form.addRow(label, editor);
    rows.push_back({label, editor});
  }
  return rows;
}

}  // namespace prismwright
