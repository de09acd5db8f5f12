#include "desk/desk.h"

#include "book/machine.h"
#include "desk/drafts.h"
#include "desk/firm.h"
#include "desk/session.h"

namespace undersheet::desk {
namespace {

Result<std::unique_ptr<entry::World>> machine(const std::string& clock) {
    if (clock.empty()) return book::this_machine();
    auto time = entry::parse_time(clock);
    if (!time) return Fault{time.fault().code, time.fault().detail, "UNDERSHEET_CLOCK", time.fault().clears};
    return book::this_machine(*time);
}

} // namespace

Desk::Desk(std::unique_ptr<Session> session) : session_(std::move(session)) {}
Desk::Desk(Desk&&) noexcept = default;
Desk& Desk::operator=(Desk&&) noexcept = default;
Desk::~Desk() = default;

Result<Started> Desk::start(const std::string& book_file, const Firm& firm,
                            std::unique_ptr<entry::World> world, const std::string& when) {
    Session session(book_file, std::move(world));
    auto kinds = session.kinds_of("");
    if (!kinds) return kinds.fault();
    auto time = time_of(session, when);
    if (!time) return time.fault();
    auto draft = office_draft(**kinds, firm_typed(firm), *time, "");
    if (!draft) return draft.fault();
    auto book = book::Book::start(book_file, {*session.world, session.keys}, {*draft});
    if (!book) return book.fault();
    return Started{book->path(), firm.name, book->device()};
}

Result<Desk> Desk::open(const std::string& book_file, std::unique_ptr<entry::World> world) {
    auto session = std::make_unique<Session>(book_file, std::move(world));
    if (auto readable = session->reader(); !readable) return readable.fault();
    return Desk(std::move(session));
}

Result<Started> Desk::start(const BookAt& book, const Firm& firm, const std::string& when) {
    auto world = machine(book.clock);
    if (!world) return world.fault();
    return start(book.file, firm, std::move(*world), when);
}

Result<Started> Desk::start_from(const BookAt& book, const std::string& handed_file) {
    auto world = machine(book.clock);
    if (!world) return world.fault();
    Session session(book.file, std::move(*world));
    auto made = book::Book::start_from(book.file, handed_file, {*session.world, session.keys});
    if (!made) return made.fault();
    auto office = made->entries(made->office());
    if (!office) return office.fault();
    Started started{made->path(), "", made->device()};
    for (const auto& entry : *office) {
        if (entry.kind == "firm") started.firm = entry.data.text_of("name", started.firm);
    }
    return started;
}

Result<Desk> Desk::open(const BookAt& book) {
    auto world = machine(book.clock);
    if (!world) return world.fault();
    return open(book.file, std::move(*world));
}

std::string_view program_version() { return "0.1.0"; }

} // namespace undersheet::desk
