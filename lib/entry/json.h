// Reading and writing JSON: leniently for what people and files bring, strictly for what is hashed and signed.
//
// Promises: numbers keep the digits that were written; a key that stands twice, a byte order mark, bytes that are not UTF-8,
//   null, and more than the limits below are refused with the line. read_strict accepts exactly the bytes that
//   write_strict makes, so the stored bytes are the only written form there is.
// The strict form is a subset of RFC 8785 (no white space, keys ascending, shortest escapes), with plain decimals.
// Does not: know what a member means.
#pragma once

#include "entry/value.h"

namespace undersheet::entry {

struct JsonLimits {
    std::size_t bytes = 16U << 20U;
    int depth = 32;
    std::size_t members = 100'000; // in any one list or object
};

// Any JSON text without null. Exponents are refused: nobody measures 1e3 mm.
[[nodiscard]] Result<Value> read_json(std::string_view text, const JsonLimits& limits = {});

// 64 KiB, depth 8, 256 members, keys [a-z][a-z0-9_]{0,31}, and writing it again gives the same bytes.
[[nodiscard]] Result<Value> read_strict(std::string_view bytes);

[[nodiscard]] std::string write_strict(const Value& value);
[[nodiscard]] std::string write_pretty(const Value& value); // two blanks an indent, for people and scripts

} // namespace undersheet::entry
