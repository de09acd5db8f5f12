#include "book/seal.h"

#include "entry/json.h"
#include "entry/names.h"

namespace undersheet::book {
namespace {

constexpr std::string_view kSealForm = "undersheet.seal.1";

Fault broken(std::string what) { return {Code::book_damaged, "the seal " + std::move(what)}; }

std::int64_t whole_in(const entry::Value& body, std::string_view member) {
    const entry::Value* value = body.find(member);
    const bool is_count = value != nullptr && value->number() != nullptr && value->number()->places() == 0;
    return is_count ? value->number()->whole() : -1;
}

} // namespace

Result<SealedBytes> write_seal(const Seal& seal, const entry::Signer& signer) {
    entry::Value body;
    body.set("v", kSealForm).set("dev", seal.device).set("clock", seal.clock);
    body.set("digest", entry::hash_text(seal.digest)).set("entries", seal.entries).set("photos", seal.photos);
    if (!seal.office.empty()) body.set("office", seal.office);
    if (seal.rest) body.set("rest", entry::hash_text(*seal.rest));
    SealedBytes sealed{entry::write_strict(body), {}};
    auto signature = signer.sign(sealed.body);
    if (!signature) return signature.fault();
    sealed.signature = *signature;
    return sealed;
}

std::string device_of_seal(std::string_view body) {
    const auto read = entry::read_strict(body);
    return read ? read->text_of("dev") : std::string();
}

Result<Seal> read_seal(const SealedBytes& bytes, const entry::PublicKey& key) {
    const auto body = entry::read_strict(bytes.body);
    if (!body) return broken("cannot be read: " + body.fault().detail);
    if (body->text_of("v") != kSealForm) return broken("is of a form this program does not know");
    if (!entry::is_signed(bytes.body, bytes.signature, key)) return broken("has a wrong signature");
    const auto digest = entry::parse_hash(body->text_of("digest"));
    if (!digest) return broken("names no digest");
    Seal seal{body->text_of("dev"),       body->text_of("office"),  body->text_of("clock"), *digest,
              whole_in(*body, "entries"), whole_in(*body, "photos")};
    if (body->find("rest") != nullptr) {
        const auto rest = entry::parse_hash(body->text_of("rest"));
        if (!rest) return broken("does not say what is in the file beside entries");
        seal.rest = *rest;
    }
    if (seal.entries < 0 || seal.photos < 0) return broken("does not say how much is in the file");
    return seal;
}

} // namespace undersheet::book
