#pragma once

#include <QWidget>
#include <array>
#include <memory>

#include "core/optics/proof.h"

namespace prismwright {

/// The shares of the fates as one bar. A share that is not nought is never thinner than two pixels.
class FateBar : public QWidget {
  Q_OBJECT

 public:
  explicit FateBar(QWidget* parent = nullptr);
  void setShares(const double (&shares)[kFates]);  ///< by Fate
  void clear();
  [[nodiscard]] QSize sizeHint() const override { return {200, 14}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::array<double, kFates> shares_{};
};

/// The fates as line, word and share, in rows that use the width there is.
class FateKey : public QWidget {
  Q_OBJECT

 public:
  explicit FateKey(QWidget* parent = nullptr);
  void setProof(std::shared_ptr<const Proof> proof);
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override { return {360, heightForWidth(360)}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {240, 40}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  /// Columns of equal width that fit.
  [[nodiscard]] int columnsIn(int width) const;
  [[nodiscard]] int entryWidth() const;

  std::shared_ptr<const Proof> proof_;
};

/// "97.31 %": a small share keeps a figure that tells it from nothing, nothing is "0 %".
QString share_text(double share);

}  // namespace prismwright
