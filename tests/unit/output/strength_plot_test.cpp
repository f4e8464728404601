// The picture of `firstpick strength`, and the sparkline.

#include <catch2/catch.hpp>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "output/strength_plot.hpp"
#include "output/strength_text.hpp"

using namespace firstpick;

namespace {

namespace fs = std::filesystem;

checks::StrengthReport report_with(int points) {
  checks::StrengthReport report;
  report.mark = "MADE <for> the test";
  report.fingerprint = std::string(64, '0');
  checks::MaturityPart part;
  part.sensor = "corner";
  part.law = "made";
  for (int i = 0; i < points; ++i)
    part.points.push_back({static_cast<double>(i) * hour, Temperature::from_value(293.15 + i), 1.1 * i * hour,
                           i < 3 ? std::nullopt : std::optional(Stress{static_cast<double>(i) * MPa})});
  report.maturity = part;
  report.needed.push_back({.what = "the lift", .required = 6.0 * MPa, .rests_on = "", .why = "", .remedy = ""});
  return report;
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

struct Folder {
  fs::path path = fs::temp_directory_path() / ("firstpick-plot-" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
};

}  // namespace

TEST_CASE("a picture is drawn as SVG and as PNG, the same bytes each time") {
  const Folder folder;
  for (const std::string ending : {".svg", ".png"}) {
    const fs::path first = folder.path / ("a" + ending), second = folder.path / ("b" + ending);
    CHECK(output::draw_strength_plot(report_with(10), first.string()) == "");
    CHECK(output::draw_strength_plot(report_with(10), second.string()) == "");
    CHECK(bytes_of(first).size() > 1000);
    CHECK(bytes_of(first) == bytes_of(second));
    CHECK(output::draw_strength_plot(report_with(9), second.string()) == "");
    CHECK(bytes_of(first) != bytes_of(second));
  }
  CHECK(bytes_of(folder.path / "a.png").substr(1, 3) == "PNG");
  CHECK(bytes_of(folder.path / "a.svg").find("<svg") != std::string::npos);
}

TEST_CASE("what cannot be drawn or written is told, never silent") {
  const Folder folder;
  CHECK(output::draw_strength_plot(report_with(10), (folder.path / "a.pdf").string()) ==
        "the picture must end in .svg or .png");
  CHECK(output::draw_strength_plot(report_with(1), (folder.path / "a.png").string()) ==
        "there is no temperature log with two readings after the pour: nothing to draw");
  CHECK(output::draw_strength_plot({}, (folder.path / "a.png").string()).starts_with("there is no temperature log"));
  for (const std::string ending : {".svg", ".png"})
    CHECK(output::draw_strength_plot(report_with(10), (folder.path / "none" / ("a" + ending)).string()) ==
          "the picture cannot be written");
}

TEST_CASE("the sparkline rises with its values, is as wide as it may be, and has a bar where what is needed is reached") {
  const std::vector<double> values = {0, 1, 2, 3, 4, 5, 6, 7};
  CHECK(output::sparkline_of(values, 0, 7, 8) == "▁▂▃▄▅▆▇█");
  CHECK(output::sparkline_of(values, 0, 7, 2) == "▁█");
  CHECK(output::sparkline_of({1}, 0, 7, 8).empty());
  CHECK(output::sparkline_of({1, 1}, 1, 1, 8) == "▁▁");
  CHECK(output::sparkline_of(values, 0, 7, 8, 5.0) == "▁▂▃▄▅|▆▇█");
  CHECK(output::sparkline_of(values, 0, 14, 8, 14.0) == "▁▁▂▂▃▃▄▅");
}

TEST_CASE("at the terminal temperature, equivalent age and estimate have a line each, with what is needed") {
  checks::StrengthReport report = report_with(8);
  for (std::size_t i = 0; i < report.maturity->points.size(); ++i)
    report.maturity->points[i].strength = 2.0 * static_cast<double>(i) * MPa;
  report.needed = {{.what = "the lift", .required = 20.0 * MPa}};
  CHECK_THAT(output::strength_text(report, {}, true), Catch::Contains("  temperature     ") &&
                                                          Catch::Contains("  equivalent age  0 ") &&
                                                          Catch::Contains("needed 20.0 MPa, not there"));
  report.needed[0].required = 10.0 * MPa;
  CHECK_THAT(output::strength_text(report, {}, true), Catch::Contains("▁▂▃▄▅|▆▇█") && Catch::Contains("from the bar on"));
}

TEST_CASE("a sparkline only for a reader at the terminal, no colour unless asked, names of strangers are escaped") {
  checks::StrengthReport report = report_with(8);
  report.mark = "B-1\x1b[31m";
  const std::string plain = output::strength_text(report, {}, false), lively = output::strength_text(report, {}, true);
  CHECK(plain.find("▁") == std::string::npos);
  CHECK(lively.find("▁") != std::string::npos);
  CHECK(plain.find('\x1b') == std::string::npos);
  CHECK(output::strength_text(report, {.colour = true}, false).find("\x1b[1;33m(?) HOLD") == 0);
}
