#include "entry/compose.h"

#include "base/text.h"
#include "entry/json.h"
#include "entry/names.h"

#include <algorithm>

namespace undersheet::entry {
namespace {

constexpr std::size_t kLongestPersonal = 64U << 10U;

Done check_personal(const Draft& draft) {
    for (const auto& [field, value] : draft.personal) {
        if (!is_utf8(value) || has_control_characters(value))
            return Fault{Code::text_not_utf8, "this is no plain text", field};
        if (value.size() > kLongestPersonal)
            return Fault{Code::json_too_large, "this is longer than 64 KiB", field};
    }
    return {};
}

Secret make_secret(const std::string& value, World& world) {
    Secret secret;
    world.random(secret.salt);
    secret.cid = commitment(secret.salt, value);
    secret.value = value;
    return secret;
}

Value hash_list(std::vector<Hash> hashes) {
    std::sort(hashes.begin(), hashes.end());
    Value list = List{};
    for (const Hash& hash : hashes) list.push(hash_text(hash));
    return list;
}

// The members that say what is recorded.
void write_saying(Value& body, const Draft& draft) {
    body.set("kind", draft.kind).set("job", draft.job).set("author", draft.author);
    body.set("when", draft.when.text).set("data", draft.data);
    if (!draft.place.empty()) body.set("place", draft.place);
    if (!draft.part.empty()) body.set("part", draft.part);
    if (draft.supplement) body.set("supplement", hash_text(*draft.supplement));
    if (draft.raw.map() == nullptr || !draft.raw.map()->empty()) body.set("raw", draft.raw);
}

// The members that say where in the chain it stands.
void write_chain(Value& body, const Chain& chain) {
    body.set("seq", chain.seq + 1).set("dctr", chain.dctr + 1).set("lam", chain.lam + 1);
    if (chain.prev) body.set("prev", hash_text(*chain.prev));
    if (chain.dprev) body.set("dprev", hash_text(*chain.dprev));
    if (!chain.seen.empty()) body.set("seen", hash_list(chain.seen));
}

// The members that say which machine wrote it, and when by its own clocks.
void write_machine(Value& body, World& world, const Signer& signer) {
    body.set("v", "undersheet.entry.1").set("dev", signer.device()).set("boot", world.boot());
    body.set("clock", world.clock().text).set("mono_millis", world.mono_millis());
    if (world.is_simulated()) body.set("simulated", true);
}

// The author's own signature, over all that the device is going to sign.
Done add_own_hand(Value& body, const Signer& own) {
    body.set("akey", hex(own.public_key()));
    const auto signature = own.sign(own_text(write_strict(body)));
    if (!signature) return signature.fault();
    body.set("asig", hex(*signature));
    return {};
}

// Puts commitments where personal values would stand, and takes away what was typed for them.
Draft without_personal(Draft draft, std::vector<Secret>& secrets, World& world) {
    for (const auto& [field, value] : draft.personal) {
        secrets.push_back(make_secret(value, world));
        draft.data.set(field, Value().set("cid", hash_text(secrets.back().cid)));
        draft.raw.erase(field);
    }
    return draft;
}

// The fields of an entry's data that are no commitments.
Value plain_fields(const Value& data) {
    Value plain;
    for (const Member& member : *data.map()) {
        if (!commitment_of(member.value)) plain.set(member.key, member.value);
    }
    return plain;
}

bool personal_agrees(const Draft& draft, const Entry& entry) {
    return std::all_of(draft.personal.begin(), draft.personal.end(), [&](const auto& wanted) {
        const Value* field = entry.data.find(wanted.first);
        if (field == nullptr) return false; // plain fields were compared before
        const auto held = entry.personal.find(wanted.first);
        return held == entry.personal.end() ||
               held->second == wanted.second; // an erased value cannot be compared
    });
}

} // namespace

Hash commitment(const Salt& salt, std::string_view value) {
    return sha256(std::string(salt.begin(), salt.end()).append(value));
}

Result<Composed> compose(const Draft& draft, const Chain& chain, World& world, const Signer& signer) {
    if (auto done = check_personal(draft); !done) return done.fault();
    Composed made;
    Value body;
    write_saying(body, without_personal(draft, made.secrets, world));
    write_chain(body, chain);
    write_machine(body, world, signer);
    body.set("id", draft.id.empty() ? new_entry_id(world) : draft.id);
    if (draft.own_hand != nullptr) {
        if (auto done = add_own_hand(body, *draft.own_hand); !done) return done.fault();
    }
    const std::string bytes = write_strict(body);
    auto signature = signer.sign(bytes);
    if (!signature) return signature.fault();
    auto read = read_entry(bytes, *signature);
    if (!read) return read.fault();
    made.entry = std::move(*read);
    made.entry.personal = draft.personal;
    return made;
}

Chain advanced(Chain chain, const Entry& entry) {
    chain.prev = entry.hash;
    chain.dprev = entry.hash;
    chain.seq = entry.seq;
    chain.dctr = entry.dctr;
    chain.lam = entry.lam;
    return chain;
}

bool says_the_same(const Draft& draft, const Entry& entry) {
    Draft plain = draft;
    for (const auto& [field, value] : draft.personal) {
        plain.data.erase(field);
        plain.raw.erase(field);
    }
    return plain.kind == entry.kind && plain.job == entry.job && plain.author == entry.author &&
           plain.part == entry.part && plain.supplement == entry.supplement &&
           plain.place == place_text(entry.place) && plain.when == entry.when &&
           plain.data == plain_fields(entry.data) && plain.raw == entry.raw && personal_agrees(draft, entry);
}

} // namespace undersheet::entry
