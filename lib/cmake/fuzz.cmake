# Everything that is compiled after this line can be driven by libFuzzer: it counts which edges of the code an input
# reaches, and stops at wrong memory and undefined behaviour. The executables are made in tests/fuzz.
if(NOT CMAKE_CXX_COMPILER_ID MATCHES "Clang")
    message(FATAL_ERROR "UNDERSHEET_FUZZ needs Clang: -DCMAKE_C_COMPILER=clang -DCMAKE_CXX_COMPILER=clang++")
endif()
add_compile_options(-fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
add_link_options(-fsanitize=address,undefined)
