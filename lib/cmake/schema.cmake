# The data files of schema/ as part of the library: target undersheet_schema, header "schema/embedded.h".
# kinds.json is reached as undersheet::schema::kinds_json(), air.schema.json as air_schema_json(), any of them by name
# with find(). The bytes are written again when a file changes, the header when one is added or taken away.
file(GLOB schema_files CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/schema/*.sql ${PROJECT_SOURCE_DIR}/schema/*.json)
set(schema_out ${PROJECT_BINARY_DIR}/generated/schema)
set(schema_sources ${schema_out}/embedded.cpp)
set(schema_declarations "")
set(schema_rows "")
set(schema_names "")
foreach(path IN LISTS schema_files)
    cmake_path(GET path FILENAME file)
    string(MAKE_C_IDENTIFIER "${file}" name)
    add_custom_command(
        OUTPUT ${schema_out}/${name}.cpp
        COMMAND ${CMAKE_COMMAND} -DINPUT=${path} -DOUTPUT=${schema_out}/${name}.cpp -DNAME=${name}
                -P ${CMAKE_CURRENT_LIST_DIR}/embed.cmake
        DEPENDS ${path} ${CMAKE_CURRENT_LIST_DIR}/embed.cmake
        COMMENT "Embedding schema/${file}"
        VERBATIM)
    list(APPEND schema_sources ${schema_out}/${name}.cpp)
    string(APPEND schema_declarations "[[nodiscard]] std::string_view ${name}(); // schema/${file}\n")
    string(APPEND schema_names "        \"${file}\",\n")
    string(APPEND schema_rows "    if (file_name == \"${file}\") return ${name}();\n")
endforeach()
configure_file(${CMAKE_CURRENT_LIST_DIR}/embedded.h.in ${schema_out}/embedded.h @ONLY)
configure_file(${CMAKE_CURRENT_LIST_DIR}/embedded.cpp.in ${schema_out}/embedded.cpp @ONLY)

add_library(undersheet_schema STATIC ${schema_sources})
target_include_directories(undersheet_schema PUBLIC $<BUILD_INTERFACE:${PROJECT_BINARY_DIR}/generated>)
target_link_libraries(undersheet_schema PRIVATE $<BUILD_INTERFACE:undersheet_warnings>)
set_target_properties(undersheet_schema PROPERTIES EXPORT_NAME schema)
set_property(GLOBAL APPEND PROPERTY undersheet_libraries undersheet_schema)
