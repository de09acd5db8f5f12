#include "cli/book.h"
#include "cli/show.h"
#include "cli/verb.h"

#include "base/text.h"

#include <filesystem>
#include <system_error>

namespace undersheet::cli {
namespace {

void show_signature(const desk::SignatureLine& line, Screen& screen) {
    std::string around = line.after.empty() ? "" : "after " + line.after.substr(0, 8) + " of another device";
    if (!line.before.empty())
        around += (around.empty() ? "" : ", ") + std::string("before ") + line.before.substr(0, 8) +
                  " of another device";
    if (!line.own_key.empty())
        around += (around.empty() ? "" : ", ") + std::string("with a PIN, key ") + line.own_key.substr(0, 8);
    if (around.empty()) return;
    screen.set_in("  " + line.kind + " " + line.part + ": ",
                  day_and_time(line.when) + ", entry " + line.entry.substr(0, 8) + ", " + around, Ink::faint);
}

// What is wrong with the file as a whole belongs to no device.
std::string where_words(const desk::VerifyFault& fault) {
    if (fault.device.empty()) return fault.entry.empty() ? "" : "entry " + fault.entry.substr(0, 8) + ": ";
    return "entry " + std::to_string(fault.seq) + " of device " + fault.device.substr(0, 8) + ": ";
}

void show_verified(const desk::Verified& verified, Screen& screen) {
    screen.line(verified.ok
                    ? "Every one of " + std::to_string(verified.entries) + " entries verifies."
                    : "Not everything verifies; " + std::to_string(verified.entries) + " entries read:",
                Ink::strong);
    for (const auto& fault : verified.faults) screen.set_in("  ", where_words(fault) + fault.what, Ink::red);
    for (const auto& doubt : verified.doubts)
        screen.set_in("  doubt: ", where_words(doubt) + doubt.what, Ink::yellow);
    if (verified.clock_by_hand > 0)
        screen.set_in(
            "  doubt: ",
            counted(verified.clock_by_hand, "entry was", "entries were") +
                " written with the clock set by hand; what they say of the time was held against nothing.",
            Ink::yellow);
    if (verified.missing_personal > 0)
        screen.set_in("  doubt: ",
                      counted(verified.missing_personal, "personal value is", "personal values are") +
                          " not here and nobody erased " + (verified.missing_personal == 1 ? "it" : "them") +
                          ": left out when the record was handed on, or taken out.",
                      Ink::yellow);
    for (const auto& signature : verified.signatures) show_signature(signature, screen);
    if (!verified.digest.empty()) screen.set_in("", "Check value: " + verified.digest);
    if (verified.receipts > 0)
        screen.set_in("", std::to_string(verified.receipts) + " of the receipts given fits what is here.",
                      Ink::green);
    if (verified.unwitnessed > 0)
        screen.set_in(
            "",
            std::to_string(verified.unwitnessed) +
                " entries have no witness outside the device that wrote them; nothing here could show that "
                "later ones were taken away.");
}

constexpr std::string_view kReceipt = "undersheet.receipt";

// What is neither a receipt nor a file of that name could have been meant as either.
Fault no_receipt(const std::string& given, Fault of_file) {
    std::error_code no_matter;
    if (std::filesystem::exists(given, no_matter)) return of_file;
    return {Code::argument_wrong, "'" + given + "' is no receipt, and there is no file of that name",
            "--receipt", "a receipt reads: undersheet.receipt.1, 64 digits, 64 digits"};
}

// A receipt as text, or a file that holds some.
Result<std::vector<std::string>> receipts_given(const Arguments& arguments) {
    std::vector<std::string> receipts;
    for (const auto& given : arguments.all("--receipt")) {
        if (given.starts_with(kReceipt)) {
            receipts.push_back(given);
            continue;
        }
        const std::size_t before = receipts.size();
        auto text = read_file(given, "file of receipts");
        if (!text) return no_receipt(given, text.fault());
        // A paper prints a receipt over several lines; each begins with its form.
        for (const auto& whole : split(*text, '\n')) {
            const std::string line(trimmed(whole));
            if (line.empty()) continue;
            if (line.starts_with(kReceipt) || receipts.size() == before)
                receipts.push_back(line);
            else
                receipts.back() += " " + line;
        }
    }
    return receipts;
}

Result<desk::Verified> verified_by(const Arguments& arguments, const std::vector<std::string>& receipts) {
    if (arguments.has("FILE")) return desk::Desk::verify_file(arguments.one("FILE"), receipts);
    auto desk = open_desk(arguments);
    if (!desk) return desk.fault();
    return desk->verify(receipts);
}

int run_verify(const Arguments& arguments, Screen& screen) {
    const auto receipts = receipts_given(arguments);
    if (!receipts) return screen.refuse(receipts.fault());
    const auto verified = verified_by(arguments, *receipts);
    if (!verified) return screen.refuse(verified.fault());
    if (arguments.has("--json")) {
        screen.bytes(desk::json_of(*verified));
    } else {
        show_verified(*verified, screen);
    }
    return verified->ok ? 0 : 1;
}

} // namespace

std::vector<Verb> verify_verbs() {
    return {
        {"verify",
         "checks every hash, signature and chain of a book or a hand-over file",
         "undersheet verify",
         {{"FILE", "a hand-over file, or another book; else the book in use", Count::maybe, Sort::file}},
         {{"--receipt", "TEXT", "a receipt somebody holds, or a file with some; may be given several times"},
          book_option(),
          {"--json", "", "write JSON for scripts"}},
         run_verify}};
}

} // namespace undersheet::cli
