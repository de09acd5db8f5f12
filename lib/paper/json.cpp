#include "paper/json.h"

#include "entry/json.h"

#include <algorithm>

namespace undersheet::paper {

namespace {

using entry::List;
using entry::Value;

std::string_view weight_name(Weight weight) {
    switch (weight) {
    case Weight::strong:
        return "strong";
    case Weight::struck:
        return "struck";
    case Weight::plain:
        break;
    }
    return "plain";
}

Value text_value(const Text& text) {
    const bool is_plain = std::all_of(text.runs.begin(), text.runs.end(),
                                      [](const Run& run) { return run.weight == Weight::plain; });
    if (is_plain) return text.words();
    List runs;
    for (const Run& run : text.runs) {
        Value one;
        one.set("text", run.text).set("weight", weight_name(run.weight));
        runs.push_back(std::move(one));
    }
    return runs;
}

template <class Things, class Make>
Value list_of(const Things& things, Make make) {
    List all;
    for (const auto& thing : things) all.push_back(make(thing));
    return all;
}

Value typed(std::string_view type) {
    Value value;
    value.set("type", type);
    return value;
}

Value fact_value(const Fact& fact) {
    Value value;
    value.set("name", fact.name).set("value", text_value(fact.value));
    return value;
}

Value photograph_value(const Photograph& photograph) {
    Value value;
    value.set("hash", photograph.hash).set("caption", photograph.caption);
    return value;
}

Value header_value(const Header& header) {
    Value value;
    value.set("text", header.text).set("column", header.column == Column::figures ? "figures" : "words");
    return value;
}

Value row_value(const Row& row) {
    Value value;
    value.set("cells", list_of(row.cells, text_value)).set("beneath", list_of(row.beneath, text_value));
    return value;
}

struct BlockValue {
    Value operator()(const Heading& heading) const {
        return typed("heading").set("level", heading.level).set("text", heading.text);
    }
    Value operator()(const Verdict& verdict) const {
        return typed("verdict").set("text", text_value(verdict.text));
    }
    Value operator()(const Paragraph& said) const {
        return typed("paragraph").set("text", text_value(said.text));
    }
    Value operator()(const Listing& listing) const {
        return typed("listing").set("points", list_of(listing.points, text_value));
    }
    Value operator()(const Facts& facts) const {
        return typed("facts").set("rows", list_of(facts.rows, fact_value));
    }
    Value operator()(const Table& table) const {
        return typed("table")
            .set("caption", table.caption)
            .set("headers", list_of(table.headers, header_value))
            .set("rows", list_of(table.rows, row_value));
    }
    Value operator()(const Drawing& drawing) const {
        return typed("drawing")
            .set("title", drawing.title)
            .set("words", list_of(drawing.words, [](const std::string& line) { return Value(line); }));
    }
    Value operator()(const Photographs& photographs) const {
        return typed("photographs").set("pictures", list_of(photographs.pictures, photograph_value));
    }
    Value operator()(const Item& item) const {
        return typed("item")
            .set("number", item.number)
            .set("standing", item.standing)
            .set("what", text_value(item.what))
            .set("facts", list_of(item.facts, fact_value))
            .set("pictures", list_of(item.pictures, photograph_value));
    }
    Value operator()(const Signature& signature) const {
        return typed("signature")
            .set("meaning", signature.meaning)
            .set("name", signature.name)
            .set("role", signature.role)
            .set("when", signature.when)
            .set("note", signature.note)
            .set("struck", signature.weight == Weight::struck);
    }
    Value operator()(const PageBreak&) const { return typed("page_break"); }
};

Value head_value(const Head& head) {
    Value value;
    return value.set("firm", head.firm)
        .set("firm_address", head.firm_address)
        .set("firm_phone", head.firm_phone)
        .set("job", head.job)
        .set("roof", head.roof)
        .set("customer", head.customer)
        .set("customer_address", head.customer_address)
        .set("name", head.name)
        .set("number", head.number)
        .set("issue", head.issue)
        .set("date", head.date);
}

Value foot_value(const Foot& foot) {
    Value value;
    return value
        .set("cautions", list_of(foot.cautions, [](const std::string& caution) { return Value(caution); }))
        .set("standing", foot.standing)
        .set("made_with", foot.made_with)
        .set("check_value", foot.check_value);
}

} // namespace

entry::Value document_value(const Document& document) {
    Value value;
    return value.set("language", document.language)
        .set("head", head_value(document.head))
        .set("blocks",
             list_of(document.blocks, [](const Block& block) { return std::visit(BlockValue{}, block); }))
        .set("foot", foot_value(document.foot));
}

std::string render_json(const Document& document) { return entry::write_pretty(document_value(document)); }

} // namespace undersheet::paper
