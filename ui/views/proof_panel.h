#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// What the section costs in light and glass: losses by cause, dark strips, glass and colours by zone,
/// and the light of the lamp at its height.
///
/// Object names: proof.losses, section.strips, proof.glass, proof.glass.sums, proof.colours,
/// proof.lamp, proof.lamp.words, proof.facets.
class ProofPanel : public QWidget {
  Q_OBJECT

 public:
  explicit ProofPanel(Workbench* bench, QWidget* parent = nullptr);
};

}  // namespace prismwright
