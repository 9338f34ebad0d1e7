tamis_script_test("repository: made files are those of the schema" ${CMAKE_CURRENT_LIST_DIR}/generated_check)
tamis_script_test("repository: an installed folder can be moved" ${CMAKE_CURRENT_LIST_DIR}/install_check)
tamis_script_test("repository: shell scripts are well-formed" ${CMAKE_CURRENT_LIST_DIR}/shell_check)
