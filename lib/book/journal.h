// Entries as rows: where a device stands, adding one entry with everything that belongs to it, reading them back.
//
// Promises: add() keeps the look-up rows (job, head, where the device stands) in step within the caller's transaction.
// Does not: begin or end transactions, check signatures, or sign. What goes wrong is Trouble (connection.h).
#pragma once

#include "book/connection.h"
#include "entry/compose.h"

#include <optional>
#include <set>
#include <vector>

namespace undersheet::book {

[[nodiscard]] entry::Chain chain_of(Connection& connection, const std::string& job,
                                    const std::string& device);
void add(Connection& connection, const entry::Composed& composed);
// An entry that another device wrote: its row alone. recount() makes the look-up rows of its job anew.
void add_row(Connection& connection, const entry::Entry& entry);
void recount(Connection& connection, const std::vector<entry::Entry>& whole_job);
void add_device(Connection& connection, const entry::PublicKey& key);

[[nodiscard]] std::vector<std::string> jobs_in(Connection& connection); // every journal that has entries
// Personal values that are still held are filled in.
[[nodiscard]] std::vector<entry::Entry> entries_of(Connection& connection, std::string_view job); // in order
[[nodiscard]] std::optional<entry::Entry> entry_by_id(Connection& connection, std::string_view id);
[[nodiscard]] std::vector<entry::Entry> entries_between(Connection& connection, const entry::Hash& low,
                                                        const entry::Hash& high); // at most two

[[nodiscard]] entry::Hash hash_from(std::string_view bytes);           // 32 bytes, else Trouble
[[nodiscard]] entry::Signature signature_from(std::string_view bytes); // 64 bytes, else Trouble
[[nodiscard]] std::string_view bytes_of(const entry::Hash& hash);      // and of a salt
[[nodiscard]] std::string_view bytes_of(const entry::Signature& signature);

// The devices that wrote in this very file, and forgetting that one did: its chain is never gone on with.
[[nodiscard]] std::set<std::string> own_devices(Connection& connection);
void give_up_device(Connection& connection, const std::string& device);

// The table `local`: "" when there is no such row.
[[nodiscard]] std::string local(Connection& connection, std::string_view key);
void set_local(Connection& connection, std::string_view key, std::string_view value);

} // namespace undersheet::book
