// Every shape with its own keys, and what a solid may not be.

#include <catch2/catch.hpp>

#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

// The whole plan with a second solid of these lines.
std::string plan_with_solid(const std::string& lines) {
  return with(
      whole_plan(), "[concrete]\n",
      "[[piece.solid]]\nname = \"second\"\nat = [\"1 m\", \"2 m\", \"3 m\"]\n" + lines + "\n[concrete]\n");
}
Solid solid(const std::string& lines) { return plan_of(plan_with_solid(lines)).piece.solids.at(1); }

// Its faults without their places; the place has tests of its own.
std::vector<std::string> faults_of_solid(const std::string& lines) {
  std::vector<std::string> faults = faults_of(plan_with_solid(lines));
  for (std::string& fault : faults) fault.erase(0, fault.find(' ') + 1);
  return faults;
}
using List = std::vector<std::string>;

}  // namespace

TEST_CASE("a cylinder, a pipe, a cone") {
  const Solid cylinder = solid("shape = \"cylinder\"\ndiameter = \"1 m\"\nlength = \"2 m\"\naxis = \"x\"");
  CHECK(cylinder.shape == Shape::cylinder);
  CHECK(cylinder.axis == Axis::x);
  CHECK(in(m, cylinder.diameter) == 1.0);
  CHECK(in(m, cylinder.length) == 2.0);
  CHECK(in(m, cylinder.at.z) == 3.0);

  const Solid pipe =
      solid("shape = \"pipe\"\ndiameter = \"1 m\"\ninside_diameter = \"0.8 m\"\nlength = \"2 m\"");
  CHECK(pipe.shape == Shape::pipe);
  CHECK(pipe.axis == Axis::z);
  CHECK(in(m, pipe.inside_diameter) == 0.8);

  const Solid cone = solid(
      "shape = \"cone\"\nbottom_diameter = \"1 m\"\ntop_diameter = \"0 m\"\nlength = \"2 m\"\naxis = \"y\"");
  CHECK(cone.shape == Shape::cone);
  CHECK(cone.axis == Axis::y);
  CHECK(in(m, cone.bottom_diameter) == 1.0);
  CHECK(in(m, cone.top_diameter) == 0.0);
}

TEST_CASE("a wedge, turned") {
  const Solid wedge = solid(R"(shape = "wedge"
size = ["2 m", "1 m", "0.5 m"]
top_size = ["1 m", "0 m"]
top_at = ["-0.1 m", "0.2 m"]
turned = { about = "z", by = "-30 deg" })");
  CHECK(wedge.shape == Shape::wedge);
  CHECK(in(m, wedge.size.x) == 2.0);
  CHECK(in(m, wedge.top_size[0]) == 1.0);
  CHECK(in(m, wedge.top_size[1]) == 0.0);
  CHECK(in(m, wedge.top_at[0]) == Approx(-0.1));
  CHECK(in(m, wedge.top_at[1]) == Approx(0.2));
  CHECK(wedge.turned_about == Axis::z);
  CHECK(in(deg, wedge.turned_by) == Approx(-30.0));
}

TEST_CASE("a prism with a hole") {
  const Solid prism = solid(R"(shape = "prism"
length = "1 m"
outline = [["0 m", "0 m"], ["2 m", "0 m"], ["2 m", "1 m"], ["0 m", "1 m"]]
holes = [[["0.2 m", "0.2 m"], ["0.4 m", "0.2 m"], ["0.4 m", "0.5 m"]]])");
  CHECK(prism.shape == Shape::prism);
  REQUIRE(prism.outline.size() == 4);
  CHECK(in(m, prism.outline[2].x) == 2.0);
  CHECK(in(m, prism.outline[2].y) == 1.0);
  REQUIRE(prism.holes.size() == 1);
  REQUIRE(prism.holes[0].size() == 3);
  CHECK(in(m, prism.holes[0][2].y) == 0.5);
}

TEST_CASE("a mesh, from STL with a unit and from STEP without") {
  const Solid stl = solid("shape = \"mesh\"\nfile = \"parts/stair.STL\"\nfile_unit = \"1 in\"");
  CHECK(stl.shape == Shape::mesh);
  CHECK(stl.file == "parts/stair.STL");
  CHECK(in(inch, stl.file_unit) == Approx(1.0));
  CHECK(solid("shape = \"mesh\"\nfile = \"stair.step\"").file == "stair.step");
  CHECK(solid("shape = \"mesh\"\nfile = \"stair..2.stp\"").file == "stair..2.stp");

  CHECK(faults_of_solid("shape = \"mesh\"\nfile = \"stair.stl\"") ==
        List{"an STL file needs the key 'file_unit' | for example: file_unit = \"1 mm\""});
  CHECK(faults_of_solid("shape = \"mesh\"\nfile = \"stair.stp\"\nfile_unit = \"1 mm\"") ==
        List{"'file_unit' is for STL files; a STEP file says its unit itself"});
  CHECK(faults_of_solid("shape = \"mesh\"\nfile = \"stair\"") ==
        List{"'file' must end in .step, .stp or .stl"});
}

