// Solids from STEP and STL files. The STEP files beside this test hold a slab of 1000 x 800 x 200 mm with a
// sleeve of 200 mm diameter, one in millimetres and one in inches; two boxes; and a single surface.

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <unistd.h>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

namespace fs = std::filesystem;
constexpr double pi = 3.14159265358979323846;

struct Corner {
  float x, y, z;
};
using Facet = std::array<Corner, 3>;
using Facets = std::vector<Facet>;

Facets block(Corner low, Corner high, bool inward = false) {
  const auto at_corner = [&](int i) {
    return Corner{(i & 1) != 0 ? high.x : low.x, (i & 2) != 0 ? high.y : low.y,
                  (i & 4) != 0 ? high.z : low.z};
  };
  Facets facets;
  for (const auto& [a, b, c, d] : {std::array{0, 2, 3, 1}, std::array{4, 5, 7, 6}, std::array{0, 1, 5, 4},
                                   std::array{2, 6, 7, 3}, std::array{0, 4, 6, 2}, std::array{1, 3, 7, 5}}) {
    facets.push_back({at_corner(a), at_corner(b), at_corner(c)});
    facets.push_back({at_corner(a), at_corner(c), at_corner(d)});
  }
  if (inward)
    for (Facet& facet : facets) std::swap(facet[1], facet[2]);
  return facets;
}

Facets operator+(Facets a, const Facets& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

// A folder of this process, gone when the test ends.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / fmt::format("firstpick-mesh-test-{}", getpid())) {
    fs::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path_); }

  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
  }
  void write_ascii(const std::string& name, const Facets& facets) const {
    std::string text = "solid piece\n";
    for (const Facet& facet : facets) {
      text += "facet normal 0 0 0\nouter loop\n";
      for (const Corner& c : facet) text += fmt::format("vertex {} {} {}\n", c.x, c.y, c.z);
      text += "endloop\nendfacet\n";
    }
    write(name, text + "endsolid piece\n");
  }
  void write_binary(const std::string& name, const Facets& facets) const {
    std::string bytes(80, ' ');
    const auto put = [&](const auto& value) {
      bytes.append(reinterpret_cast<const char*>(&value), sizeof value);
    };
    put(static_cast<std::uint32_t>(facets.size()));
    for (const Facet& facet : facets) {
      put(Corner{0.0F, 0.0F, 0.0F});
      for (const Corner& c : facet) put(c);
      put(std::uint16_t{0});
    }
    write(name, bytes);
  }
  plan::Plan plan(const std::string& name, Length unit = mm) const {
    return plan_in(path_ / "piece.toml", name, unit);
  }

  static plan::Plan plan_in(const fs::path& plan_file, const std::string& name, Length unit = mm) {
    Solid solid;
    solid.name = "cast";
    solid.shape = Shape::mesh;
    solid.file = name;
    solid.file_unit = unit;
    plan::Plan plan = plan_of({solid});
    plan.file = plan_file.string();
    return plan;
  }

 private:
  fs::path path_;
};

plan::Plan beside_this_test(const std::string& name) {
  return Folder::plan_in("tests/unit/piece/files/piece.toml", name);
}

std::vector<std::string> only(const std::string& fault) { return {"10:1 solid 'cast': " + fault}; }

}  // namespace

TEST_CASE("STEP: volume, faces, and the unit that the file says") {
  for (const char* file : {"slab.step", "slab-inch.stp"}) {
    CAPTURE(file);
    const auto body = body_of(beside_this_test(file));
    CHECK(in(m3, body.volume) == Approx(0.16 - pi * 0.01 * 0.2).epsilon(1e-9));
    CHECK(body.faces.size() == 7);
    CHECK(in(mm, body.highest.x) == Approx(1000.0).margin(1e-5));
  }
}

TEST_CASE("a mesh is placed, turned, cut and gripped like every solid") {
  plan::Plan plan = beside_this_test("slab.step");
  plan.piece.solids[0].at = at(100, 200, 300);
  plan.piece.solids[0].turned_about = Axis::z;
  plan.piece.solids[0].turned_by = 90.0 * deg;
  plan.piece.solids.push_back(cut(box("notch", at(-700, 200, 300), at(100, 100, 200))));
  plan.piece.solids[1].place = {20, 1};
  plan.form.emplace();
  plan.form->contacts = {contact({"notch"})};
  plan.inserts = {insert("A1", at(-100, 500, 500))};
  const auto body = body_of(plan);
  CHECK(in(mm, body.lowest.x) == Approx(100.0 - 800.0).margin(1e-5));
  CHECK(in(mm, body.highest.y) == Approx(1200.0).margin(1e-5));
  CHECK(in(m3, body.volume) == Approx(0.16 - pi * 0.002 - 0.002).epsilon(1e-9));
  CHECK(in(m2, body.contacts.at(0).area) == Approx(0.04).epsilon(1e-9));
  CHECK(body.sites.at(0).outline.holes.size() == 1);
}

TEST_CASE("STEP files without exactly one solid") {
  CHECK(faults(beside_this_test("two.step")) == only("file 'two.step' holds 2 solids [one closed solid is "
                                                     "read from a file; surfaces alone are no solid]"));
  CHECK(faults(beside_this_test("surface.step")) ==
        only("file 'surface.step' holds 0 solids [one closed solid is read from a file; surfaces alone are "
             "no solid]"));
}

