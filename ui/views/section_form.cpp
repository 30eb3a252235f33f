#include "ui/views/section_form.h"

#include <QFormLayout>
#include <QLabel>

#include "ui/views/quantity_editor.h"

namespace prismwright {

SectionForm::SectionForm(Workbench* bench, QWidget* parent) : QScrollArea(parent) {
  setObjectName(QStringLiteral("section.form"));
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* inside = new QWidget(this);
  auto* form = new QFormLayout(inside);
  form->setContentsMargins(8, 8, 8, 8);
  form->setHorizontalSpacing(12);
  form->setVerticalSpacing(8);
  form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  form->setRowWrapPolicy(QFormLayout::DontWrapRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  for (const Quantity& quantity : quantities()) {
    if (!quantity.key.starts_with("section.")) continue;
    auto* editor = new QuantityEditor(bench, quantity.key, inside);
    QLabel* label = editor->makeLabel(inside);
    label->setWordWrap(true);
    label->setFixedWidth(140);
    form->addRow(label, editor);
  }
  setWidget(inside);
}

}  // namespace prismwright