TEST_CASE("a file outside the plan's folder is refused") {
  const auto fault = [](const std::string& path) {
    return faults_of_solid("shape = \"mesh\"\nfile = '" + path + "'").at(0);
  };
  CHECK(fault("/stair.step").starts_with("'file' must not be absolute"));
  CHECK(fault("~/stair.step").starts_with("'file' must not be absolute"));
  CHECK(fault("../stair.step").starts_with("'file' must not leave the plan's folder"));
  CHECK(fault("a/../../stair.step").starts_with("'file' must not leave the plan's folder"));
  CHECK(fault("a/..").starts_with("'file' must not leave the plan's folder"));
  CHECK(fault("..\\stair.step").starts_with("'file' is written with '/'"));
  CHECK(fault("C:stair.step").starts_with("'file' must not name a drive"));
  CHECK(fault("").starts_with("'file' is empty"));
}

TEST_CASE("a key that the shape does not use is a fault, and so is one that it lacks") {
  CHECK(faults_of_solid("shape = \"cylinder\"\ndiameter = \"1 m\"\ntop_at = [\"1 m\", \"1 m\"]") ==
        List{"a cylinder needs the key 'length' | for example: length = \"6.0 m\"",
             "a cylinder has no 'top_at' | a cylinder has: 'axis', 'diameter', 'length'"});
}

TEST_CASE("a pipe needs a wall: inside diameter at, below and above the diameter") {
  const auto pipe = [](const std::string& inside) {
    return "shape = \"pipe\"\nlength = \"1 m\"\ndiameter = \"1 m\"\ninside_diameter = \"" + inside + "\"";
  };
  CHECK(faults_of_solid(pipe("0.999999 m")).empty());
  CHECK(faults_of_solid(pipe("1 m")) == List{"'inside_diameter' must be less than 'diameter' in line 20"});
  CHECK(faults_of_solid(pipe("1.000001 m")).size() == 1);
}

TEST_CASE("a cone is not a point at both ends") {
  CHECK(faults_of_solid(
            "shape = \"cone\"\nbottom_diameter = \"0 m\"\ntop_diameter = \"0 m\"\nlength = \"1 m\"") ==
        List{"a cone cannot be a point at both ends"});
}

TEST_CASE("lists of the wrong length, and points that are none") {
  CHECK(faults_of_solid("shape = \"box\"\nsize = [\"1 m\", \"1 m\"]")
            .at(0)
            .starts_with("'size' needs a list of 3; given: 2"));
  CHECK(faults_of_solid("shape = \"box\"\nsize = [\"1 m\", \"1 m\", \"1 m\", \"1 m\"]")
            .at(0)
            .starts_with("'size' needs a list of 3; given: 4"));
  CHECK(faults_of_solid("shape = \"box\"\nsize = \"1 m\"")
            .at(0)
            .starts_with("'size' needs a list of 3; given: a string"));
  const std::string prism = "shape = \"prism\"\nlength = \"1 m\"\noutline = ";
  CHECK(faults_of_solid(prism + R"([["0 m", "0 m"], ["1 m", "0 m"]])")
            .at(0)
            .starts_with("'outline' needs at least 3 points; given: 2"));
  CHECK(faults_of_solid(prism + R"([["0 m", "0 m"], ["1 m", "0 m"], ["1 m"]])")
            .at(0)
            .starts_with("'outline' needs a list of 2; given: 1"));
  CHECK(faults_of_solid(prism + R"([["0 m", "0 m"], ["1 m", "0 m"], "1 m"])")
            .at(0)
            .starts_with("'outline' needs a list of 2; given: a string"));
}

TEST_CASE("a prism of more points than can be compared is refused") {
  const auto prism = [](int points) {
    std::string outline;
    for (int i = 0; i < points; ++i) outline += "[\"" + std::to_string(i) + " mm\", \"1 m\"],";
    return "shape = \"prism\"\nlength = \"1 m\"\noutline = [" + outline + "]" +
           "\nholes = [[[\"1 m\", \"1 m\"], [\"2 m\", \"1 m\"], [\"1 m\", \"2 m\"]]]";
  };
  CHECK(faults_of_solid(prism(997)).empty());
  CHECK(faults_of_solid(prism(998)) == List{"a prism has at most 1000 points, with its holes"});
  CHECK(faults_of_solid(prism(1001)) == List{"'outline' has more than 1000 entries"});
}

TEST_CASE("the first solid is not a cut, and no solid has the name of a direction") {
  CHECK(faults_of(with(whole_plan(), "shape = \"box\"", "shape = \"box\"\ncut = true")) ==
        List{"9:1 the first solid is a cut: there is nothing to take away from"});
  CHECK(faults_of(with(whole_plan(), "name = \"block\"", "name = \"+x\"")) ==
        List{"10:8 'name' cannot be '+x': that is a direction"});
}
