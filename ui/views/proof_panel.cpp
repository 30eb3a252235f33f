#include "ui/views/proof_panel.h"

#include <QGridLayout>
#include <QLabel>

#include "ui/views/colour_table.h"
#include "ui/views/facet_words.h"
#include "ui/views/glass_bars.h"
#include "ui/views/lamp_light.h"
#include "ui/views/loss_table.h"
#include "ui/views/strip_table.h"

namespace prismwright {
namespace {

QLabel* head(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setProperty("head", true);
  return label;
}

}  // namespace

ProofPanel::ProofPanel(Workbench* bench, QWidget* parent) : QWidget(parent) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 8, 0, 0);
  grid->setHorizontalSpacing(12);
  grid->setVerticalSpacing(4);
  auto* sums = new QLabel(this);
  sums->setObjectName(QStringLiteral("proof.glass.sums"));
  sums->setWordWrap(true);
  grid->addWidget(head(tr("Light that does not leave level"), this), 0, 0);
  grid->addWidget(new LossTable(bench, this), 1, 0);
  grid->addWidget(head(tr("Dark strips of the level beam"), this), 2, 0);
  grid->addWidget(new StripTable(bench, this), 3, 0);
  grid->addWidget(head(tr("Glass by zone"), this), 0, 1);
  grid->addWidget(new GlassBars(bench, sums, this), 1, 1);
  grid->addWidget(head(tr("Colours: departure of the middle ray from its aim"), this), 2, 1);
  grid->addWidget(new ColourTable(bench, this), 3, 1);
  grid->addWidget(sums, 4, 1);
  grid->addWidget(new LampLightPanel(bench, this), 5, 0, 1, 2);
  grid->addWidget(new FacetWords(bench, this), 6, 0, 1, 2);
  grid->setRowStretch(1, 1);
  grid->setRowStretch(3, 1);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
}

}  // namespace prismwright
