#include "job/day.h"

#include "tests/support/site.h"

using namespace undersheet;
using job::Work;
using test::Site;

namespace {

// A roof near 52°N 1°W: on 22 September 2026 the sun is up from about 06:50 to 19:00, summer time.
Site roof() {
    Site site("2026-09-20");
    site.opened();
    site.record("site", "08:05", R"({"latitude_deg":52,"longitude_deg":-1})");
    return site;
}

struct Hours {
    std::string table = "from,air_c,rh_pct,surface_c,wind_ms,gust_ms,rain_mm\n";
    Hours& add(int hour, const std::string& figures, const std::string& day = "2026-09-22") {
        const std::string clock = (hour < 10 ? "0" : "") + std::to_string(hour);
        table += day + "T" + clock + ":00:00+01:00," + figures + "\n";
        return *this;
    }
    Hours& fine(int from, int until, const std::string& day = "2026-09-22") {
        for (int hour = from; hour < until; ++hour) add(hour, "15,60,16,2,4,0", day);
        return *this;
    }
    [[nodiscard]] job::Forecast read() const {
        auto forecast = job::read_forecast(table, test::default_kinds());
        REQUIRE(forecast.ok());
        return *std::move(forecast);
    }
};

const std::vector<Work> kField{{"field/1", "field", 60, 0, 1}};
const std::vector<Work> kBand{{"band/AB", "band", 60, 0, 1}};

job::DayPlan plan(const Site& site, const Hours& hours, const std::vector<Work>& row) {
    const auto job = site.fold("2026-09-20T12:00:00+01:00");
    return job::plan_days(job, site.method(), test::default_kinds(), hours.read(), row);
}

std::string begins(const job::DayPlan& plan) {
    return plan.slots.empty() ? "never" : entry::clock_text(entry::time_at(plan.slots.front().from_s, 60));
}

bool spoiled_by(const job::DayPlan& plan, const std::string& words) {
    for (const auto& day : plan.days)
        for (const auto& line : day.spoiled)
            if (line.why.find(words) != std::string::npos) return true;
    return false;
}

} // namespace

TEST_CASE("on a fine day the work begins with the light") {
    CHECK(begins(plan(roof(), Hours().fine(6, 20), kField)) == "07:30"); // the working day
    // In December the sun comes up at about 09:05 by this offset.
    CHECK(begins(plan(roof(), Hours().fine(6, 20, "2026-12-10"), kField)) == "09:15");
}

TEST_CASE("an hour is held by what would hold an air reading, at the limit and not just on its good side") {
    struct Row {
        const char *held, *good;
    };
    for (const Row& row :
         {Row{"4.9,60,16,2,4,0", "5.0,60,16,2,4,0"}, Row{"25.1,60,24,2,4,0", "25.0,60,24,2,4,0"},
          Row{"15,90,20,2,4,0", "15,89.9,20,2,4,0"}, Row{"15,60,10.1,2,4,0", "15,60,10.5,2,4,0"},
          Row{"15,60,16,10.3,4,0", "15,60,16,10.2,4,0"}, Row{"15,60,16,2,15.7,0", "15,60,16,2,15.6,0"},
          Row{"15,60,16,2,4,0.1", "15,60,16,2,4,0"}}) {
        INFO(row.held << " | " << row.good);
        CHECK(begins(plan(roof(), Hours().add(10, row.held), kField)) == "never");
        CHECK(begins(plan(roof(), Hours().add(10, row.good), kField)) == "10:00");
    }
}

TEST_CASE("rain within two hours ahead holds bonding, and no longer once it is further off") {
    const auto rain_at = [](int hour) { return Hours().fine(9, hour).add(hour, "15,60,16,2,4,1.5"); };
    CHECK(begins(plan(roof(), rain_at(11), kField)) == "never");
    CHECK(begins(plan(roof(), rain_at(12), kField)) == "09:00"); // 09:45 + 2 h = 11:45
    CHECK(spoiled_by(plan(roof(), rain_at(11), kField), "rain from 11:00, within 2 h"));
}

TEST_CASE("contact adhesive is opened at least two hours before sunset, field adhesive until dusk") {
    const auto late = Hours().fine(17, 19);
    CHECK(begins(plan(roof(), late, kBand)) == "never");
    CHECK(begins(plan(roof(), late, kField)) == "17:00");
    CHECK(spoiled_by(plan(roof(), late, kBand), "less than 2 h to sunset at 19:0"));
}

TEST_CASE("the dark holds everything, and is not listed hour by hour") {
    const auto night = plan(roof(), Hours().fine(20, 23), kField);
    CHECK(begins(night) == "never");
    CHECK(night.days[0].spoiled.empty());
    CHECK(night.days[0].light_to_s.has_value());
}

