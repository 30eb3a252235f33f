#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace prismwright {

/// What kind of trouble a Problem is; the batch program turns it into its exit code.
enum class Trouble {
  request,  ///< the values asked for cannot be (exit code 2)
  file,     ///< a file could not be read or written (exit code 3)
  stopped,  ///< the user stopped the work
};

/// A refusal that can be shown to the maker as it stands.
///
/// `text` is a whole sentence that names the value, the limit it breaks and what to do about it;
/// `code` is a stable word for tests and callers, `where` the key, zone or path concerned.
struct Problem {
  Trouble trouble = Trouble::request;
  std::string code;
  std::string where;
  std::string text;
};

inline Problem request_problem(std::string code, std::string where, std::string text) {
  return {Trouble::request, std::move(code), std::move(where), std::move(text)};
}
inline Problem file_problem(std::string code, std::string where, std::string text) {
  return {Trouble::file, std::move(code), std::move(where), std::move(text)};
}

/// Either a value or the Problem that kept it from being made. Never both, never neither.
template <class T>
class [[nodiscard]] Outcome {
 public:
  Outcome(T value) : held_(std::move(value)) {}            // NOLINT: implicit by intent
  Outcome(Problem problem) : held_(std::move(problem)) {}  // NOLINT: implicit by intent

  [[nodiscard]] bool ok() const { return std::holds_alternative<T>(held_); }
  explicit operator bool() const { return ok(); }

  /// The value. Calling it on a failed outcome throws std::bad_variant_access.
  [[nodiscard]] const T& value() const& { return std::get<T>(held_); }
  [[nodiscard]] T& value() & { return std::get<T>(held_); }
  [[nodiscard]] T&& value() && { return std::get<T>(std::move(held_)); }
  const T& operator*() const { return value(); }
  T& operator*() { return value(); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }

  /// The problem. Calling it on a successful outcome throws std::bad_variant_access.
  [[nodiscard]] const Problem& problem() const { return std::get<Problem>(held_); }

 private:
  std::variant<T, Problem> held_;
};

/// The outcome of an act that gives nothing back.
class [[nodiscard]] Done {
 public:
  Done() = default;
  Done(Problem problem) : problem_(std::move(problem)) {}  // NOLINT: implicit by intent

  [[nodiscard]] bool ok() const { return !problem_.has_value(); }
  explicit operator bool() const { return ok(); }
  [[nodiscard]] const Problem& problem() const { return problem_.value(); }

 private:
  std::optional<Problem> problem_;
};

}  // namespace prismwright
