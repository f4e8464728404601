#include "unit/tables/written_tables.hpp"

#include <catch2/catch.hpp>

#include <stdlib.h>  // mkdtemp

#include <algorithm>
#include <fstream>
#include <iterator>

namespace firstpick::tables {
namespace fs = std::filesystem;

WrittenTables::WrittenTables() {
  std::string pattern = (fs::temp_directory_path() / "firstpick-tables-XXXXXX").string();
  REQUIRE(mkdtemp(pattern.data()) != nullptr);
  root_ = pattern;
  fs::copy("tables", directory(), fs::copy_options::recursive);
}

WrittenTables::~WrittenTables() {
  std::error_code ignored;
  fs::remove_all(root_, ignored);
}

fs::path WrittenTables::path_of(const std::string& name) const {
  return name.starts_with("plant/") ? root_ / name : directory() / name;
}

void WrittenTables::write(const std::string& name, const std::string& text) const {
  fs::create_directories(path_of(name).parent_path());
  std::ofstream file(path_of(name), std::ios::binary);
  file << text;
  REQUIRE(file.good());
}

std::string WrittenTables::text_of(const std::string& name) const {
  std::ifstream file(path_of(name), std::ios::binary);
  REQUIRE(file.good());
  return {std::istreambuf_iterator<char>(file), {}};
}

void WrittenTables::remove(const std::string& name) const { REQUIRE(fs::remove(path_of(name))); }

void WrittenTables::replace(const std::string& name, const std::string& from, const std::string& to) const {
  std::string text = text_of(name);
  const std::size_t at = text.find(from);
  CAPTURE(name, from);
  REQUIRE(at != std::string::npos);
  REQUIRE(text.find(from, at + 1) == std::string::npos);
  write(name, text.replace(at, from.size(), to));
}

std::variant<Tables, std::vector<Diagnostic>> WrittenTables::read() const {
  return read_tables(directory(), fs::exists(plant()) ? plant() : fs::path{});
}

Tables WrittenTables::good() const {
  auto read_result = read();
  if (const auto* found = std::get_if<std::vector<Diagnostic>>(&read_result))
    for (const Diagnostic& fault : *found) FAIL_CHECK(show(fault));
  REQUIRE(std::holds_alternative<Tables>(read_result));
  return std::get<Tables>(std::move(read_result));
}

std::vector<std::string> WrittenTables::faults() const {
  const auto result = read();
  REQUIRE(std::holds_alternative<std::vector<Diagnostic>>(result));
  std::vector<std::string> all;
  for (const Diagnostic& fault : std::get<std::vector<Diagnostic>>(result)) {
    const bool of_plant = fault.file.starts_with(plant().generic_string());
    std::string line =
        fs::path(fault.file).lexically_relative(of_plant ? root_ : directory()).generic_string();
    if (fault.place.line > 0)
      line += ":" + std::to_string(fault.place.line) + ":" + std::to_string(fault.place.column);
    line += ": " + fault.what;
    if (!fault.help.empty()) line += " (" + fault.help + ")";
    all.push_back(line);
  }
  return all;
}

std::string WrittenTables::place(const std::string& name, const std::string& text) const {
  const std::string whole = text_of(name);
  const std::size_t at = whole.find(text);
  CAPTURE(name, text);
  REQUIRE(at != std::string::npos);
  const std::string before = whole.substr(0, at);
  const auto line = std::count(before.begin(), before.end(), '\n') + 1;
  const std::size_t last_break = before.rfind('\n');
  const std::size_t column = last_break == std::string::npos ? at + 1 : at - last_break;
  return name + ":" + std::to_string(line) + ":" + std::to_string(column);
}

}  // namespace firstpick::tables
