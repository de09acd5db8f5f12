# The build that README's two commands make in build/.
include(${CMAKE_CURRENT_LIST_DIR}/together.cmake)
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O2" CACHE STRING "")
