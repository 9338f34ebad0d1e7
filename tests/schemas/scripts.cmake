# The published schemas against outside tools; see validate.py.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
foreach(what good bad rules twins page ajv)
  tamis_script_test("schemas: ${what}" ${Python3_EXECUTABLE} tests/schemas/validate.py ${what})
endforeach()
tamis_script_test("schemas: made from tamis.rnc" ${Python3_EXECUTABLE} tests/schemas/fresh.py)
