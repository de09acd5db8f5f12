#include "desk/reckon.h"

#include "base/text.h"
#include "desk/own.h"
#include "desk/reckon_numbers.h"
#include "desk/reckon_topics.h"
#include "entry/json.h"
#include "method/json_schema.h"

#include <algorithm>

namespace undersheet::desk {
namespace {

using entry::Value;

const Value& shapes() {
    static const auto read = entry::read_json(own_text("reckon.json"));
    if (!read) throw std::logic_error(one_line(read.fault()));
    return *read;
}

std::vector<Topic> all_topics() {
    std::vector<Topic> all;
    for (auto* group :
         {air_topics, deck_topics, outline_topics, falls_topics, order_topics, weather_topics, heat_topics}) {
        for (const Topic& topic : group()) all.push_back(topic);
    }
    return all;
}

// A topic's row of the schema, and its function.
struct Found {
    const Value& shape;
    Topic topic;
};

Fault unknown(std::string_view name) {
    std::vector<std::string> names;
    for (const auto& line : topics()) names.push_back(line.topic);
    const auto near = nearest_word(name, names);
    return {Code::topic_unknown,
            "there is no topic '" + std::string(name) + "'",
            {},
            near.empty() ? "there are " + joined(names, ", ") : "did you mean " + near + "?"};
}

Result<Found> find_topic(std::string_view name) {
    const auto all = all_topics();
    const auto topic =
        std::find_if(all.begin(), all.end(), [&](const Topic& row) { return row.name == name; });
    for (const Value& shape : shapes().list_of("topics")) {
        if (topic != all.end() && shape.text_of("name") == name) return Found{shape, *topic};
    }
    return unknown(name);
}

const Value& part_of(const Value& shape, const char* key) {
    const Value* part = shape.find(key);
    if (part == nullptr) throw std::logic_error(std::string("a topic without ") + key);
    return *part;
}

void fill_in_defaults(const Value& schema, Value& input) {
    const Value* properties = schema.find("properties");
    if (properties == nullptr || properties->map() == nullptr) return;
    for (const auto& [name, property] : *properties->map()) {
        const Value* standard = property.find("default");
        if (standard != nullptr && input.find(name) == nullptr) input.set(name, *standard);
    }
}

Result<Value> read_input(const Value& schema, const Topic& topic, std::string_view json) {
    const auto plain = with_plain_numbers(json);
    if (!plain) return plain.fault();
    auto input = entry::read_json(*plain);
    if (!input) return input.fault();
    const std::string name(topic.name);
    if (const auto fits = method::check_shape(schema, *input, name + " input"); !fits) {
        return Fault{Code::json_shape, fits.fault().detail, fits.fault().where,
                     "undersheet reckon " + name + " --schema says what it takes"};
    }
    fill_in_defaults(schema, *input);
    return input;
}

} // namespace

std::vector<TopicLine> topics() {
    std::vector<TopicLine> lines;
    for (const Value& shape : shapes().list_of("topics"))
        lines.push_back({shape.text_of("name"), shape.text_of("says")});
    return lines;
}

Result<std::string> reckon(std::string_view topic, std::string_view json) {
    const auto found = find_topic(topic);
    if (!found) return found.fault();
    const auto input = read_input(part_of(found->shape, "input"), found->topic, json);
    if (!input) return input.fault();
    const auto output = found->topic.work_out(*input);
    if (!output) return output.fault();
    const auto fits = method::check_shape(part_of(found->shape, "output"), *output, "the answer");
    if (!fits) {
        return Fault{Code::value_impossible,
                     "worked out from this, " + fits.fault().detail,
                     {},
                     "one of the values is far from anything on a roof"};
    }
    return entry::write_pretty(*output) + "\n";
}

Result<std::string> reckon_schema(std::string_view topic) {
    const auto found = find_topic(topic);
    if (!found) return found.fault();
    return entry::write_pretty(found->shape) + "\n";
}

std::string json_of(const std::vector<TopicLine>& topics) {
    Value list = entry::List{};
    for (const auto& line : topics) list.push(Value().set("topic", line.topic).set("says", line.says));
    return entry::write_pretty(list) + "\n";
}

} // namespace undersheet::desk
