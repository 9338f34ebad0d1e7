find_package(Python3 REQUIRED COMPONENTS Interpreter)
tamis_script_test("lua: the order read by Python's csv" ${Python3_EXECUTABLE} tests/lua/order_csv.py)
find_program(TAMIS_NODE node)

# A script for node; says skipped where there is none.
function(tamis_node_test name script)
  if(TAMIS_NODE)
    tamis_script_test("${name}" ${TAMIS_NODE} tests/lua/${script})
  else()
    tamis_script_test("${name}" ${CMAKE_COMMAND} -E echo "SKIPPED: node is not installed")
    set_tests_properties("${name}" PROPERTIES SKIP_REGULAR_EXPRESSION "SKIPPED: ")
  endif()
endfunction()

tamis_node_test("lua: the sheet in a browser and on paper" sheet_in_chromium.mjs)
tamis_node_test("lua: the label in a browser and on paper" label_in_chromium.mjs)
tamis_node_test("lua: the card in a CommonMark reader" card_in_commonmark.mjs)
tamis_node_test("lua: the page for the web, by its readers" page_in_chromium.mjs)
tamis_script_test("lua: the calendar read by icalendar" ${Python3_EXECUTABLE} tests/lua/calendar_read.py)
