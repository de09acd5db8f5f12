// What was typed after the command's name, sorted into its words and options.
#pragma once

#include "base/result.h"

#include <map>
#include <string>
#include <vector>

namespace undersheet::cli {

struct Verb;

class Arguments {
public:
    [[nodiscard]] std::string one(const std::string& name) const; // "" when it was not given
    [[nodiscard]] std::vector<std::string> all(const std::string& name) const;
    [[nodiscard]] bool has(const std::string& name) const;
    void put(const std::string& name, std::vector<std::string> values) { given_[name] = std::move(values); }

private:
    std::map<std::string, std::vector<std::string>> given_;
};

struct Command {
    const Verb* verb = nullptr; // nullptr for "--help" and "--version" on their own
    Arguments arguments;
};

// Finds the command and reads what follows it. An unknown word is named, with the nearest one there is.
[[nodiscard]] Result<Command> read_command(std::vector<std::string> typed);

} // namespace undersheet::cli
