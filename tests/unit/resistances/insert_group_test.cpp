#include "resistances/insert_group.hpp"

#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

using Sets = std::vector<std::vector<std::size_t>>;
const tables::HeadedInsertModel model = hand_made_headed_model();

HeadedFace inserts_at(const std::vector<std::pair<double, double>>& places_in) {
  HeadedFace face = wide_face();
  for (const auto& [x, y] : places_in) face.add("A", x * inch, y * inch);
  return face;
}

const EdgeRow* row_towards(const std::vector<EdgeRow>& rows, const Direction& towards) {
  for (const EdgeRow& row : rows)
    if (norm(row.towards - towards) < 1e-9) return &row;
  return nullptr;
}

}  // namespace

TEST_CASE("inserts nearer than 3 h_ef are one group, directly or over others") {
  CHECK(breakout_groups(inserts_at({{0, 0}, {17, 0}, {34, 0}, {60, 0}}).outcomes(), model) ==
        Sets{{0, 1, 2}, {3}});
  CHECK(breakout_groups(inserts_at({{0, 0}, {100, 0}, {10, 0}}).outcomes(), model) == Sets{{0, 2}, {1}});
}

TEST_CASE("on the diagonal the squares meet beyond 3 h_ef from centre to centre") {
  CHECK(breakout_groups(inserts_at({{0, 0}, {17, 17}}).outcomes(), model) == Sets{{0, 1}});
  CHECK(breakout_groups(inserts_at({{0, 0}, {17, 19}}).outcomes(), model) == Sets{{0}, {1}});
}

TEST_CASE("inserts of another face and inserts that are not assessed are in no group with these") {
  HeadedFace face = inserts_at({{0, 0}, {10, 0}, {20, 0}});
  face.sites[1].face = 4;
  auto outcomes = face.outcomes();
  CHECK(breakout_groups(outcomes, model) == Sets{{0}, {1}, {2}});
  outcomes[2] = NotAssessed{"no head", {}};
  CHECK(breakout_groups(outcomes, model) == Sets{{0}, {1}});
  CHECK(breakout_groups({}, model).empty());
}

TEST_CASE("a shear row has neighbours nearer than 3 c_a1, for the edge it faces") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 2000.0 * inch, 2000.0 * inch));
  for (const double x : {900.0, 929.0, 970.0}) face.add("A", x * inch, 10.0 * inch);  // 3 c_a1 = 30 in
  const auto rows = shear_rows(face.outcomes(), model);
  const EdgeRow* near = row_towards(rows, {0.0, -1.0, 0.0});
  REQUIRE(near != nullptr);
  CHECK(near->inserts == std::vector<std::size_t>{0, 1});
  const EdgeRow* far = row_towards(rows, {0.0, 1.0, 0.0});  // c_a1 1990 in
  REQUIRE(far != nullptr);
  CHECK(far->inserts == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("an insert close behind another belongs to its row, one far behind does not") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 2000.0 * inch, 2000.0 * inch));
  face.add("front", 1000.0 * inch, 10.0 * inch);
  face.add("behind", 1000.0 * inch, 35.0 * inch);
  face.add("far behind", 1000.0 * inch, 500.0 * inch);
  const auto rows = shear_rows(face.outcomes(), model);
  const EdgeRow* near = row_towards(rows, {0.0, -1.0, 0.0});
  REQUIRE(near != nullptr);
  CHECK(near->inserts == std::vector<std::size_t>{0, 1});
}

TEST_CASE("rows are found whichever way the axes of each insert point, each direction once") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 2000.0 * inch, 2000.0 * inch));
  face.add("A", 1000.0 * inch, 10.0 * inch, 6.0 * inch, -90.0 * deg);
  face.add("B", 1020.0 * inch, 10.0 * inch, 6.0 * inch, 180.0 * deg);
  const auto rows = shear_rows(face.outcomes(), model);
  CHECK(rows.size() == 4);
  for (const EdgeRow& row : rows) CHECK(row.inserts == std::vector<std::size_t>{0, 1});
}

TEST_CASE("a blowout row needs deep inserts: h_ef > 2.5 c_a1, neighbours nearer than 6 c_a1") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 2000.0 * inch, 2000.0 * inch));
  for (const double x : {900.0, 917.0, 936.0})
    face.add("A", x * inch, 3.0 * inch, 8.0 * inch);  // 6 c_a1 = 18 in
  const auto rows = blowout_rows(face.outcomes(), model);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].towards.y == Approx(-1.0));
  CHECK(rows[0].inserts == std::vector<std::size_t>{0, 1});
  for (HeadedInsert& insert : face.inserts) insert.h_ef = 7.4 * inch;
  CHECK(blowout_rows(face.outcomes(), model).empty());
}

TEST_CASE("an insert alone in its face makes no row") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 20.0 * inch, 20.0 * inch));
  face.add("A", 3.0 * inch, 3.0 * inch, 18.0 * inch);
  CHECK(shear_rows(face.outcomes(), model).empty());
  CHECK(blowout_rows(face.outcomes(), model).empty());
}

TEST_CASE("the squares of two inserts meet in the axes of either of them") {
  // 3 h_ef is 18 in. 20 in apart along x: not in axes along x, but at 45 deg 14.1 in both ways.
  for (const bool first : {true, false}) {
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch, 6.0 * inch, (first ? 45.0 : 0.0) * deg);
    face.add("B", 20.0 * inch, 0.0 * inch, 6.0 * inch, (first ? 0.0 : 45.0) * deg);
    CHECK(breakout_groups(face.outcomes(), model) == Sets{{0, 1}});
  }
  CHECK(breakout_groups(inserts_at({{0, 0}, {20, 0}}).outcomes(), model) == Sets{{0}, {1}});
  CHECK(breakout_groups(inserts_at({{0, 0}, {0, 20}}).outcomes(), model) == Sets{{0}, {1}});
}

TEST_CASE("an insert whose edge is not known in a direction stands in no row of that direction") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 2000.0 * inch, 2000.0 * inch));
  face.add("A", 900.0 * inch, 10.0 * inch, 6.0 * inch, 30.0 * deg);
  face.add("B", 912.0 * inch, 10.0 * inch);
  const Direction aslant{cosine(30.0 * deg), sine(30.0 * deg), 0.0}, down{0.0, -1.0, 0.0};
  CHECK(row_towards(shear_rows(face.outcomes(), model), -1.0 * aslant) != nullptr);
  CHECK(row_towards(shear_rows(face.outcomes(), model), down) != nullptr);
  face.sites[1].outline.outer.clear();  // its own four directions are known already
  CHECK(row_towards(shear_rows(face.outcomes(), model), -1.0 * aslant) == nullptr);
  CHECK(row_towards(shear_rows(face.outcomes(), model), down) != nullptr);
}
