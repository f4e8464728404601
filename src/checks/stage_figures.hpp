// What a calculation sheet draws of one stage beside its numbers: breakout bodies on their faces, the tension over the
// piece in the situation that governs its cracking, the pulls over the angle of a turn. Drawn, never judged.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::checks {

// One face with inserts, seen from outside; of level faces x of the piece goes right, of others its z goes up.
struct BreakoutFace {
  struct Body {
    std::string insert;
    plan::PlanarPoint at;
    Length half_side{};
    piece::Outline covered;            // what of the face the body of this insert takes
    std::vector<std::vector<plan::PlanarPoint>> reached;  // of that, what counts: without what lies behind an opening
  };
  std::string side;                    // "top", "bottom", "side that looks towards +x": in words
  piece::Outline outline;
  std::vector<Body> bodies;
  std::vector<std::pair<std::string, Area>> areas;  // "A1, A2" and their A_Nc, overlaps once
};

// Of a panel, in x and y of the piece as cast.
struct TensionMap {
  struct Cell {
    plan::PlanarPoint middle;
    Stress bottom{}, top{};            // largest principal tension at that face; negative: compression only
  };
  piece::Outline outline;
  Length side{};                       // of a cell
  std::vector<Cell> cells;             // none at the picks, where the rule reads strips instead
  std::vector<plan::PlanarPoint> picks;
};

// Of a piece taken as a line.
struct TensionLine {
  struct Section {
    Length at{};
    Stress bottom{}, top{};            // tension positive
  };
  std::string axis;                    // "x", "y"
  std::vector<Section> sections;       // two at one place where it jumps
};

struct TensionPicture {
  std::string situation;
  bool turned = false;                 // while it is turned or after: a map of the bending alone
  std::optional<Stress> allowed;       // before it cracks, over the factor
  std::optional<TensionMap> map;
  std::optional<TensionLine> line;
};

struct TurnAt {
  Angle angle{};
  Force main{}, tail{}, edge{};        // each as the method has it
};

struct StageFigures {
  std::vector<BreakoutFace> breakouts;
  std::optional<TensionPicture> tension;
  std::vector<TurnAt> turn;            // rising angles; empty: no turn, or not assessed
};

// One for each stage of the report, which is of this plan under these rules.
std::vector<StageFigures> stage_figures(const plan::Plan& plan, const piece::Body& body, const Report& report,
                                        const tables::RuleSet& rules, const tables::Tables& tables);

}  // namespace firstpick::checks
