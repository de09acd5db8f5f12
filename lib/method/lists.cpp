#include "method/lists.h"

#include "base/text.h"
#include "method/meant.h"
#include "method/words.h"

#include <algorithm>
#include <array>

namespace undersheet::method {
namespace {

using entry::Value;

char between(FieldType type) { return type == FieldType::points ? ' ' : ','; }

std::vector<std::string> list_pieces(std::string_view typed, FieldType type) {
    std::vector<std::string> pieces;
    const std::string text =
        replaced(replaced(std::string(typed), ";", std::string(1, between(type))), "\t", " ");
    for (const std::string& piece : split(text, between(type))) {
        const std::string_view bare = trimmed(piece);
        if (!bare.empty()) pieces.emplace_back(bare);
    }
    return pieces;
}

// A corner point may come as [x, y], everything else as text or a number.
Result<std::string> piece_text(const Value& item) {
    if (const auto* text = item.text()) return std::string(trimmed(*text));
    if (const auto* number = item.number()) return number->text();
    const auto* pair = item.list();
    const bool is_point = pair != nullptr && pair->size() == 2 && (*pair)[0].number() != nullptr &&
                          (*pair)[1].number() != nullptr;
    if (is_point) return (*pair)[0].number()->text() + "," + (*pair)[1].number()->text();
    return Fault{Code::json_shape, "holds something that is neither text nor number", {}, {}};
}

Result<std::vector<std::string>> typed_pieces(const Field& field, const Value& typed) {
    if (const auto* text = typed.text()) return list_pieces(*text, field.type);
    if (const auto* number = typed.number()) return std::vector<std::string>{number->text()};
    if (typed.list() == nullptr) {
        return Fault{Code::json_shape, "takes a list", {}, "type " + std::string(type_words(field.type))};
    }
    std::vector<std::string> pieces;
    for (const Value& item : *typed.list()) {
        auto piece = piece_text(item);
        if (!piece) return piece.fault();
        pieces.push_back(std::move(*piece));
    }
    return pieces;
}

Result<std::string> place_piece(const std::string& piece, FieldType type) {
    auto place = entry::parse_place(piece);
    if (!place) return place.fault();
    if (type == FieldType::places || place->form == entry::PlaceForm::point) return entry::place_text(*place);
    return Fault{Code::place_wrong_type,
                 "'" + shown(piece) + "' is " + std::string(place_words(place->form)),
                 {},
                 "type " + std::string(place_words(entry::PlaceForm::point))};
}

Result<std::string> hash_piece(const std::string& piece) {
    auto hash = entry::parse_hash(lower_ascii(piece));
    if (!hash) return hash.fault();
    return entry::hash_text(*hash);
}

Result<std::string> read_piece(const Field& field, const std::string& piece, const FindPerson& person) {
    if (auto done = check_text(field, piece); !done) return done.fault();
    switch (field.type) {
    case FieldType::people:
        return find_person(piece, person);
    case FieldType::places:
    case FieldType::points:
        return place_piece(piece, field.type);
    case FieldType::hashes:
        return hash_piece(piece);
    default:
        return piece;
    }
}

Done check_count(const Field& field, std::size_t count) {
    constexpr std::size_t kMost = 256; // members of a list in the strict written form
    const auto fewest = static_cast<std::size_t>(std::max(field.shortest, 1));
    if (count >= fewest && count <= kMost) return {};
    const std::string limit = count < fewest ? "it needs " + std::to_string(fewest) : "at most 256 are kept";
    return Fault{Code::field_out_of_range,
                 "has " + std::to_string(count) + (count == 1 ? " piece" : " pieces"),
                 {},
                 limit};
}

} // namespace

bool is_list(FieldType type) {
    constexpr std::array kLists{FieldType::people, FieldType::places, FieldType::points, FieldType::hashes,
                                FieldType::list};
    return std::find(kLists.begin(), kLists.end(), type) != kLists.end();
}

Result<TypedList> typed_list(const Field& field, const Value& typed, const FindPerson& person) {
    const auto pieces = typed_pieces(field, typed);
    if (!pieces) return pieces.fault();
    if (auto done = check_count(field, pieces->size()); !done) return done.fault();
    TypedList read;
    std::vector<std::string> texts;
    for (const std::string& piece : *pieces) {
        auto item = read_piece(field, piece, person);
        if (!item) return item.fault();
        texts.push_back(*item);
        read.items.emplace_back(std::move(*item));
    }
    const auto* text = typed.text();
    if (text != nullptr &&
        *text != joined(texts, std::string_view(field.type == FieldType::points ? " " : ",")))
        read.raw = *text;
    return read;
}

Result<std::string> find_person(std::string_view name, const FindPerson& person) {
    if (person) return person(name);
    return Fault{Code::person_unknown, "'" + shown(name) + "' is nobody known here", {}, {}};
}

} // namespace undersheet::method
