# What the room lib/pdf stands on: zlib, and the typeface Carlito in two weights, which becomes part of the library. From the system's
# packages (zlib1g-dev, fonts-crosextra-carlito), or from UNDERSHEET_BUNDLED_SOURCES_DIR.
add_compile_definitions(UNDERSHEET_PDF) # for lib/paper/papers.cpp and the tests
if(UNDERSHEET_BUNDLED_SOURCES_DIR)
    set(font_folder ${UNDERSHEET_BUNDLED_SOURCES_DIR}/fonts)
else()
    find_package(ZLIB REQUIRED)
    find_path(UNDERSHEET_FONT_DIR Carlito-Regular.ttf PATHS /usr/share/fonts/truetype/crosextra REQUIRED)
    set(font_folder ${UNDERSHEET_FONT_DIR})
endif()

set(font_sources "")
foreach(weight IN ITEMS Regular Bold)
    string(TOLOWER ${weight} name)
    set(path ${font_folder}/Carlito-${weight}.ttf)
    set(source ${PROJECT_BINARY_DIR}/generated/fonts/${name}.cpp)
    add_custom_command(
        OUTPUT ${source}
        COMMAND ${CMAKE_COMMAND} -DINPUT=${path} -DOUTPUT=${source} -DNAME=${name}_ttf -DHEADER=pdf/font_files.h
                -DSPACE=pdf -P ${CMAKE_CURRENT_LIST_DIR}/embed.cmake
        DEPENDS ${path} ${CMAKE_CURRENT_LIST_DIR}/embed.cmake
        COMMENT "Embedding Carlito-${weight}.ttf"
        VERBATIM)
    set_source_files_properties(${source} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON) # nothing in it for a reader of code
    list(APPEND font_sources ${source})
endforeach()
