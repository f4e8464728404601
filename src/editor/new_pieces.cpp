#include "editor/new_pieces.hpp"

namespace firstpick::editor {
namespace {

std::vector<NewPiece> round_pieces() {
  const std::vector<Written> barrel_picks = {
      {"at", R"(["675 mm", "0 mm", "1400 mm"])", R"(["27 in", "0 in", "56 in"])"},
      {"at", R"(["-337.5 mm", "584.567 mm", "1400 mm"])", R"(["-13.5 in", "23.383 in", "56 in"])"},
      {"at", R"(["-337.5 mm", "-584.567 mm", "1400 mm"])", R"(["-13.5 in", "-23.383 in", "56 in"])"}};
  const std::vector<Written> ring_picks = {
      {"at", R"(["675 mm", "0 mm", "900 mm"])", R"(["27 in", "0 in", "36 in"])"},
      {"at", R"(["-337.5 mm", "584.567 mm", "900 mm"])", R"(["-13.5 in", "23.383 in", "36 in"])"},
      {"at", R"(["-337.5 mm", "-584.567 mm", "900 mm"])", R"(["-13.5 in", "-23.383 in", "36 in"])"}};
  const std::vector<Written> lid_picks = {
      {"at", R"(["-600 mm", "0 mm", "200 mm"])", R"(["-24 in", "0 in", "8 in"])"},
      {"at", R"(["300 mm", "519.615 mm", "200 mm"])", R"(["12 in", "20.785 in", "8 in"])"},
      {"at", R"(["300 mm", "-519.615 mm", "200 mm"])", R"(["12 in", "-20.785 in", "8 in"])"}};
  const Written centre = {"at", R"(["0 mm", "0 mm", "0 mm"])", R"(["0 in", "0 in", "0 in"])"};
  return {
      {.name = "manhole-base",
       .what = "round base with a floor and two pipe openings",
       .mark = "MB-000",
       .cast = "It stands upright as cast: z up, the axis of the barrel is x = y = 0.",
       .solids = {{{"name", "\"barrel\""},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"1500 mm\"", "\"60 in\""},
                   {"length", "\"1400 mm\"", "\"56 in\""},
                   centre},
                  {{"name", "\"bore\""},
                   {"cut", "true"},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"1200 mm\"", "\"48 in\""},
                   {"length", "\"1250 mm\"", "\"50 in\""},
                   {"at", R"(["0 mm", "0 mm", "150 mm"])", R"(["0 in", "0 in", "6 in"])"}},
                  {{"name", "\"inlet\""},
                   {"cut", "true"},
                   {"shape", "\"cylinder\""},
                   {"axis", "\"x\""},
                   {"diameter", "\"450 mm\"", "\"18 in\""},
                   {"length", "\"800 mm\"", "\"32 in\""},
                   {"at", R"(["0 mm", "0 mm", "500 mm"])", R"(["0 in", "0 in", "20 in"])"}},
                  {{"name", "\"outlet\""},
                   {"cut", "true"},
                   {"shape", "\"cylinder\""},
                   {"axis", "\"y\""},
                   {"diameter", "\"450 mm\"", "\"18 in\""},
                   {"length", "\"800 mm\"", "\"32 in\""},
                   {"at", R"(["0 mm", "-800 mm", "420 mm"])", R"(["0 in", "-32 in", "17 in"])"}}},
       .contact = {"faces", R"(["bore", "-z"])"},
       .picks = barrel_picks,
       .leg = {"length", "\"2.0 m\"", "\"7 ft\""}},
      {.name = "riser",
       .what = "round ring without a floor",
       .mark = "MR-000",
       .cast = "It stands upright as cast: z up, the axis of the ring is x = y = 0.",
       .solids = {{{"name", "\"ring\""},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"1500 mm\"", "\"60 in\""},
                   {"length", "\"900 mm\"", "\"36 in\""},
                   centre},
                  {{"name", "\"bore\""},
                   {"cut", "true"},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"1200 mm\"", "\"48 in\""},
                   {"length", "\"900 mm\"", "\"36 in\""},
                   centre}},
       .contact = {"faces", R"(["bore", "-z"])"},
       .picks = ring_picks,
       .leg = {"length", "\"2.0 m\"", "\"7 ft\""}},
      {.name = "lid",
       .what = "round flat slab with an access hole off the middle",
       .mark = "LD-000",
       .cast = "It lies flat as cast: z up, the middle of the slab is x = y = 0.",
       .solids = {{{"name", "\"slab\""},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"1500 mm\"", "\"60 in\""},
                   {"length", "\"200 mm\"", "\"8 in\""},
                   centre},
                  {{"name", "\"hole\""},
                   {"cut", "true"},
                   {"shape", "\"cylinder\""},
                   {"diameter", "\"600 mm\"", "\"24 in\""},
                   {"length", "\"200 mm\"", "\"8 in\""},
                   {"at", R"(["300 mm", "0 mm", "0 mm"])", R"(["12 in", "0 in", "0 in"])"}}},
       .contact = {"faces", R"(["hole", "-z"])"},
       .picks = lid_picks,
       .leg = {"length", "\"1.8 m\"", "\"6 ft\""}},
  };
}

