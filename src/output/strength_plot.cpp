#include "output/strength_plot.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <vector>

#include <fmt/format.h>

#include "output/plot_marks.hpp"
#include "record/diagnostic.hpp"
#include "record/program_module.hpp"

namespace firstpick::output {

namespace {

using checks::MaturityPoint;
using checks::StrengthReport;

constexpr double width = 900, height = 900, left = 90, right = 40, top = 70, panel = 200, between = 55;
constexpr double text_size = 13;

constexpr PlotInk black{0.1, 0.1, 0.1}, grey{0.8, 0.8, 0.8}, line_ink{0.0, 0.27, 0.55}, mark_ink{0.7, 0.1, 0.1};

struct Line {  // one curve, in hours and the unit of the panel
  std::vector<std::pair<double, double>> points;
};
struct Level {
  double value;
  std::string words;
};
struct Panel {
  std::string title;
  Line line;
  Line thin;                                       // what of the line counts
  std::vector<Level> levels;                       // across the panel
  std::vector<std::pair<double, double>> marks;    // companion specimens
  std::vector<std::pair<double, double>> rings;    // specimens that were broken for the lift
  bool from_zero = false;
};

// A step of 1, 2 or 5 times a power of ten, at most `most` of them in `range`.
double step_for(double range, double most) {
  if (!(range > 0.0) || !std::isfinite(range)) return 1.0;
  const double power = std::pow(10.0, std::floor(std::log10(range / most)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (range / (factor * power) <= most) return factor * power;
  return 10.0 * power;
}

class Drawing {
 public:
  Plot plot;

  enum class Align { at_left, centred, at_right };
  void words(double x, double y, const std::string& text, Align align, PlotInk ink = black) {
    plot.marks.push_back({PlotMark::Kind::words, ink, {{x, y}}, 0.0, false, text,
                          align == Align::at_left ? 0.0 : align == Align::centred ? 0.5 : 1.0});
  }
  void stroke(const std::vector<std::pair<double, double>>& points, PlotInk ink, double thick, bool dashed = false) {
    if (points.size() > 1) plot.marks.push_back({PlotMark::Kind::stroke, ink, points, thick, dashed, {}, 0.0});
  }
  void ring(double x, double y) { plot.marks.push_back({PlotMark::Kind::ring, mark_ink, {{x, y}}, 2.0, false, {}, 0.0}); }
  void cross(double x, double y) {
    stroke({{x - 5, y - 5}, {x + 5, y + 5}}, mark_ink, 2);
    stroke({{x - 5, y + 5}, {x + 5, y - 5}}, mark_ink, 2);
  }
};

void draw(Drawing& drawing, const Panel& of, double y0, double hours) {
  double low = of.from_zero || of.line.points.empty() ? 0.0 : of.line.points.front().second, high = low;
  const auto widen = [&](double v) { low = std::min(low, v), high = std::max(high, v); };
  for (const auto& [t, v] : of.line.points) widen(v);
  for (const auto& [t, v] : of.marks) widen(v);
  for (const auto& [t, v] : of.rings) widen(v);
  for (const Level& level : of.levels) widen(level.value);
  if (!of.levels.empty()) high += 0.12 * (high - low);  // room for the words of a level, below the title
  if (!(high > low)) high = low + 1.0;
  const double step = step_for(high - low, 5.0);
  low = std::floor(low / step) * step;
  high = std::ceil(high / step) * step;
  const double wide = width - left - right;
  const auto x = [&](double t) { return left + wide * t / hours; };
  const auto y = [&](double v) { return y0 + panel * (high - v) / (high - low); };

  drawing.words(left, y0 - 10, of.title, Drawing::Align::at_left);
  for (int i = 0; low + i * step <= high + step / 2; ++i) {
    const double v = low + i * step;
    drawing.stroke({{left, y(v)}, {left + wide, y(v)}}, grey, 1);
    drawing.words(left - 8, y(v) + 4, fmt::format("{:g}", v), Drawing::Align::at_right);
  }
  const double hour_step = step_for(hours, 8.0);
  for (int i = 0; i * hour_step <= hours * (1 + 1e-9); ++i) {
    const double t = i * hour_step;
    drawing.stroke({{x(t), y0}, {x(t), y0 + panel}}, grey, 1);
    drawing.words(x(t), y0 + panel + 18, fmt::format("{:g} h", t), Drawing::Align::centred);
  }
  for (const Level& level : of.levels) {
    drawing.stroke({{left, y(level.value)}, {left + wide, y(level.value)}}, mark_ink, 1.5, true);
    drawing.words(left + 6, y(level.value) - 5, level.words, Drawing::Align::at_left, mark_ink);
  }
  std::vector<std::pair<double, double>> path;
  for (const auto& [t, v] : of.line.points) path.emplace_back(x(t), y(v));
  drawing.stroke(path, line_ink, 2);
  path.clear();
  for (const auto& [t, v] : of.thin.points) path.emplace_back(x(t), y(v));
  drawing.stroke(path, line_ink, 1, true);
  for (const auto& [t, v] : of.marks) drawing.cross(x(t), y(v));
  for (const auto& [t, v] : of.rings) drawing.ring(x(t), y(v));
}

Panel temperature_panel(const StrengthReport& report) {
  Panel panel_of{.title = fmt::format("Temperature of the concrete, {}, sensor {}",
                                      report.units == UnitSystem::us ? "degF" : "degC",
                                      printable(report.maturity->sensor))};
  for (const MaturityPoint& p : report.maturity->points)
    panel_of.line.points.emplace_back(in(hour, p.since_cast), in_print_unit(p.temperature, report.units).value);
  return panel_of;
}

Panel age_panel(const StrengthReport& report) {
  Panel panel_of{.title = "Equivalent age, h (" + report.maturity->law + ")"};
  panel_of.from_zero = true;
  for (const MaturityPoint& p : report.maturity->points)
    panel_of.line.points.emplace_back(in(hour, p.since_cast), in(hour, p.equivalent_age));
  return panel_of;
}

Panel strength_panel(const StrengthReport& report) {
  const Stress unit = report.units == UnitSystem::us ? psi : MPa;
  Panel panel_of{.title = fmt::format("Strength, {}: {}", report.units == UnitSystem::us ? "psi" : "MPa",
                                      report.calibration ? "an estimate" : "no calibration, no estimate")};
  panel_of.from_zero = true;
  for (const auto& companion : report.maturity->companions)
    if (const auto* check = std::get_if<strength::CompanionCheck>(&companion))
      panel_of.marks.emplace_back(in(hour, check->since_cast), in(unit, check->measured));
  if (report.broken && report.broken->since_cast)
    for (const Stress& result : report.broken->as_cylinders)
      panel_of.rings.emplace_back(in(hour, *report.broken->since_cast), in(unit, result));
  if (!panel_of.marks.empty()) panel_of.title += "; crosses: companions";
  if (!panel_of.rings.empty()) panel_of.title += "; rings: specimens";
  if (!panel_of.marks.empty() || !panel_of.rings.empty()) panel_of.title += ", as cylinders";
  if (report.maturity->credited && report.maturity->estimate) {
    const Stress margin = *report.maturity->estimate - *report.maturity->credited;
    panel_of.title += "; dashed: less its margin, what counts";
    for (const MaturityPoint& p : report.maturity->points)
      if (p.strength && *p.strength > margin)
        panel_of.thin.points.emplace_back(in(hour, p.since_cast), in(unit, *p.strength - margin));
  }
  for (const MaturityPoint& p : report.maturity->points)
    if (p.strength) panel_of.line.points.emplace_back(in(hour, p.since_cast), in(unit, *p.strength));
  for (const checks::StrengthNeeded& each : report.needed)
    if (each.required)
      panel_of.levels.push_back({in(unit, *each.required),
                                 fmt::format("needed for {}: {}", printable(each.what),
                                             print(*each.required, report.units, Rounding::up))});
  return panel_of;
}

void draw_all(Drawing& drawing, const StrengthReport& report) {
  const Duration tested = report.broken ? report.broken->since_cast.value_or(Duration{}) : Duration{};
  const double hours = std::max(in(hour, std::max(report.maturity->points.back().since_cast, tested)), 1e-3);
  const std::string name = report.mark.empty() ? report.file : report.mark;
  drawing.words(left, 25, printable(name) + ": strength " + std::string(checks::strength_word_for(report.verdict)),
                Drawing::Align::at_left);
  drawing.words(left, 43, "Estimate from temperature, to the last reading. No verdict on a lift.",
                Drawing::Align::at_left);
  double y0 = top + 15;
  for (const Panel& each : {temperature_panel(report), age_panel(report), strength_panel(report)}) {
    draw(drawing, each, y0, hours);
    y0 += panel + between;
  }
  drawing.words(left, y0 + 5, fmt::format("Time since the pour. Rules {}; fingerprint {}", printable(report.rules),
                                          report.fingerprint.substr(0, 16)),
                Drawing::Align::at_left);
}

bool write(const std::string& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary);
  out << bytes;
  out.close();
  return out.good();
}

}  // namespace

std::string draw_strength_plot(const StrengthReport& report, const std::string& path) {
  const bool svg = path.ends_with(".svg");
  if (!svg && !path.ends_with(".png")) return "the picture must end in .svg or .png";
  if (!report.maturity || report.maturity->points.size() < 2)
    return "there is no temperature log with two readings after the pour: nothing to draw";
  static const auto paint = reinterpret_cast<PaintPlot>(pictures_function(paint_plot_function));
  Drawing drawing;
  drawing.plot.width = width, drawing.plot.height = height, drawing.plot.text_size = text_size;
  draw_all(drawing, report);
  std::string bytes;
  if (!paint(drawing.plot, svg, bytes)) return "the picture could not be drawn";
  return write(path, bytes) ? "" : "the picture cannot be written";
}

}  // namespace firstpick::output
