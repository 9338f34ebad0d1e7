#ifndef CORE_BASE_RESULT_H
#define CORE_BASE_RESULT_H

#include <cassert>
#include <utility>
#include <variant>

#include "core/base/finding.h"

namespace tamis::base {

/// A value, or the finding that says why there is none. Asking for the one that is not there is a broken promise
/// of the caller (assert).
template <class Value>
class [[nodiscard]] Result {
 public:
  Result(Value value) : held_(std::move(value)) {}      // NOLINT: a value is a result
  Result(Finding finding) : held_(std::move(finding)) {}  // NOLINT: so is a refusal

  explicit operator bool() const { return held_.index() == 0; }
  [[nodiscard]] const Value& operator*() const& {
    assert(held_.index() == 0);
    return *std::get_if<0>(&held_);
  }
  [[nodiscard]] Value& operator*() & {
    assert(held_.index() == 0);
    return *std::get_if<0>(&held_);
  }
  [[nodiscard]] Value&& operator*() && {
    assert(held_.index() == 0);
    return std::move(*std::get_if<0>(&held_));
  }
  [[nodiscard]] const Value* operator->() const { return &**this; }
  [[nodiscard]] Value* operator->() { return &**this; }
  [[nodiscard]] const Finding& fault() const {
    assert(held_.index() == 1);
    return *std::get_if<1>(&held_);
  }
  [[nodiscard]] Finding& fault() {
    assert(held_.index() == 1);
    return *std::get_if<1>(&held_);
  }

 private:
  std::variant<Value, Finding> held_;
};

}  // namespace tamis::base

#endif