TEST_CASE("without the place there is no daylight, and the plan says so") {
    Site site("2026-09-20");
    site.opened();
    // In December it is dark at half past seven.
    const auto blind = plan(site, Hours().fine(7, 12, "2026-12-10"), kField);
    CHECK(begins(blind) == "07:30");
    CHECK(std::count_if(blind.assumed.begin(), blind.assumed.end(), [](const std::string& line) {
              return line.find("daylight is not known") == 0;
          }) == 1);
}

TEST_CASE("the range on the tin in hand holds its stage, unless another tin suits") {
    Site site = roof();
    site.record("tin", "08:10",
                R"({"label":"F1","product":"deck_adhesive","batch":"F1","low_c":16,"high_c":25})");
    CHECK(begins(plan(site, Hours().fine(9, 12), kField)) == "never");
    CHECK(begins(plan(site, Hours().fine(9, 12), kBand)) == "09:00");
    site.record("tin", "08:11",
                R"({"label":"F2","product":"deck_adhesive","batch":"F2","low_c":15,"high_c":25})");
    CHECK(begins(plan(site, Hours().fine(9, 12), kField)) == "09:00");
}

TEST_CASE("work that does not fit before the rain goes on the next day, and in one go only there") {
    Hours hours;
    hours.fine(9, 12).add(12, "15,60,16,2,4,2").fine(9, 17, "2026-09-23");
    const std::vector<Work> row{{"field/1", "field", 60, 0, 1}, {"band/AB", "band", 120, 30, 2}};
    const auto made = plan(roof(), hours, row);
    REQUIRE(made.fits());
    CHECK(entry::date_text(entry::date_of(entry::time_at(made.slots[0].from_s, 60))) == "2026-09-22");
    CHECK(entry::date_text(entry::date_of(entry::time_at(made.slots[1].from_s, 60))) == "2026-09-23");
    REQUIRE(made.in_one_go.has_value());
    CHECK(entry::date_text(entry::date_of(entry::time_at(made.in_one_go->front().from_s, 60))) ==
          "2026-09-23");
    CHECK(made.days.size() == 2);
}

TEST_CASE("a deck nobody forecasts is taken as one degree colder than the air, and that is said") {
    Hours hours;
    hours.table = "from,air_c,rh_pct\n";
    // Dew point 6.5 °C at 10 °C and 79 %: a deck at 9 °C has 2.5 K of margin, one at 10 °C 3.5 K.
    hours.table += "2026-09-22T10:00:00+01:00,10,79\n";
    const auto made = plan(roof(), hours, kField);
    CHECK(begins(made) == "never");
    CHECK(made.assumed.front() == "the deck is taken as 1 K colder than the air; read it on the day");
    hours.table = "from,air_c,rh_pct,surface_c\n2026-09-22T10:00:00+01:00,10,79,10\n";
    CHECK(begins(plan(roof(), hours, kField)) == "10:00");
}

TEST_CASE("work keeps to the working day of the method, half past seven to six") {
    Hours hours;
    for (int hour = 0; hour < 24; ++hour) hours.add(hour, "15,60,16,2,4,0");
    Site dark("2026-09-20"); // nothing is known of the light here
    dark.opened();
    CHECK(begins(plan(dark, hours, kField)) == "07:30");
    const std::vector<Work> long_day{
        {"field/1", "field", 630, 0, 21}}; // ten and a half hours: to six o'clock
    CHECK(plan(dark, hours, long_day).fits());
    const std::vector<Work> too_long{{"field/1", "field", 645, 0, 21.5}};
    CHECK_FALSE(plan(dark, hours, too_long).fits());
}

TEST_CASE(
    "the deck is not worked on in the rain that would undo it, nor kept dry for rain that is still to come") {
    const std::vector<Work> deck{{"deck", "deck", 60, 0, 1}};
    auto hours = Hours().add(7, "15,60,16,2,4,0.5").add(8, "15,60,16,2,4,0.5").fine(9, 11);
    hours.add(11, "15,60,16,2,4,0.5");
    const auto made = plan(roof(), hours, deck);
    CHECK(begins(made) == "09:00");
    CHECK(spoiled_by(made, "rain on the bare deck"));
    CHECK_FALSE(spoiled_by(made, "rain from"));
    // Once the field is begun the deck is no longer bare: rain says nothing of it.
    Site laid = roof();
    laid.record("begin", "08:10", "{}", "", "field/1");
    CHECK(begins(plan(laid, hours, deck)) == "07:30");
}

TEST_CASE("while it rains only the rain is named, before it the rain ahead") {
    auto hours = Hours().fine(7, 10);
    hours.add(10, "15,60,16,2,4,1.5").add(11, "15,60,16,2,4,1.5").fine(12, 19);
    const auto made = plan(roof(), hours, kField);
    int ahead = 0;
    for (const auto& day : made.days)
        for (const auto& line : day.spoiled) ahead += line.why.starts_with("rain from") ? 1 : 0;
    CHECK(ahead == 1);
    CHECK(spoiled_by(made, "rain from 10:00, within 2 h"));
}
