// What the calculation sheet says, before it is written as HTML or Markdown.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "card/page.hpp"
#include "checks/report.hpp"
#include "checks/stage_figures.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/trace.hpp"

namespace firstpick::sheet {

struct Figure {
  std::string caption;
  card::Page page;
  std::string in_words;                         // for who does not see it
};

struct Section {
  std::string title;
  std::vector<std::string> texts;               // paragraphs
  std::vector<std::string> items;               // a list below them
  std::vector<std::vector<std::string>> table;  // first row: heads of the columns
  std::vector<Figure> figures;
  std::vector<Step> steps;
};

struct Sheet {
  std::string title, verdict;
  std::string head, foot;            // on every printed page: which piece; fingerprint
  UnitSystem units = UnitSystem::si; // of the plan
  std::vector<std::string> heading;  // lines below the title
  std::vector<Section> sections;
};

// With `all` every section of the calculation; else of each rule the insert that it is worst for, and the sheet tells
// how many sections it leaves out. `drawn`: of each stage what is drawn beside the numbers; none: only the layouts.
Sheet sheet_of(const plan::Plan& plan, const piece::Body& body, const checks::Report& report, bool all,
               const std::vector<checks::StageFigures>& drawn = {});

}  // namespace firstpick::sheet
