# Writes one data file as a C++ source holding its bytes: cmake -DINPUT=... -DOUTPUT=... -DNAME=... -P embed.cmake
# HEADER declares it and SPACE is its namespace: those of schema/ where they are not given.
# An array of bytes, not a string literal: literals have a length limit in the standard, arrays have none.
if(NOT HEADER)
    set(HEADER schema/embedded.h)
    set(SPACE schema)
endif()
file(READ "${INPUT}" digits HEX)
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${digits}")
string(REGEX REPLACE "(0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,)" "\\1\n" bytes "${bytes}")
file(WRITE "${OUTPUT}" "\
#include \"${HEADER}\"

namespace undersheet::${SPACE} {

std::string_view ${NAME}() {
    static constexpr unsigned char kBytes[] = {
${bytes}0};
    return {reinterpret_cast<const char*>(kBytes), sizeof kBytes - 1};
}

} // namespace undersheet::${SPACE}
")
