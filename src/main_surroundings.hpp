// What main.cpp and its commands take from around the program: options, environment, terminal, files, tables.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "checks/verdict.hpp"
#include "tables/tables.hpp"

namespace firstpick {

struct Options {
  std::vector<std::string> plans;
  std::string rules, tables, plant, color = "auto", filter, now, picture, html, record, by, head, stage, paper = "a4";
  bool json = false, csv = false, all = false, steps = false, unconfirmed = false, watch = false, replace = false;
};

bool wants_colour(const Options& options);
std::size_t terminal_width();
std::filesystem::path tables_directory(const Options& options);
std::filesystem::path plant_directory(const Options& options);  // empty: the plant has no tables of its own

// The whole file, or nothing and the reason on stderr.
std::optional<std::string> contents(const std::string& file);
// Or nothing, and every fault on stderr.
std::optional<tables::Tables> read_all_tables(const Options& options);

inline constexpr int exit_go = 0, exit_no_go = 1, exit_wrong_input = 2, exit_hold = 3;
int exit_status(checks::Verdict verdict);

}  // namespace firstpick
