#pragma once

#include <QLabel>

#include "core/base/outcome.h"

namespace prismwright {

/// The sentence of a refusal under the fields that it is about; not there while nothing is refused.
class RefusalLabel : public QLabel {
  Q_OBJECT

 public:
  RefusalLabel(const char* name, QWidget* parent);
  void tell(const QString& words);
  void tell(const Done& done);
};

}  // namespace prismwright