std::vector<NewPiece> boxes() {
  const Written corner = {"at", R"(["0 mm", "0 mm", "0 mm"])", R"(["0 in", "0 in", "0 in"])"};
  return {
      {.name = "box-culvert",
       .what = "section of a box culvert",
       .mark = "BC-000",
       .cast = "It stands as it will lie in the ground: x across, y along the barrel, z up.",
       .solids = {{{"name", "\"outer\""},
                   {"shape", "\"box\""},
                   {"size", R"(["2400 mm", "1800 mm", "1900 mm"])", R"(["8 ft", "6 ft", "6 ft"])"},
                   corner},
                  {{"name", "\"barrel\""},
                   {"cut", "true"},
                   {"shape", "\"box\""},
                   {"size", R"(["2000 mm", "1800 mm", "1500 mm"])", R"(["6 ft 8 in", "6 ft", "4 ft 8 in"])"},
                   {"at", R"(["200 mm", "0 mm", "200 mm"])", R"(["8 in", "0 in", "8 in"])"}}},
       .contact = {"faces", R"(["barrel", "-x", "+x"])"},
       .picks = {{"at", R"(["450 mm", "400 mm", "1900 mm"])", R"(["18 in", "16 in", "6 ft"])"},
                 {"at", R"(["1950 mm", "400 mm", "1900 mm"])", R"(["6 ft 6 in", "16 in", "6 ft"])"},
                 {"at", R"(["1950 mm", "1400 mm", "1900 mm"])", R"(["6 ft 6 in", "56 in", "6 ft"])"},
                 {"at", R"(["450 mm", "1400 mm", "1900 mm"])", R"(["18 in", "56 in", "6 ft"])"}},
       .leg = {"length", "\"2.4 m\"", "\"8 ft\""}},
      {.name = "vault",
       .what = "open box with a floor",
       .mark = "VT-000",
       .cast = "It stands open end up: x along, y across, z up.",
       .solids = {{{"name", "\"outer\""},
                   {"shape", "\"box\""},
                   {"size", R"(["2400 mm", "1500 mm", "1200 mm"])", R"(["8 ft", "5 ft", "4 ft"])"},
                   corner},
                  {{"name", "\"cavity\""},
                   {"cut", "true"},
                   {"shape", "\"box\""},
                   {"size", R"(["2100 mm", "1200 mm", "1050 mm"])", R"(["7 ft", "4 ft", "3 ft 6 in"])"},
                   {"at", R"(["150 mm", "150 mm", "150 mm"])", R"(["6 in", "6 in", "6 in"])"}}},
       .contact = {"faces", R"(["cavity", "-z"])"},
       .picks = {{"at", R"(["75 mm", "375 mm", "1200 mm"])", R"(["3 in", "15 in", "4 ft"])"},
                 {"at", R"(["2325 mm", "375 mm", "1200 mm"])", R"(["7 ft 9 in", "15 in", "4 ft"])"},
                 {"at", R"(["2325 mm", "1125 mm", "1200 mm"])", R"(["7 ft 9 in", "45 in", "4 ft"])"},
                 {"at", R"(["75 mm", "1125 mm", "1200 mm"])", R"(["3 in", "45 in", "4 ft"])"}},
       .leg = {"length", "\"2.4 m\"", "\"8 ft\""}},
      {.name = "wall-panel",
       .what = "flat panel with a window, cast and stripped lying",
       .mark = "WP-000",
       .cast = "It lies flat on its bed: x along, y across, z up. For turning it upright: docs/plan-file.md, "
               "[stage.turn].",
       .solids = {{{"name", "\"panel\""},
                   {"shape", "\"box\""},
                   {"size", R"(["4000 mm", "2400 mm", "150 mm"])", R"(["13 ft", "8 ft", "6 in"])"},
                   corner},
                  {{"name", "\"window\""},
                   {"cut", "true"},
                   {"shape", "\"box\""},
                   {"size", R"(["1200 mm", "1100 mm", "150 mm"])", R"(["4 ft", "3 ft 8 in", "6 in"])"},
                   {"at", R"(["1400 mm", "650 mm", "0 mm"])", R"(["4 ft 6 in", "2 ft 2 in", "0 in"])"}}},
       .contact = {"faces", R"(["-z", "window"])"},
       .picks = {{"at", R"(["830 mm", "500 mm", "150 mm"])", R"(["2 ft 8 in", "1 ft 8 in", "6 in"])"},
                 {"at", R"(["3170 mm", "500 mm", "150 mm"])", R"(["10 ft 4 in", "1 ft 8 in", "6 in"])"},
                 {"at", R"(["3170 mm", "1900 mm", "150 mm"])", R"(["10 ft 4 in", "6 ft 4 in", "6 in"])"},
                 {"at", R"(["830 mm", "1900 mm", "150 mm"])", R"(["2 ft 8 in", "6 ft 4 in", "6 in"])"}},
       .leg = {"length", "\"2.9 m\"", "\"10 ft\""},
       .headed = true},
  };
}

