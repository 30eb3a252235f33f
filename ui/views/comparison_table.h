#pragma once

#include <QTableWidget>
#include <optional>

#include "core/lens/section_compare.h"

namespace prismwright {

/// What differs between two sections: figures, settings and zones, the first beside the second.
class ComparisonTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit ComparisonTable(QWidget* parent = nullptr);
  void setComparison(const std::optional<SectionComparison>& comparison, bool inches);

 private:
  void addHead(const QString& words);
  void addPair(const QString& what, const QString& first, const QString& second);
  void addFigures(const SectionComparison& comparison);
  void addSettings(const SectionComparison& comparison);
  void addZones(const SectionComparison& comparison);

  bool inches_ = false;
};

}  // namespace prismwright
