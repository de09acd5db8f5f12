// A paper as structured JSON: the same blocks in the same order, for scripts (schema/paper.schema.json).
//
// Promises: every word of the document; a line of text without weights is a string, one with weights a list of
//   {"text","weight"}. Photographs are named by hash and not carried.
#pragma once

#include "entry/value.h"
#include "paper/document.h"

namespace undersheet::paper {

[[nodiscard]] entry::Value document_value(const Document& document);
[[nodiscard]] std::string render_json(const Document& document);

} // namespace undersheet::paper
