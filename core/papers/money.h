#pragma once

#include <string>

namespace prismwright {

/// Money as it is printed, in hundredths: what is added up and shown is what stands on the paper.
class Money {
 public:
  Money() = default;
  /// Rounded as "{:.2f}" prints it; at most 9e15 hundredths, a value that is not finite is 0.
  static Money printed(double value);
  static Money hundredths(long long count);

  [[nodiscard]] std::string words() const;  ///< "1234.50"
  [[nodiscard]] long long count() const { return hundredths_; }
  /// So many percent more, rounded.
  [[nodiscard]] Money share_percent(double percent) const;

  friend Money operator+(Money a, Money b) { return hundredths(a.hundredths_ + b.hundredths_); }
  friend Money operator-(Money a, Money b) { return hundredths(a.hundredths_ - b.hundredths_); }
  friend Money operator*(Money a, int times) { return hundredths(a.hundredths_ * times); }
  friend bool operator==(Money a, Money b) = default;

 private:
  long long hundredths_ = 0;
};

}  // namespace prismwright
