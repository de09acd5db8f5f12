#include "picture/exif.h"

#include <algorithm>
#include <cstdint>
#include <optional>

namespace undersheet::picture {
namespace {

constexpr unsigned kOrientation = 0x0112, kExifDirectory = 0x8769, kPosition = 0x8825, kTaken = 0x9003;
constexpr std::size_t kRow = 12, kTimeLength = 19;

// The block behind the mark: TIFF 6.0, either byte first.
class Tiff {
public:
    explicit Tiff(std::string_view bytes) : bytes_(bytes), low_first_(bytes.starts_with("II")) {}

    [[nodiscard]] std::uint32_t number(std::size_t at, std::size_t bytes) const {
        if (at > bytes_.size() || bytes > bytes_.size() - at) return 0;
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < bytes; ++i) {
            const std::size_t from = low_first_ ? bytes - 1 - i : i;
            value = value << 8U | static_cast<unsigned char>(bytes_[at + from]);
        }
        return value;
    }
    [[nodiscard]] std::size_t first_directory() const { return number(4, 4); }
    // Where the row of this tag begins.
    [[nodiscard]] std::optional<std::size_t> row(std::size_t directory, unsigned tag) const {
        for (std::size_t i = 0; i < number(directory, 2); ++i) {
            const std::size_t at = directory + 2 + i * kRow;
            if (at > bytes_.size() || bytes_.size() - at < kRow) break;
            if (number(at, 2) == tag) return at;
        }
        return std::nullopt;
    }
    [[nodiscard]] std::string_view text(std::size_t at, std::size_t length) const {
        if (at > bytes_.size() || length > bytes_.size() - at) return {};
        return bytes_.substr(at, length);
    }

private:
    std::string_view bytes_;
    bool low_first_;
};

// "2026:06:11 08:05:00" as Exif writes it.
std::string usual_time(std::string_view written) {
    constexpr std::string_view kForm = "0000:00:00 00:00:00";
    if (written.size() != kForm.size()) return {};
    for (std::size_t i = 0; i < kForm.size(); ++i) {
        const bool is_digit = written[i] >= '0' && written[i] <= '9';
        if (kForm[i] == '0' ? !is_digit : written[i] != kForm[i]) return {};
    }
    std::string time(written);
    time[4] = time[7] = '-';
    time[10] = 'T';
    return time;
}

} // namespace

Exif read_exif(std::string_view segment) {
    Exif exif;
    if (!segment.starts_with(kExifMark)) return exif;
    const Tiff tiff(segment.substr(kExifMark.size()));
    const std::size_t first = tiff.first_directory();
    if (const auto at = tiff.row(first, kOrientation)) {
        const auto held = static_cast<int>(tiff.number(*at + 8, 2));
        if (held >= 1 && held <= 8) exif.turned = held;
    }
    exif.has_position = tiff.row(first, kPosition).has_value();
    const auto more = tiff.row(first, kExifDirectory);
    const auto taken = more ? tiff.row(tiff.number(*more + 8, 4), kTaken) : std::nullopt;
    if (taken) exif.taken = usual_time(tiff.text(tiff.number(*taken + 8, 4), kTimeLength));
    return exif;
}

std::string exif_turned(int turned) {
    std::string block(kExifMark);
    block += std::string("MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0", 19);
    block += static_cast<char>(turned);
    return block + std::string(6, '\0'); // the rest of the row, and no further directory
}

} // namespace undersheet::picture
