#include "method/kinds_sound.h"

#include "base/text.h"
#include "tests/support/catalogue.h"

using namespace undersheet;
using namespace undersheet::method;

namespace {

// A small catalogue that is sound; each test changes one thing. Three fields from line 4 on, the rules on line 7.
constexpr std::string_view kSound = R"({"catalogue":"undersheet.kinds.1","shared":{"more":{"fields":[
{"name":"note","type":"words","prompt":"anything"}]}},"kinds":[
{"name":"pond","group":"reading","section":"1","judging":"adds","heading":"Ponds","prompt":"Water that stays.","uses":["more"],"places":["point"],"example":"undersheet record pond deep_mm=3","keys":["label"],"fields":[
{"name":"label","type":"label","prompt":"its name"},
{"name":"deep_mm","type":"number","unit":"mm","range":[0,100],"usual":[0,10],"prompt":"how deep"},
{"name":"kind","type":"choice","choices":[{"word":"clear"},{"word":"green","means":"old"}],"prompt":"how it looks"}],"rules":[
{"when":"kind","is":["green"],"wants":"note"}]}]})";

std::string fault_with(std::string_view what, std::string_view by) {
    const std::string text = replaced(std::string(kSound), what, by);
    REQUIRE(text != kSound);
    const auto catalogue = Catalogue::read(text);
    REQUIRE_FALSE(catalogue.ok());
    CHECK(catalogue.fault().code == Code::method_malformed);
    return one_line(catalogue.fault());
}

} // namespace

TEST_CASE("the small catalogue of these tests is sound itself") { CHECK(Catalogue::read(kSound).ok()); }

TEST_CASE("a file that is no JSON, or of another shape, is refused with its line") {
    CHECK(one_line(Catalogue::read("{").fault()).starts_with("kinds.json: "));
    CHECK(fault_with(R"("heading":"Ponds",)", "") == "kinds.json line 3: kinds[0] has no 'heading'");
    CHECK(fault_with(R"("type":"number")", R"("type":"digits")")
              .starts_with("kinds.json line 5: kinds[0].fields[1].type is 'digits', it should be one of"));
    CHECK(fault_with(R"("prompt":"how deep")", R"("prompt":"how deep","colour":"red")") ==
          "kinds.json line 5: kinds[0].fields[1].colour is not known here");
    CHECK(fault_with(R"("range":[0,100])", R"("range":[0])") ==
          "kinds.json line 5: kinds[0].fields[1].range has 1 pieces, it needs 2");
}

TEST_CASE("ranges that cannot be are refused") {
    CHECK(fault_with("[0,100]", "[100,0]") ==
          "kinds.json line 5: pond deep_mm has the range 100 to 0, which is inside out");
    CHECK(fault_with("[0,100]", "[5,5]").ends_with("which is inside out"));
    CHECK(fault_with("[0,10]", "[0,101]") ==
          "kinds.json line 5: pond deep_mm has usual values 0 to 101 outside its range 0 to 100");
    CHECK(fault_with("[0,10]", "[10,0]").ends_with("which is inside out"));
    CHECK(fault_with(R"("range":[0,100],"usual":[0,10],)", "") ==
          "kinds.json line 5: pond deep_mm is a number without a range");
    CHECK(fault_with(R"("type":"label")", R"("type":"text","range":[0,1])")
              .ends_with("has a range but is no number"));
    CHECK(Catalogue::read(replaced(std::string(kSound), "[0,10]", "[0,100]")).ok());
}

TEST_CASE("the unit is the one that ends the name") {
    CHECK(fault_with(R"("unit":"mm")", R"("unit":"m")") ==
          "kinds.json line 5: pond deep_mm has the unit 'm', but its name says 'mm'");
    CHECK(fault_with(R"("unit":"mm",)", "").ends_with("has the unit '', but its name says 'mm'"));
    CHECK(fault_with(R"("name":"deep_mm","type":"number","unit":"mm")", R"("name":"deep","type":"number")")
              .ends_with("is a number without a unit in its name"));
    CHECK(fault_with(R"("name":"note","type":"words")", R"("name":"note_mm","type":"words","unit":"mm")")
              .ends_with("has a unit but is no number"));
}

