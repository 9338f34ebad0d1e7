# Scripts that hold the program against tools from outside.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
tamis_script_test("against: pint" ${Python3_EXECUTABLE} tests/against/pint_check.py)
tamis_script_test("against: Python json" ${Python3_EXECUTABLE} tests/against/json_oracle.py)
