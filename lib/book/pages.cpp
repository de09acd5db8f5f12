#include "book/pages.h"

#include <algorithm>
#include <optional>
#include <set>

namespace undersheet::book {
namespace {

constexpr std::size_t kOurPageBytes = 4096; // as connection.cpp sets it
constexpr std::size_t kHeaderBytes = 100;
constexpr std::size_t kMostColumns = 64;

// Reads forward within `bytes`; beyond its end everything is nothing, and is_good() says so.
class Reader {
public:
    explicit Reader(std::string_view bytes) : rest_(bytes) {}

    std::uint64_t big_endian(std::size_t size) {
        std::uint64_t number = 0;
        for (const char byte : take(size)) number = number << 8U | static_cast<unsigned char>(byte);
        return number;
    }
    // Seven bits a byte, the highest first; the ninth byte brings all its eight.
    std::uint64_t varint() {
        std::uint64_t number = 0;
        for (int i = 0; i < 9; ++i) {
            const auto byte = static_cast<unsigned>(big_endian(1));
            if (i == 8) return number << 8U | byte;
            number = number << 7U | (byte & 0x7FU);
            if ((byte & 0x80U) == 0) break;
        }
        return number;
    }
    std::string_view take(std::uint64_t size) {
        if (size > rest_.size()) is_good_ = false;
        if (!is_good_) return {};
        const auto taken = rest_.substr(0, static_cast<std::size_t>(size));
        rest_.remove_prefix(taken.size());
        return taken;
    }
    [[nodiscard]] bool is_good() const { return is_good_; }
    [[nodiscard]] std::string_view rest() const { return rest_; }

private:
    std::string_view rest_;
    bool is_good_ = true;
};

std::uint64_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
    return Reader(bytes.substr(std::min(at, bytes.size()))).big_endian(size);
}

// --- a record: the types of its values, then the values ---

std::int64_t signed_of(std::uint64_t number, std::size_t size) {
    const std::uint64_t sign = 1ULL << (8 * size - 1);
    return static_cast<std::int64_t>((number ^ sign) - sign);
}

std::optional<PageValue> value_of(std::uint64_t type, Reader& from) {
    using Sort = PageValue::Sort;
    constexpr std::size_t kSizes[] = {0, 1, 2, 3, 4, 6, 8};
    PageValue value;
    if (type >= 1 && type <= 6) {
        const std::size_t size = kSizes[type];
        value = {Sort::number, signed_of(from.big_endian(size), size), {}};
    } else if (type == 7) {
        from.take(8);
    } else if (type == 8 || type == 9) {
        value = {Sort::number, static_cast<std::int64_t>(type - 8), {}};
    } else if (type >= 12) {
        const Sort sort = type % 2 == 0 ? Sort::bytes : Sort::text;
        value = {sort, 0, std::string(from.take((type - 12) / 2))};
    } else if (type != 0) {
        return std::nullopt;
    }
    return from.is_good() ? std::optional(std::move(value)) : std::nullopt;
}

std::optional<PageRow> row_of(std::string_view payload) {
    Reader start(payload);
    const std::uint64_t head_bytes = start.varint();
    if (!start.is_good() || head_bytes > payload.size()) return std::nullopt;
    Reader types(payload.substr(0, static_cast<std::size_t>(head_bytes)));
    types.varint();
    Reader values(payload.substr(static_cast<std::size_t>(head_bytes)));
    PageRow row;
    while (types.is_good() && !types.rest().empty()) {
        auto value = value_of(types.varint(), values);
        if (!value || !types.is_good() || row.size() == kMostColumns) return std::nullopt;
        row.push_back(std::move(*value));
    }
    return values.rest().empty() && !row.empty() ? std::optional(std::move(row)) : std::nullopt;
}

// --- pages ---

enum class PageSort : char { index_inside = 2, index_leaf = 10, table_leaf = 13 };

class Pages {
public:
    Pages(std::string_view file, std::size_t page_bytes)
        : file_(file), page_bytes_(page_bytes), may_read_bytes_(kReadings * file.size()) {}

