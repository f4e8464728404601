// Holds nothing: the target of the precompiled header needs a source (tests/CMakeLists.txt).