TEST_CASE("names are small letters and stand once") {
    CHECK(fault_with(R"("name":"deep_mm")", R"("name":"Deep_mm")")
              .ends_with("32 small letters, digits and underscores"));
    CHECK(fault_with(R"("name":"note")", R"("name":"label")").ends_with("is there twice"));
    CHECK(fault_with(R"("name":"pond")", R"("name":"the pond")")
              .ends_with("is not a name of small letters and underscores"));
    const std::string row = std::string(kSound.substr(kSound.find("\n{\"name\":\"pond\"")));
    const std::string twice = std::string(kSound.substr(0, kSound.size() - 2)) + "," + row;
    CHECK(one_line(Catalogue::read(twice).fault()).ends_with("there are two kinds named pond"));
}

TEST_CASE("choices have words, small and once each") {
    CHECK(fault_with(R"({"word":"clear"})", R"({"word":"green"})").ends_with("has the word 'green' twice"));
    CHECK(fault_with(R"({"word":"clear"})", R"({"word":"Clear"})")
              .ends_with("not in small letters with underscores"));
    CHECK(fault_with(R"("type":"choice")", R"("type":"text")").ends_with("has choices but is no choice"));
    CHECK(fault_with(R"("choices":[{"word":"clear"},{"word":"green","means":"old"}],)", "")
              .ends_with("is a choice without words"));
}

TEST_CASE("what points at a field points at one that is there") {
    CHECK(fault_with(R"("keys":["label"])", R"("keys":["name"])")
              .ends_with("has the key 'name', which is no field of it"));
    CHECK(
        fault_with(R"("uses":["more"])", R"("uses":["less"])").ends_with("uses 'less', which is not shared"));
    CHECK(fault_with(R"("wants":"note")", R"("wants":"notes")") ==
          "kinds.json line 7: pond has a rule about 'notes', which is no field of it");
    CHECK(fault_with(R"("is":["green"])", R"("is":["blue"])").ends_with("being 'blue', which it cannot be"));
    CHECK(fault_with(R"("prompt":"its name")", R"("prompt":"its name","fallback":"$batch")")
              .ends_with("falls back on batch, which is not there"));
    CHECK(fault_with(R"("prompt":"how it looks")", R"("prompt":"how it looks","fallback":"blue")")
              .ends_with("falls back on a word that it does not have"));
}

TEST_CASE("a rule is one of three and compares what can be compared") {
    constexpr std::string_view kRule = R"({"when":"kind","is":["green"],"wants":"note"})";
    CHECK(fault_with(kRule, "{}").find("a rule is one of three") != std::string::npos);
    CHECK(fault_with(kRule, R"({"sum":["deep_mm","deep_mm"],"equals":"deep_mm","when":"kind"})")
              .find("one of three") != std::string::npos);
    CHECK(fault_with(kRule, R"({"sum":["deep_mm","deep_mm"],"equals":"deep_mm"})")
              .ends_with("something of another type"));
    CHECK(fault_with(kRule, R"({"at_most":["deep_mm","note"]})").ends_with("something of another type"));
    CHECK(fault_with(kRule, R"({"at_most":["note","note"]})").ends_with("the order of note, which has none"));
}

TEST_CASE("a kind is typed with an example or written by the program without one") {
    CHECK(
        fault_with(R"("example":"undersheet record pond deep_mm=3",)", "").ends_with("pond has no example"));
    CHECK(fault_with(R"("keys":["label"])", R"("keys":["label"],"automatic":true)")
              .ends_with("it needs no example"));
    CHECK(fault_with(R"("places":["point"])", R"("place_required":true)")
              .ends_with("needs a place but takes none"));
    CHECK(fault_with(R"("type":"label")", R"("type":"label","personal":true)")
              .ends_with("is personal but no text"));
    CHECK(
        fault_with(R"("type":"label")", R"("type":"label","shortest":3)").ends_with("neither text nor list"));
}
