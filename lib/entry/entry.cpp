#include "entry/entry.h"

#include "base/text.h"
#include "entry/json.h"
#include "entry/names.h"

#include <algorithm>
#include <tuple>

namespace undersheet::entry {
namespace {

constexpr std::string_view kForm = "undersheet.entry.1";
constexpr std::string_view kAnyForm = "undersheet.entry.";
constexpr std::size_t kLongestPart = 64;

bool is_count(const Value& value) {
    return value.number() != nullptr && value.number()->is_integer() && value.number()->whole() >= 1;
}
bool is_millis(const Value& value) {
    return value.number() != nullptr && value.number()->is_integer() && value.number()->whole() >= 0;
}
template <std::size_t Digits>
bool is_digits(const Value& value) {
    return value.text() != nullptr && is_hex(*value.text(), Digits);
}
bool is_author(const Value& value) {
    return value.text() != nullptr && (value.text()->empty() || is_person(*value.text()));
}
bool is_id(const Value& value) { return value.text() != nullptr && is_entry_id(*value.text()); }
bool is_time(const Value& value) {
    const auto time = parse_time(value.text() == nullptr ? std::string_view() : *value.text());
    return time.ok() && time->text == *value.text();
}
bool is_kind(const Value& value) {
    if (value.text() == nullptr || value.text()->empty() || value.text()->size() > 32) return false;
    const std::string& kind = *value.text();
    return kind[0] >= 'a' && kind[0] <= 'z' && std::all_of(kind.begin(), kind.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
           });
}
bool is_part(const Value& value) {
    if (value.text() == nullptr || value.text()->empty() || value.text()->size() > kLongestPart) return false;
    return std::all_of(value.text()->begin(), value.text()->end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '/' ||
               c == '-' || c == '_' || c == '.';
    });
}
bool is_place(const Value& value) {
    if (value.text() == nullptr || value.text()->empty()) return false;
    const auto place = parse_place(*value.text());
    return place.ok() && place_text(*place) == *value.text();
}
bool is_object(const Value& value) { return value.map() != nullptr; }
bool is_raw(const Value& value) {
    return value.map() != nullptr && !value.map()->empty() &&
           std::all_of(value.map()->begin(), value.map()->end(),
                       [](const Member& m) { return m.value.text() != nullptr; });
}
bool is_seen(const Value& value) {
    const List* heads = value.list();
    if (heads == nullptr || heads->empty() || !std::all_of(heads->begin(), heads->end(), is_digits<64>))
        return false;
    return std::adjacent_find(heads->begin(), heads->end(), [](const Value& a, const Value& b) {
               return *a.text() >= *b.text();
           }) == heads->end();
}
bool is_yes(const Value& value) { return value.boolean() != nullptr && *value.boolean(); }
bool is_form(const Value& value) { return value.text() != nullptr && *value.text() == kForm; }

// The members of the written form, ascending; what each must look like is said in entry.h.
struct MemberRule {
    std::string_view name;
    bool needed;
    bool (*fits)(const Value&);
};
constexpr MemberRule kMembers[] = {
    {"akey", false, is_digits<64>},
    {"asig", false, is_digits<128>},
    {"author", true, is_author},
    {"boot", true, is_digits<16>},
    {"clock", true, is_time},
    {"data", true, is_object},
    {"dctr", true, is_count},
    {"dev", true, is_digits<32>},
    {"dprev", false, is_digits<64>},
    {"id", true, is_id},
    {"job", true, is_digits<32>},
    {"kind", true, is_kind},
    {"lam", true, is_count},
    {"mono_millis", true, is_millis},
    {"part", false, is_part},
    {"place", false, is_place},
    {"prev", false, is_digits<64>},
    {"raw", false, is_raw},
    {"seen", false, is_seen},
    {"seq", true, is_count},
    {"simulated", false, is_yes},
    {"supplement", false, is_digits<64>},
    {"v", true, is_form},
    {"when", true, is_time},
};

Fault entry_malformed(std::string detail) { return {Code::body_malformed, std::move(detail), "entry"}; }

// Every member is known, every needed one is there, each looks as it must.
Done check_members(const Value& body) {
    if (body.map() == nullptr) return entry_malformed("the body is no object");
    const std::string form = body.text_of("v");
    if (form.starts_with(kAnyForm) && form != kForm)
        return entry_malformed("its written form '" + form + "' is newer than this program");
    std::size_t known = 0;
    for (const MemberRule& rule : kMembers) {
        const Value* member = body.find(rule.name);
        if (member == nullptr && rule.needed)
            return entry_malformed("'" + std::string(rule.name) + "' is missing");
        if (member == nullptr) continue;
        ++known;
        if (!rule.fits(*member))
            return entry_malformed("'" + std::string(rule.name) + "' is not in its written form");
    }
    if (known != body.map()->size()) return entry_malformed("there is a member that this form does not have");
    return {};
}

std::int64_t whole(const Value& body, std::string_view key) { return body.find(key)->number()->whole(); }

