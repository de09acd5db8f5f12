// Asks one topic and reads the answer back, held against the schema that `--schema` prints.
#pragma once

#include "desk/reckon.h"
#include "entry/json.h"
#include "method/json_schema.h"

#include <catch2/catch.hpp>

#include <string>

namespace undersheet {

inline entry::Value read_back(const std::string& json) {
    auto read = entry::read_json(json);
    if (!read.ok()) throw std::logic_error(one_line(read.fault()));
    return *std::move(read);
}

inline entry::Value schema_of(const std::string& topic, const char* part) {
    const auto schemas = desk::reckon_schema(topic);
    if (!schemas.ok()) throw std::logic_error(one_line(schemas.fault()));
    return *read_back(*schemas).find(part);
}

inline entry::Value reckoned(const std::string& topic, const std::string& json) {
    INFO(topic << " " << json);
    const auto answer = desk::reckon(topic, json);
    INFO((answer.ok() ? *answer : one_line(answer.fault())));
    REQUIRE(answer.ok());
    auto output = read_back(*answer);
    const auto fits = method::check_shape(schema_of(topic, "output"), output, topic);
    INFO((fits.ok() ? "" : one_line(fits.fault())));
    CHECK(fits.ok());
    return output;
}

// "" when it was answered.
inline std::string refusal(const std::string& topic, const std::string& json) {
    const auto answer = desk::reckon(topic, json);
    return answer.ok() ? "" : one_line(answer.fault());
}

// A number somewhere in the answer; what is not there fails.
inline double figure_of(const entry::Value& output, const char* key) {
    INFO(key);
    const auto* found = output.find(key);
    REQUIRE(found != nullptr);
    REQUIRE(found->number() != nullptr);
    return found->number()->value();
}

} // namespace undersheet
