# WebAssembly by Debian's emscripten, run by node. Configure and build with NODE_PATH naming the folder of node's
# modules (/usr/share/nodejs): emscripten does not find its own helper there when node is not Debian's.
find_program(UNDERSHEET_EMCC emcc REQUIRED)
find_program(UNDERSHEET_NODE NAMES node nodejs REQUIRED)
# Set before emscripten's own file, which would pass node a flag that newer ones refuse.
set(CMAKE_CROSSCOMPILING_EMULATOR ${UNDERSHEET_NODE})
execute_process(COMMAND em-config EMSCRIPTEN_ROOT OUTPUT_VARIABLE emscripten_root OUTPUT_STRIP_TRAILING_WHITESPACE)
include(${emscripten_root}/cmake/Modules/Platform/Emscripten.cmake)

# Exceptions have to be asked for in every object: one without turns a throw into a bare number.
set(CMAKE_CXX_FLAGS_INIT -fexceptions)
# One file, because newer nodes cannot load the second; NODERAWFS gives the tests real files; EXIT_RUNTIME the exit code.
set(CMAKE_EXE_LINKER_FLAGS_INIT
    "-fexceptions -sSINGLE_FILE=1 -sNODERAWFS=1 -sEXIT_RUNTIME=1 -sALLOW_MEMORY_GROWTH=1 -sTOTAL_STACK=8MB")
