# Copies what the page loads before it starts from the assets in `from` to the folder `to`.
file(REMOVE_RECURSE ${to})
foreach(folder IN ITEMS borders fonts landcover magnetic mappings places practice proj publishers zones zoneinfo)
  file(COPY ${from}/${folder} DESTINATION ${to} PATTERN CMakeFiles EXCLUDE PATTERN *.cmake EXCLUDE
    PATTERN *.hgt EXCLUDE)
endforeach()
