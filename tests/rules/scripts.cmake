# The examples of the rules against the published schemas.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
tamis_script_test("rules: examples against the schemas" ${Python3_EXECUTABLE} tests/rules/examples_against_schemas.py)
