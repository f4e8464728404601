#include "main_surroundings.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "version.hpp"

namespace firstpick {

namespace fs = std::filesystem;

namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

}  // namespace

bool wants_colour(const Options& options) {
  if (options.color != "auto") return options.color == "always";
  return isatty(STDOUT_FILENO) != 0 && environment("NO_COLOR").empty() && environment("TERM") != "dumb";
}

std::size_t terminal_width() {
  winsize size{};
  if (isatty(STDOUT_FILENO) == 0 || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return 80;
  return std::clamp<std::size_t>(size.ws_col, 60, 100);
}

fs::path tables_directory(const Options& options) {
  if (!options.tables.empty()) return options.tables;
  if (const std::string named = environment("FIRSTPICK_TABLES"); !named.empty()) return named;
  std::error_code ignored;
  const fs::path program = fs::read_symlink("/proc/self/exe", ignored);
  return (program.parent_path() / tables_from_program_folder).lexically_normal();
}

std::optional<std::string> contents(const std::string& file) {
  std::error_code error;
  if (fs::is_directory(file, error)) {
    std::cerr << file << ": error: this is a folder, a plan file was expected\n";
    return {};
  }
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  if (!in || !(text << in.rdbuf() || fs::file_size(file, error) == 0)) {
    std::cerr << file << ": error: the file cannot be read\n";
    return {};
  }
  return std::move(text).str();
}

fs::path plant_directory(const Options& options) {
  return options.plant.empty() ? fs::path(environment("FIRSTPICK_PLANT")) : fs::path(options.plant);
}

std::optional<tables::Tables> read_all_tables(const Options& options) {
  auto read = tables::read_tables(tables_directory(options), plant_directory(options));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault);
    return {};
  }
  return std::move(std::get<tables::Tables>(read));
}

int exit_status(checks::Verdict verdict) {
  switch (verdict) {
    case checks::Verdict::go: return exit_go;
    case checks::Verdict::hold: return exit_hold;
    case checks::Verdict::no_go: return exit_no_go;
  }
  return exit_hold;
}

}  // namespace firstpick
