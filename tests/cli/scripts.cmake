tamis_script_test("cli: examples show what the program prints" ${PROJECT_SOURCE_DIR}/scripts/accept-golden --check)
tamis_script_test("cli: reports hold to their schema" ${CMAKE_CURRENT_LIST_DIR}/report_check)
tamis_script_test("cli: completion scripts work in their shells" ${CMAKE_CURRENT_LIST_DIR}/completion_check)
tamis_script_test("cli: output that goes nowhere ends quietly" ${CMAKE_CURRENT_LIST_DIR}/pipe_check)