std::vector<NewPiece> long_pieces() {
  const Written corner = {"at", R"(["0 mm", "0 mm", "0 mm"])", R"(["0 in", "0 in", "0 in"])"};
  return {
      {.name = "stair",
       .what = "flight of four risers, cast on its side",
       .mark = "ST-000",
       .cast = "It lies on its side: x along the flight, y up the steps, z up as cast.",
       .solids =
           {{{"name", "\"flight\""},
             {"shape", "\"prism\""},
             {"axis", "\"z\""},
             {"length", "\"1200 mm\"", "\"4 ft\""},
             corner,
             {"outline",
              R"([["0 mm", "-175 mm"], ["1120 mm", "525 mm"], ["1120 mm", "700 mm"], ["840 mm", "700 mm"],
           ["840 mm", "525 mm"], ["560 mm", "525 mm"], ["560 mm", "350 mm"], ["280 mm", "350 mm"],
           ["280 mm", "175 mm"], ["0 mm", "175 mm"]])",
              R"([["0 in", "-7 in"], ["44 in", "21 in"], ["44 in", "28 in"], ["33 in", "28 in"],
           ["33 in", "21 in"], ["22 in", "21 in"], ["22 in", "14 in"], ["11 in", "14 in"],
           ["11 in", "7 in"], ["0 in", "7 in"]])"}}},
       .contact = {"faces", R"("-z")"},
       .picks = {{"at", R"(["320 mm", "160 mm", "1200 mm"])", R"(["12.5 in", "6.5 in", "4 ft"])"},
                 {"at", R"(["800 mm", "450 mm", "1200 mm"])", R"(["31.5 in", "18 in", "4 ft"])"}},
       .leg = {"length", "\"1.5 m\"", "\"5 ft\""}},
      {.name = "beam",
       .what = "straight beam, cast upright",
       .mark = "BM-000",
       .cast = "It lies in its form as it will in the building: x along, y across, z up.",
       .solids = {{{"name", "\"beam\""},
                   {"shape", "\"box\""},
                   {"size", R"(["6000 mm", "300 mm", "400 mm"])", R"(["20 ft", "12 in", "16 in"])"},
                   corner}},
       .contact = {"faces", R"(["-z", "-y", "+y"])"},
       .picks = {{"at", R"(["1250 mm", "150 mm", "400 mm"])", R"(["4 ft 2 in", "6 in", "16 in"])"},
                 {"at", R"(["4750 mm", "150 mm", "400 mm"])", R"(["15 ft 10 in", "6 in", "16 in"])"}},
       .leg = {"length", "\"3.5 m\"", "\"12 ft\""}},
      {.name = "barrier",
       .what = "length of a traffic barrier, cast upright",
       .mark = "TB-000",
       .cast = "It stands as it will on the road: x along, y across, z up.",
       .solids = {{{"name", "\"barrier\""},
                   {"shape", "\"prism\""},
                   {"axis", "\"x\""},
                   {"length", "\"3000 mm\"", "\"10 ft\""},
                   corner,
                   {"outline",
                    R"([["0 mm", "0 mm"], ["600 mm", "0 mm"], ["400 mm", "800 mm"], ["200 mm", "800 mm"]])",
                    R"([["0 in", "0 in"], ["24 in", "0 in"], ["16 in", "32 in"], ["8 in", "32 in"]])"}}},
       .contact = {"all_but", R"(["+z"])"},
       .picks = {{"at", R"(["750 mm", "300 mm", "800 mm"])", R"(["2 ft 6 in", "12 in", "32 in"])"},
                 {"at", R"(["2250 mm", "300 mm", "800 mm"])", R"(["7 ft 6 in", "12 in", "32 in"])"}},
       .leg = {"length", "\"1.8 m\"", "\"6 ft\""}},
  };
}

}  // namespace

std::span<const NewPiece> new_pieces() {
  static const std::vector<NewPiece> all = [] {
    std::vector<NewPiece> list = round_pieces();
    for (NewPiece& each : boxes()) list.push_back(std::move(each));
    for (NewPiece& each : long_pieces()) list.push_back(std::move(each));
    return list;
  }();
  return all;
}

}  // namespace firstpick::editor
