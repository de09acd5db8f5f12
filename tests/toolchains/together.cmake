# Most of a compiler's work is the headers that files share, so files of one room are compiled some at a time. What is
# meant for a run from nothing begins with this: cmake -C. Who edits files does better without.
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 16 CACHE STRING "")
