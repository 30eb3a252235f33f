#pragma once

#include <QLabel>

#include "ui/models/workbench.h"

namespace prismwright {

/// What flat inner faces do to the light away from the panels' middles, in words: worst departure from level by
/// zone, turn sideways, how far from its axis a panel lights. Hidden where no panel has one.
///
/// Object name: proof.facets.
class FacetWords : public QLabel {
  Q_OBJECT

 public:
  explicit FacetWords(Workbench* bench, QWidget* parent = nullptr);
};

}  // namespace prismwright
