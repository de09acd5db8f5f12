# The libraries we stand on, compiled from UNDERSHEET_BUNDLED_SOURCES_DIR: for machines that have none of them (Arm,
# WebAssembly, phones). Same target names as the system's packages, so the rooms do not notice. `bash tests/sources.sh`
# makes such a folder:
#   sqlite/sqlite3.{c,h}   sqlitecpp/{include,src}   libsodium/ (its src/libsodium)   qrcode/qrcodegen/qrcodegen.{cpp,hpp}
#   zlib/*.{c,h} (without its files for gzip)   jpeg/*.{c,h,h.in} (libjpeg-turbo; jpeg/parts what its files include)
#   fonts/Carlito-{Regular,Bold}.ttf   include/{Eigen,nlohmann,catch2}
set(bundled ${UNDERSHEET_BUNDLED_SOURCES_DIR})
if(NOT EXISTS ${bundled}/sqlite/sqlite3.c)
    message(FATAL_ERROR "UNDERSHEET_BUNDLED_SOURCES_DIR holds no sqlite/sqlite3.c; bash tests/sources.sh fills it")
endif()

function(undersheet_bundled name alias includes)
    file(GLOB_RECURSE sources ${ARGN})
    # Variants for one make of processor only; empty elsewhere.
    list(FILTER sources EXCLUDE REGEX "/parts/[a-z0-9]+\\.c$")
    list(FILTER sources EXCLUDE REGEX "[-_](avx2|avx512f|ssse3|sse41|sse2|sse|xmm6)\\.c$")
    add_library(${name} STATIC ${sources})
    add_library(${alias} ALIAS ${name})
    set_target_properties(${name} PROPERTIES UNITY_BUILD OFF)
    set_property(GLOBAL APPEND PROPERTY undersheet_libraries ${name})
    target_include_directories(${name} SYSTEM PUBLIC $<BUILD_INTERFACE:${includes}>)
    target_compile_options(${name} PRIVATE -w) # their warnings are their makers' concern
endfunction()

undersheet_bundled(undersheet_sqlite SQLite::SQLite3 ${bundled}/sqlite ${bundled}/sqlite/sqlite3.c)
# What Debian's build has and the book relies on. Loading extensions is left out, and SQLiteCpp has to know it.
target_compile_definitions(undersheet_sqlite
    PUBLIC SQLITE_OMIT_LOAD_EXTENSION
    PRIVATE SQLITE_ENABLE_FTS5 SQLITE_ENABLE_MATH_FUNCTIONS SQLITE_SECURE_DELETE SQLITE_USE_URI SQLITE_THREADSAFE=1)
find_package(Threads)
target_link_libraries(undersheet_sqlite PUBLIC ${CMAKE_DL_LIBS})
if(Threads_FOUND AND NOT EMSCRIPTEN)
    target_link_libraries(undersheet_sqlite PUBLIC Threads::Threads)
endif()

undersheet_bundled(undersheet_sqlitecpp SQLiteCpp ${bundled}/sqlitecpp/include ${bundled}/sqlitecpp/src/*.cpp)
target_link_libraries(undersheet_sqlitecpp PUBLIC undersheet_sqlite)

undersheet_bundled(undersheet_sodium PkgConfig::sodium ${bundled}/libsodium/include ${bundled}/libsodium/*.c)
target_include_directories(undersheet_sodium PRIVATE ${bundled}/libsodium/include/sodium)
# Plain C without the assembler and vector variants: the same code on every processor. All our targets are little-endian.
target_compile_definitions(undersheet_sodium
    PUBLIC SODIUM_STATIC
    PRIVATE CONFIGURED=1 NATIVE_LITTLE_ENDIAN=1 HAVE_WEAK_SYMBOLS=1 $<$<NOT:$<BOOL:${EMSCRIPTEN}>>:HAVE_PTHREAD=1>)

undersheet_bundled(undersheet_qrcode PkgConfig::qrcode ${bundled}/qrcode ${bundled}/qrcode/qrcodegen/*.cpp)

undersheet_bundled(undersheet_jpeg PkgConfig::jpeg ${bundled}/jpeg ${bundled}/jpeg/*.c)
# What its own configuring would write: the interface of libjpeg 6b, plain C, no vector code.
set(JPEG_LIB_VERSION 62)
set(BITS_IN_JSAMPLE 8)
set(MEM_SRCDST_SUPPORTED 1)
set(VERSION 2.1)
set(LIBJPEG_TURBO_VERSION_NUMBER 2001000)
set(INLINE inline)
set(THREAD_LOCAL __thread) # what went wrong is said to whoever called
set(SIZE_T __SIZEOF_SIZE_T__)
set(HAVE_BUILTIN_CTZL 1)
foreach(header IN ITEMS jconfig.h jconfigint.h jversion.h)
    configure_file(${bundled}/jpeg/${header}.in ${PROJECT_BINARY_DIR}/generated/jpeg/${header})
endforeach()
target_compile_definitions(undersheet_jpeg PRIVATE BMP_SUPPORTED PPM_SUPPORTED) # of no use here, but turbojpeg.c calls them
target_include_directories(undersheet_jpeg PRIVATE ${PROJECT_BINARY_DIR}/generated/jpeg ${bundled}/jpeg/parts)

if(UNDERSHEET_PDF)
    undersheet_bundled(undersheet_zlib ZLIB::ZLIB ${bundled}/zlib ${bundled}/zlib/*.c)
endif()

add_library(undersheet_headers_only INTERFACE)
target_include_directories(undersheet_headers_only SYSTEM INTERFACE $<BUILD_INTERFACE:${bundled}/include>)
add_library(Eigen3::Eigen ALIAS undersheet_headers_only)
add_library(nlohmann_json::nlohmann_json ALIAS undersheet_headers_only)
add_library(Catch2::Catch2 ALIAS undersheet_headers_only)
