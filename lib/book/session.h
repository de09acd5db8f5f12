// A book that is open: its file, the connection (opened afresh after every failure), who writes, and the act of writing.
//
// Promises: an action is over only when it is on the disk, all of it or nothing; when a commit does not say whether it was
//   kept, the file is opened again and asked.
// Does not: keep anything in memory that the file could contradict. What goes wrong is Trouble (connection.h).
#pragma once

#include "book/book.h"
#include "book/connection.h"
#include "book/erased.h"

namespace undersheet::book {

// What one transaction has written so far.
struct Action {
    std::vector<std::string> ids = {};
    std::optional<Fault> fault = {}; // of a part of it: then none of it is kept
    bool has_device = false;
};

class Session {
public:
    // Photographs lie beside the book of that name, which is another while the book is being made.
    Session(std::string path, Access access, Surroundings around, const std::string& book_name = {});

    Connection& connected();
    std::vector<entry::Entry> append(std::vector<entry::Draft> drafts);
    void in_one_go(const std::function<Done()>& work);
    void keep_text(const entry::Hash& hash, std::string_view text);
    Taken take(const std::string& handed);
    Handed hand(std::string_view job, const std::string& to);
    void forget_erased();
    [[nodiscard]] bool has_pin(const std::string& person);
    [[nodiscard]] std::unique_ptr<entry::Signer> unlock(const std::string& person, std::string_view pin);
    [[nodiscard]] entry::PublicKey lock(const std::string& person, const NewPin& pin);

    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] const std::string& photo_folder() const { return photo_folder_; }
    [[nodiscard]] const std::string& office() const { return office_; }
    [[nodiscard]] const std::string& device() const { return device_; }

private:
    void drop_what_is_left_open();
    void must_be_writing() const;
    void complete(entry::Draft& draft);
    void find_key();
    void make_key();
    void transact(const std::function<Done()>& work);
    void look_again(const Fault& fault);
    template <class Work>
    auto within_action(Work work);
    std::vector<entry::Entry> write_all(const std::vector<entry::Draft>& drafts);
    void write_device(Connection& to);
    entry::Entry write_one(Connection& to, const entry::Draft& draft);

    [[nodiscard]] std::optional<std::string> pin_file(const std::string& person);
    void drop_erased(const Erased& erased, bool has_forgotten);

    std::string path_, photo_folder_;
    Access access_;
    Surroundings around_;
    std::unique_ptr<Connection> connection_ = {};
    std::string office_ = {}, device_ = {}, install_ = {};
    std::unique_ptr<entry::Signer> signer_ = {};
    bool device_is_new_ = false; // its key is kept, but the book does not know it yet
    std::optional<Action> action_ = {};
};

} // namespace undersheet::book
