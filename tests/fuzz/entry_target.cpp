// The body of an entry, and its signature by a fixed key.
#include "entry/json.h"
#include "entry/names.h"
#include "entry/order.h"
#include "entry/sign.h"
#include "tests/fuzz/targets.h"

namespace undersheet::fuzz {
namespace {

using entry::Entry;

const entry::Signer& the_signer() {
    static const auto kSigner = entry::signer_from(entry::Seed{7});
    return *kSigner;
}

void promise_form(const Entry& read, std::string_view body) {
    promise(read.body == body, "the body is not what was read");
    promise(read.hash == entry::sha256(body), "the hash is of other bytes");
    promise(entry::write_strict(*entry::read_strict(body)) == body, "the body has a second spelling");
    promise(entry::is_hex(read.device, 32) && entry::is_job(read.job) && entry::is_entry_id(read.id),
            "a name is not of its form");
    promise(read.seq >= 1 && read.dctr >= read.seq && read.lam >= 1 && read.mono_millis >= 0,
            "a count is none");
    promise(entry::place_text(*entry::parse_place(entry::place_text(read.place))) ==
                entry::place_text(read.place),
            "the place has a second spelling");
}

// Holds for the one device whose name is made from the key, and for no other bytes or signature.
void promise_signature(Entry read) {
    const auto& signer = the_signer();
    read.signature = *signer.sign(read.body);
    const bool holds = entry::verify(read, signer.public_key()).ok();
    promise(holds == (read.device == signer.device()), "a signature holds for another device");
    read.signature[40] ^= 1U;
    promise(!entry::verify(read, signer.public_key()).ok(), "a changed signature holds");
    read.signature = {};
    promise(!entry::verify(read, signer.public_key()).ok(), "an empty signature holds");
}

} // namespace

void read_an_entry(std::string_view bytes) {
    const auto read = entry::read_entry(bytes, {});
    if (!read) return promise_readable(read.fault());
    promise_form(*read, bytes);
    promise_signature(*read);
    for (const auto& member : *read->data.map()) (void)read->field_text(member.key);
    promise(entry::heads_of({*read}).size() == 1, "an entry alone is not its own head");
    (void)entry::check_job({*read, *read});
    (void)entry::check_devices({entry::device_link(*read)}, {read->device});
}

} // namespace undersheet::fuzz
