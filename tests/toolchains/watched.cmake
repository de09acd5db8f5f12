# What a build that watches itself is configured with, once for all its users: cmake -C tests/toolchains/watched.cmake.
# Clang, every test and fuzz target under the sanitizers.
include(${CMAKE_CURRENT_LIST_DIR}/together.cmake)
set(CMAKE_C_COMPILER clang CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Watched CACHE STRING "")
# A char has no sign on Arm: what leans on one is found here, where every test runs.
set(CMAKE_CXX_FLAGS_WATCHED "-O1 -g1 -funsigned-char" CACHE STRING "")
set(UNDERSHEET_FUZZ ON CACHE BOOL "")
