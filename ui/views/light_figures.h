#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "core/light/light_report.h"

class QGridLayout;
class QLabel;

namespace prismwright {

/// The figures of a light that matter, in words, with what the rules find at fault and the caution of the sun.
///
/// Object names: light.figures (itself); figure.light.NAME for each figure; light.differs, light.warnings,
/// light.sun for the sentences.
class LightFigures : public QWidget {
  Q_OBJECT

 public:
  explicit LightFigures(QWidget* parent = nullptr);

  /// Null shows dashes.
  void setReport(std::shared_ptr<const LightReport> report);
  /// The figures belong to earlier values.
  void setStale(bool stale);

 private:
  void add(const char* name, const QString& label, const QString& meaning);
  void addHead(const QString& head);
  void set(const char* name, const QString& words);
  void setBeam(const LightReport& report);
  void setSight(const LightReport& report);
  void setSentences(const LightReport* report);
  QLabel* addSentence(const char* name);

  QGridLayout* grid_;
  QLabel* character_;
  QLabel* differs_;
  QLabel* warnings_;
  QLabel* sun_;
};

}  // namespace prismwright