    void each(const std::function<void(const PageRow&)>& row) {
        const std::size_t pages = (file_.size() + page_bytes_ - 1) / page_bytes_;
        for (std::size_t number = 1; number <= pages; ++number) rows_on(number, row);
    }

private:
    // The last page of a file that broke off is shorter.
    [[nodiscard]] std::string_view page(std::uint64_t number) const {
        if (number == 0 || number > file_.size() / page_bytes_ + 1) return {};
        const std::size_t at = static_cast<std::size_t>(number - 1) * page_bytes_;
        return at < file_.size() ? file_.substr(at, page_bytes_) : std::string_view();
    }

    void rows_on(std::size_t number, const std::function<void(const PageRow&)>& row) {
        const std::string_view bytes = page(number);
        const std::size_t head = number == 1 ? kHeaderBytes : 0;
        if (bytes.size() < head + 12) return;
        const auto sort = static_cast<PageSort>(bytes[head]);
        const bool is_inside = sort == PageSort::index_inside;
        if (!is_inside && sort != PageSort::index_leaf && sort != PageSort::table_leaf) return;
        const std::uint64_t count = number_at(bytes, head + 3, 2);
        Reader cells(bytes.substr(head + (is_inside ? 12 : 8)));
        for (std::uint64_t i = 0; i < count && cells.is_good(); ++i) {
            const std::uint64_t at = cells.big_endian(2);
            if (!cells.is_good() || at >= bytes.size()) continue;
            if (const auto payload = payload_of(bytes.substr(static_cast<std::size_t>(at)), sort)) {
                if (const auto found = row_of(*payload)) row(*found);
            }
        }
    }

    // How much of a payload stands in its cell; the rest is on pages of its own.
    [[nodiscard]] std::uint64_t local_bytes(std::uint64_t payload, bool is_table) const {
        const std::uint64_t usable = page_bytes_;
        const std::uint64_t most = is_table ? usable - 35 : (usable - 12) * 64 / 255 - 23;
        if (payload <= most) return payload;
        const std::uint64_t least = (usable - 12) * 32 / 255 - 23;
        const std::uint64_t wanted = least + (payload - least) % (usable - 4);
        return wanted <= most ? wanted : least;
    }

    std::optional<std::string> payload_of(std::string_view cell, PageSort sort) {
        Reader reader(cell);
        if (sort == PageSort::index_inside) reader.take(4);
        const std::uint64_t size = reader.varint();
        if (sort == PageSort::table_leaf) reader.varint(); // the number of the row
        if (!reader.is_good() || size > may_read_bytes_) return std::nullopt;
        may_read_bytes_ -= size;
        const std::uint64_t local = local_bytes(size, sort == PageSort::table_leaf);
        std::string payload(reader.take(local));
        std::uint64_t next = local < size ? reader.big_endian(4) : 0;
        while (reader.is_good() && payload.size() < size) {
            const std::string_view more = page(next);
            if (more.size() <= 4) return std::nullopt;
            next = number_at(more, 0, 4);
            payload.append(more.substr(4, static_cast<std::size_t>(size) - payload.size()));
        }
        return reader.is_good() ? std::optional(std::move(payload)) : std::nullopt;
    }

    // A whole file holds no byte in two rows. One that was made to tire us out may name each page a thousand times.
    static constexpr std::uint64_t kReadings = 4;
    std::string_view file_;
    std::size_t page_bytes_;
    std::uint64_t may_read_bytes_;
};

// What the file says, if that can be, and what all of ours have.
std::set<std::size_t> page_sizes(std::string_view file) {
    std::set<std::size_t> sizes{kOurPageBytes};
    const std::uint64_t said = number_at(file, 16, 2);
    const std::size_t bytes = said == 1 ? 65536 : static_cast<std::size_t>(said);
    const bool can_be = bytes >= 512 && (bytes & (bytes - 1)) == 0;
    if (file.starts_with("SQLite format 3") && can_be) sizes.insert(bytes);
    return sizes;
}

} // namespace

void each_row_of_pages(std::string_view file, const std::function<void(const PageRow&)>& row) {
    for (const std::size_t bytes : page_sizes(file)) Pages(file, bytes).each(row);
}

} // namespace undersheet::book