TEST_CASE("STL: text and binary, in the unit of the plan, facets on one plane are one face") {
  const Folder folder;
  folder.write_ascii("text.stl", block({0, 0, 0}, {120, 60, 12}));
  folder.write_binary("binary.STL", block({0, 0, 0}, {120, 60, 12}));
  for (const char* file : {"text.stl", "binary.STL"}) {
    CAPTURE(file);
    const auto body = body_of(folder.plan(file, inch));
    CHECK(in(ft3, body.volume) == Approx(10.0 * 5.0 * 1.0).epsilon(1e-9));
    CHECK(body.faces.size() == 6);
  }
}

TEST_CASE("STL: a void inside") {
  const Folder folder;
  folder.write_ascii("void.stl",
                     block({0, 0, 0}, {1000, 1000, 1000}) + block({250, 250, 250}, {750, 750, 750}, true));
  const auto body = body_of(folder.plan("void.stl"));
  CHECK(in(m3, body.volume) == Approx(1.0 - 0.125).epsilon(1e-9));
  CHECK(body.faces.size() == 12);
}

TEST_CASE("STL: a surface that is not closed is refused") {
  const Folder folder;
  Facets facets = block({0, 0, 0}, {1000, 1000, 1000});
  facets.pop_back();
  folder.write_ascii("open.stl", facets);
  const auto told = faults(folder.plan("open.stl"));
  REQUIRE(told.size() == 1);
  CHECK(told[0].find("10:1 solid 'cast': file 'open.stl' is not a closed surface: facet ") == 0);
  CHECK(told[0].find(" has no neighbour along one side") != std::string::npos);
}

TEST_CASE("STL: facets that make no solid") {
  const Folder folder;
  const Facets cube = block({0, 0, 0}, {1000, 1000, 1000});
  const std::string one_solid = " [one closed solid is read from a file, its facets facing outward]";

  folder.write_ascii("inward.stl", block({0, 0, 0}, {1000, 1000, 1000}, true));
  CHECK(faults(folder.plan("inward.stl")) ==
        only("file 'inward.stl' holds a surface that faces inward" + one_solid));

  folder.write_ascii("two.stl", cube + block({2000, 0, 0}, {3000, 1000, 1000}));
  CHECK(faults(folder.plan("two.stl")) == only("file 'two.stl' holds 2 solids" + one_solid));

  folder.write_ascii("outside.stl", cube + block({2000, 0, 0}, {2500, 500, 500}, true));
  CHECK(faults(folder.plan("outside.stl")) == only("file 'outside.stl' holds a void outside its solid"));

  folder.write_ascii("through.stl", cube + block({500, 500, 500}, {1500, 700, 700}, true));
  CHECK(faults(folder.plan("through.stl")) == only("file 'through.stl' holds a surface that crosses itself"));

  folder.write_ascii("twice.stl", cube + cube);
  CHECK(faults(folder.plan("twice.stl")) == only("file 'twice.stl' is not a closed surface: more than two "
                                                 "facets meet along one side, or facets face both ways"));

  Facets flat = cube;
  flat.push_back({Corner{0, 0, 0}, Corner{500, 0, 0}, Corner{1000, 0, 0}});
  folder.write_ascii("flat.stl", flat);
  CHECK(faults(folder.plan("flat.stl")) == only("file 'flat.stl' has no area in facet 13"));
}

TEST_CASE("files that are no mesh") {
  const Folder folder;
  folder.write("empty.stl", "");
  folder.write("noise.stl", std::string(300, '\xf0'));
  folder.write("noise.step", "ISO-10303-21;\nHEADER;\nnothing that follows is one");
  folder.write("empty.step", "");
  folder.write("piece.obj", "v 0 0 0");
  CHECK(faults(folder.plan("empty.stl")) == only("file 'empty.stl' is not an STL file that can be read"));
  CHECK(faults(folder.plan("noise.stl")) == only("file 'noise.stl' is not an STL file that can be read"));
  CHECK(faults(folder.plan("noise.step")) == only("file 'noise.step' is not a STEP file that can be read"));
  CHECK(faults(folder.plan("empty.step")) == only("file 'empty.step' is not a STEP file that can be read"));
  CHECK(faults(folder.plan("piece.obj")) == only("file 'piece.obj' is not of a kind that can be read [STEP "
                                                 "files end in .step or .stp, STL files in .stl]"));
  CHECK(faults(folder.plan("missing.stl")) == only("there is no file 'missing.stl'"));
}

TEST_CASE("a mesh lies below the folder of the plan") {
  const Folder folder;
  for (const char* file : {"../piece.stl", "/piece.stl", "parts/../../piece.stl", ""}) {
    CAPTURE(file);
    CHECK(faults(folder.plan(file)) ==
          only(fmt::format("file '{}' is not in the folder of the plan or below it", file)));
  }
}

TEST_CASE("a truncated STL file is refused") {
  const Folder folder;
  folder.write_binary("cut.stl", block({0, 0, 0}, {1000, 1000, 1000}));
  fs::resize_file(fs::path(folder.plan("").file).parent_path() / "cut.stl", 84 + 50 * 11 + 20);
  CHECK(faults(folder.plan("cut.stl")).size() == 1);
}
