// What the customer's signature leaves on a paper: the line for it, and the receipt as text and as a QR code.
#pragma once

#include "paper/making.h"

namespace undersheet::paper {

// Who signed for the customer, or that nobody was there and how it was sent.
void fill_customer(const Making& making, const entry::Entry& signed_at, Signature& customer);

// In other hands it shows that nothing which stood before the signature was changed or taken away. Nothing without a customer.
void add_receipt(Making& making, const entry::Entry* signed_at);

} // namespace undersheet::paper
