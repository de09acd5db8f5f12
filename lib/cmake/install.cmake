# What `cmake --install` puts down: the static libraries of all rooms, the headers of desk and capi with the base
# headers they include (under include/undersheet), the program, and what find_package(undersheet) reads.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/undersheet)

# Every header that these reach, themselves included.
function(undersheet_reach out)
    set(found "")
    set(waiting ${ARGN})
    while(waiting)
        list(POP_FRONT waiting header)
        list(APPEND found ${header})
        file(STRINGS ${PROJECT_SOURCE_DIR}/lib/${header} lines REGEX "^#include \"")
        foreach(line IN LISTS lines)
            string(REGEX REPLACE "^#include \"([^\"]+)\".*" "\\1" included "${line}")
            if(NOT included IN_LIST found AND NOT included IN_LIST waiting)
                list(APPEND waiting ${included})
            endif()
        endforeach()
    endwhile()
    set(${out} ${found} PARENT_SCOPE)
endfunction()

# A header of the desk that reaches another room is the desk's own, and stays at home.
file(GLOB candidates CONFIGURE_DEPENDS RELATIVE ${PROJECT_SOURCE_DIR}/lib
     ${PROJECT_SOURCE_DIR}/lib/desk/*.h ${PROJECT_SOURCE_DIR}/lib/capi/*.h)
set(installed "")
foreach(candidate IN LISTS candidates)
    undersheet_reach(reached ${candidate})
    set(elsewhere ${reached})
    list(FILTER elsewhere EXCLUDE REGEX "^(base|desk|capi)/")
    if(NOT elsewhere)
        list(APPEND installed ${reached})
    endif()
endforeach()
list(REMOVE_DUPLICATES installed)
foreach(header IN LISTS installed)
    cmake_path(GET header PARENT_PATH room)
    install(FILES lib/${header} DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/undersheet/${room})
endforeach()

get_property(libraries GLOBAL PROPERTY undersheet_libraries)
install(TARGETS ${libraries} EXPORT undersheet
        ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
        INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/undersheet)
install(EXPORT undersheet NAMESPACE undersheet:: FILE undersheetTargets.cmake DESTINATION ${package_dir})
if(TARGET undersheet)
    install(TARGETS undersheet RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
endif()

configure_package_config_file(lib/cmake/undersheetConfig.cmake.in ${PROJECT_BINARY_DIR}/undersheetConfig.cmake
                              INSTALL_DESTINATION ${package_dir})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/undersheetConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/undersheetConfig.cmake ${PROJECT_BINARY_DIR}/undersheetConfigVersion.cmake
        DESTINATION ${package_dir})
