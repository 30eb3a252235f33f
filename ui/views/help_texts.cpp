#include "ui/views/help_texts.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace prismwright {
namespace {

QString tr(const char* text) { return QDialog::tr(text); }

QString part(const QString& head, const QString& text) {
  return QStringLiteral("<p><b>%1</b><br>%2</p>").arg(head, text);
}

/// Figures: wood ignites from 4.3 kW/m2 (Babrauskas 2001); monomer limits 29 CFR 1910.1000 and ACGIH; pressure
/// equipment EU 2014/68 and UK PSSR 2000; the sun figure is worked out from 900 W/m2, 200 mm and f = 250 mm.
QString cautions_text() {
  return part(tr("Sun"),
              tr("A lens left uncovered sets fire to what stands in its focus, indoors as well. A bull's-eye "
                 "of 200 mm puts about 25 W of sun into a spot of 2 to 3 mm; wood ignites from 4.3 kW/m². "
                 "Cover every finished panel, in the shop, on the road and in the lantern.")) +
         part(tr("Laser"),
              tr("A bench laser needs eye protection made for its wavelength, a beam stop behind the lens "
                 "and nobody at beam height. Every face of a prism reflects some of it.")) +
         part(tr("Pressure"),
              tr("A casting pot under pressure is pressure equipment: in the EU above 0.5 bar, in the UK "
                 "with a written scheme of examination from 250 bar litre. Whether yours may be used is "
                 "for local code and a competent person to say, not for this program.")) +
         part(tr("Monomer"),
              tr("Its vapour is flammable (flash point 11.5 °C, lower explosive limit 1.7 %) and harmful: "
                 "100 ppm is the limit of 29 CFR 1910.1000, 50 ppm that of ACGIH. Ventilate, keep sparks "
                 "away, wear gloves; the maker's safety sheet wins over this text.")) +
         part(tr("Lifting"),
              tr("A glazed panel is heavier than it looks. Lift with gear rated for it, hold it by the "
                 "frame, never by the prisms, and keep feet from under it.")) +
         part(tr("Licensed practice"),
              tr("An aid to navigation needs the consent of the lighthouse authority; structural, "
                 "electrical and pressure work belong to those licensed for it where you work. "
                 "Figures of this program are an aid to their judgement."));
}

void show_text(QWidget* parent, const QString& name, const QString& title, const QString& text) {
  QDialog dialog(parent);
  dialog.setObjectName(name);
  dialog.setWindowTitle(title);
  auto* column = new QVBoxLayout(&dialog);
  column->setContentsMargins(24, 16, 24, 16);
  auto* label = new QLabel(text, &dialog);
  label->setTextFormat(Qt::RichText);
  label->setWordWrap(true);
  label->setMinimumWidth(600);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  column->addWidget(label);
  auto* buttons = new QDialogButtonBox(&dialog);
  auto* close = buttons->addButton(tr("Close"), QDialogButtonBox::AcceptRole);
  close->setObjectName(name + ".close");
  QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
  column->addWidget(buttons);
  dialog.exec();
}

}  // namespace

void show_cautions(QWidget* parent) {
  show_text(parent, QStringLiteral("cautions"), tr("Cautions"), cautions_text());
}

void show_about(QWidget* parent) {
  show_text(
      parent, QStringLiteral("about"), tr("About Prismwright"),
      part(tr("Prismwright %1").arg(QCoreApplication::applicationVersion()),
           tr("A workbench for makers of replica lighthouse lenses. Free software under the GNU General Public "
              "Licence, version 3 or later, without any warranty.")) +
          part(
              tr("What its figures are"),
              tr("The section is proved with a point of light in the focus; published sources are named beside "
                 "the checks that use them in the tests. Prove your own lens on the bench before it is "
                 "glazed.")) +
          part(tr("What leaves the workshop"),
               tr("The page Despatch writes everything into a folder of the day, with checksums. What has not "
                  "changed is kept as it lies in the pack before; what stands in a clash is withheld until "
                  "there is room for it.")));
}

}  // namespace prismwright
