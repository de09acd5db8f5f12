// A result is either what was asked for or the fault that says why not; it has to be looked at.
//
// Promises: never both, never neither. Asking a failed result for its value is our own mistake and throws std::logic_error.
// Does not: carry a stack of causes; a function that can explain more says it in the fault's own line.
#pragma once

#include "base/fault.h"

#include <stdexcept>
#include <utility>
#include <variant>

namespace undersheet {

template <class T>
class [[nodiscard]] Result {
public:
    Result(T value)
        : held_(std::in_place_index<0>, std::move(value)) {} // NOLINT: made from either on purpose
    Result(Fault fault) : held_(std::in_place_index<1>, std::move(fault)) {} // NOLINT

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }

    [[nodiscard]] const T& value() const& { return checked<0>(held_); }
    [[nodiscard]] T& value() & { return checked<0>(held_); }
    [[nodiscard]] T&& value() && { return std::move(checked<0>(held_)); }
    [[nodiscard]] const Fault& fault() const { return checked<1>(held_); }

    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    T&& operator*() && { return std::move(*this).value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

private:
    template <std::size_t I, class V>
    static auto& checked(V& held) {
        auto* found = std::get_if<I>(&held);
        if (found == nullptr) throw std::logic_error("a result was read as what it is not");
        return *found;
    }
    std::variant<T, Fault> held_;
};

template <>
class [[nodiscard]] Result<void> {
public:
    Result() = default;
    Result(Fault fault) : held_(std::move(fault)) {} // NOLINT
    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const Fault& fault() const {
        const auto* found = std::get_if<1>(&held_);
        if (found == nullptr) throw std::logic_error("a good result has no fault");
        return *found;
    }

private:
    std::variant<std::monostate, Fault> held_;
};

using Done = Result<void>;

} // namespace undersheet
