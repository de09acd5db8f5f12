// Who signs with a key of their own, and whether the record shows it. Only the desk includes this.
//
// Promises: a PIN is looked at once for each thing that is signed, and nothing is kept unlocked.
#pragma once

#include "desk/drafts.h"
#include "desk/journals.h"

namespace undersheet::desk {

// The key of the person who writes, where that kind of entry is signed by persons and this one has a PIN on this device;
// nothing where not; pin_needed or pin_wrong.
[[nodiscard]] Result<std::unique_ptr<entry::Signer>> own_hand(const Writing& writing, book::Book& book,
                                                              const std::string& kind);

// What speaks against the persons' own signatures, though every key fits: one that nobody is known to have set, and a
// sign-off without a PIN of a person who had one on that device.
[[nodiscard]] std::vector<VerifyFault> own_hand_doubts(const std::vector<Journal>& journals);

} // namespace undersheet::desk
