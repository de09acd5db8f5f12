// How many of what is made by chance: few in every run, more in a long one that names a number.
#pragma once

#include <cstdlib>
#include <stdexcept>
#include <string>

namespace undersheet::test {

// `name` is a variable of the environment; what it holds and is no number ends the test.
inline int how_many(const char* name, int otherwise) {
    const char* said = std::getenv(name);
    if (said == nullptr) return otherwise;
    std::size_t read = 0;
    const int many = std::stoi(said, &read);
    if (read != std::string(said).size() || many < 0)
        throw std::invalid_argument(std::string(name) + " is no number: " + said);
    return many;
}

} // namespace undersheet::test
