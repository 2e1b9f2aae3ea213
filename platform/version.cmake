# Sets MASTWISE_COMMIT for --version, and the commit's time as SOURCE_DATE_EPOCH unless it is set
# already: the same commit then builds the same bytes on any day. Sources from an archive, even one
# unpacked within another repository, have an unknown commit.
set(MASTWISE_COMMIT "unknown commit")
find_package(Git QUIET)
if(GIT_FOUND)
  function(ask_git result)
    execute_process(COMMAND ${GIT_EXECUTABLE} ${ARGN} WORKING_DIRECTORY ${PROJECT_SOURCE_DIR}
      OUTPUT_VARIABLE answer ERROR_QUIET OUTPUT_STRIP_TRAILING_WHITESPACE)
    set(${result} "${answer}" PARENT_SCOPE)
  endfunction()
  ask_git(inner_folder rev-parse --show-cdup)
  ask_git(commit describe --always --abbrev=12 --dirty=-changed)
  if(commit AND inner_folder STREQUAL "")
    set(MASTWISE_COMMIT "commit ${commit}")
    if(NOT DEFINED ENV{SOURCE_DATE_EPOCH})
      ask_git(commit_seconds log -1 --format=%ct)
      set(ENV{SOURCE_DATE_EPOCH} ${commit_seconds})
    endif()
    # Configure again after each commit.
    ask_git(moves rev-parse --git-path logs/HEAD)
    get_filename_component(moves ${moves} ABSOLUTE)
    if(EXISTS ${moves})
      set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${moves})
    endif()
  endif()
endif()
