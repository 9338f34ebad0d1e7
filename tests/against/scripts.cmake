# Scripts that hold the program against tools from outside.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
tamis_script_test("against: pint" ${Python3_EXECUTABLE} tests/against/pint_check.py)
tamis_script_test("against: Python json" ${Python3_EXECUTABLE} tests/against/json_oracle.py)
add_executable(time_network_answers ${CMAKE_CURRENT_LIST_DIR}/networks/answers.cpp)
target_link_libraries(time_network_answers PRIVATE tamis_flow)
tamis_script_test("against: NetworkX" ${Python3_EXECUTABLE} tests/against/networkx_check.py
                  $<TARGET_FILE:time_network_answers>)
tamis_script_test("against: SARIF" ${Python3_EXECUTABLE} tests/against/report_forms.py sarif)
tamis_script_test("against: JUnit" ${Python3_EXECUTABLE} tests/against/report_forms.py junit)
tamis_script_test("against: Indian Food Composition Tables" ${Python3_EXECUTABLE} tests/against/ifct_check.py)
tamis_script_test("against: SciPy" ${Python3_EXECUTABLE} tests/against/heat_scipy.py)