std::optional<Hash> optional_hash(const Value& body, std::string_view key) {
    const Value* member = body.find(key);
    return member == nullptr ? std::nullopt : std::optional<Hash>(*parse_hash(*member->text()));
}

template <std::size_t Bytes>
std::array<std::uint8_t, Bytes> from_digits(const std::string& digits) {
    std::array<std::uint8_t, Bytes> bytes{};
    const auto read = unhex(digits);
    std::copy(read->begin(), read->end(), bytes.begin());
    return bytes;
}

void fill_own_hand(Entry& entry, const Value& body) {
    if (body.find("akey") == nullptr) return; // and asig with it
    entry.own_key = from_digits<32>(body.text_of("akey"));
    entry.own_signature = from_digits<64>(body.text_of("asig"));
}

Value object_of(const Value& body, std::string_view key) {
    const Value* member = body.find(key);
    return member == nullptr ? Value() : *member;
}

// Takes the checked members over.
Entry filled(const Value& body) {
    Entry entry;
    entry.kind = body.text_of("kind");
    entry.job = body.text_of("job");
    entry.author = body.text_of("author");
    entry.device = body.text_of("dev");
    entry.id = body.text_of("id");
    entry.boot = body.text_of("boot");
    entry.part = body.text_of("part");
    entry.place = *parse_place(body.text_of("place"));
    entry.when = *parse_time(body.text_of("when"));
    entry.clock = *parse_time(body.text_of("clock"));
    entry.simulated = body.is_yes("simulated");
    entry.data = object_of(body, "data");
    entry.raw = object_of(body, "raw");
    entry.seq = whole(body, "seq");
    entry.dctr = whole(body, "dctr");
    entry.lam = whole(body, "lam");
    entry.mono_millis = whole(body, "mono_millis");
    entry.prev = optional_hash(body, "prev");
    entry.dprev = optional_hash(body, "dprev");
    entry.supplement = optional_hash(body, "supplement");
    fill_own_hand(entry, body);
    for (const Value& head : body.list_of("seen")) entry.seen.push_back(*parse_hash(*head.text()));
    return entry;
}

// What two or three members say together must not contradict itself.
Done check_together(const Entry& entry) {
    if (entry.prev.has_value() != (entry.seq > 1))
        return entry_malformed("'prev' and 'seq' do not fit together");
    if (entry.dprev.has_value() != (entry.dctr > 1))
        return entry_malformed("'dprev' and 'dctr' do not fit together");
    if (entry.own_key && entry.author.empty()) return entry_malformed("'asig' is nobody's");
    if (entry.dctr < entry.seq) return entry_malformed("'dctr' is smaller than 'seq'");
    if (entry.dctr == entry.seq && entry.dprev != entry.prev)
        return entry_malformed("'prev' and 'dprev' do not fit together");
    const bool knows_another = entry.prev.has_value() || !entry.seen.empty();
    if (knows_another != (entry.lam > 1)) return entry_malformed("'lam' does not fit to what was known");
    for (const Member& member : *entry.raw.map()) {
        if (entry.data.find(member.key) == nullptr)
            return entry_malformed("'raw' names a field that 'data' does not have");
    }
    return {};
}

std::string plain_text(const Value& value) {
    if (value.text() != nullptr) return *value.text();
    if (value.number() != nullptr) return value.number()->text();
    if (value.boolean() != nullptr) return *value.boolean() ? "yes" : "no";
    if (value.list() == nullptr) return write_strict(value);
    std::vector<std::string> pieces;
    for (const Value& item : *value.list()) pieces.push_back(plain_text(item));
    return joined(pieces, ", ");
}

} // namespace

std::string Entry::field_text(std::string_view field) const {
    const auto held = personal.find(std::string(field));
    if (held != personal.end()) return held->second;
    const Value* value = data.find(field);
    if (value == nullptr) return {};
    return commitment_of(*value) ? "(erased)" : plain_text(*value);
}

std::optional<Hash> commitment_of(const Value& value) {
    const Value* cid = value.find("cid");
    if (cid == nullptr || value.map()->size() != 1 || !is_digits<64>(*cid)) return std::nullopt;
    return *parse_hash(*cid->text());
}

bool comes_before(const Entry& a, const Entry& b) {
    return std::tie(a.lam, a.device, a.seq, a.hash) < std::tie(b.lam, b.device, b.seq, b.hash);
}

Result<Entry> read_entry(std::string_view body, const Signature& signature) {
    const auto value = read_strict(body);
    if (!value) return value.fault();
    if (auto done = check_members(*value); !done) return done.fault();
    if ((value->find("akey") == nullptr) != (value->find("asig") == nullptr))
        return entry_malformed("'akey' and 'asig' do not stand together");
    Entry entry = filled(*value);
    if (auto done = check_together(entry); !done) return done.fault();
    entry.hash = sha256(body);
    entry.signature = signature;
    entry.body = std::string(body);
    return entry;
}

} // namespace undersheet::entry
