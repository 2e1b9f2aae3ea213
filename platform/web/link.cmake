# `mastwise` is for the browser. `mastwise_node` has the verbs that draw nothing, for tests: node runs it
# with this machine's files.
set(web ${PROJECT_SOURCE_DIR}/platform/web)
set(system_link --js-library ${web}/system.js -sALLOW_MEMORY_GROWTH=1 -sMAXIMUM_MEMORY=2GB
  -sINITIAL_MEMORY=128MB -sTOTAL_STACK=8MB
  --pre-js ${web}/memory.js)
list(JOIN system_link " " system_link)

target_link_options(mastwise PRIVATE "SHELL:${system_link} -sENVIRONMENT=web,worker -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2"
  "SHELL:-sFORCE_FILESYSTEM=1 -sEXPORTED_RUNTIME_METHODS=FS,addRunDependency,removeRunDependency"
  "SHELL:--preload-file ${CMAKE_BINARY_DIR}/page_assets@/assets")
set_target_properties(mastwise PROPERTIES LINK_DEPENDS "${web}/system.js;${web}/memory.js")

add_executable(mastwise_node EXCLUDE_FROM_ALL ${PROJECT_SOURCE_DIR}/tests/support/verbs_main.cpp)
target_link_libraries(mastwise_node PRIVATE mastwise_cli)
target_link_options(mastwise_node PRIVATE
  "SHELL:${system_link} -sENVIRONMENT=node,worker -sNODERAWFS=1 -sEXIT_RUNTIME=1 --pre-js ${web}/node.js")
set_target_properties(mastwise_node PROPERTIES LINK_DEPENDS "${web}/system.js;${web}/memory.js;${web}/node.js")
add_dependencies(mastwise_node mastwise_assets)

# The practice area's hills are made on the tablet, with the same bytes as on any machine.
add_executable(mastwise_hills ${PROJECT_SOURCE_DIR}/assets/practice/make_terrain.cpp)
target_link_libraries(mastwise_hills PRIVATE mastwise_flags fmt::fmt)
target_link_options(mastwise_hills PRIVATE
  "SHELL:-sENVIRONMENT=worker -sSINGLE_FILE=1 -sALLOW_MEMORY_GROWTH=1 -sFORCE_FILESYSTEM=1 --pre-js ${web}/hills.js --pre-js ${web}/memory.js")
set_target_properties(mastwise_hills PROPERTIES LINK_DEPENDS "${web}/hills.js;${web}/memory.js")

# The page's assets: without those hills.
add_custom_target(mastwise_page_assets
  COMMAND ${CMAKE_COMMAND} -D from=${CMAKE_BINARY_DIR}/assets -D to=${CMAKE_BINARY_DIR}/page_assets
          -P ${web}/page_assets.cmake
  DEPENDS mastwise_assets VERBATIM)
add_dependencies(mastwise mastwise_page_assets mastwise_hills)
