#include "tables/table_file.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>
#include <utility>

#include <fmt/format.h>

namespace firstpick::tables {
namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 15> names = {
    "sources.toml", "form-faces.toml", "steels.toml",    "concretes.toml", "slings.toml",       "hoists.toml",
    "grounds.toml", "specimens.toml",  "maturity.toml", "growth-curves.toml", "acceptance.toml",
    "wind.toml",    "loops.toml",      "plates.toml",
    "legs.toml"};

Diagnostic fault_of(const fs::path& path, std::string what, std::string help = {}) {
  return {path.generic_string(), {}, std::move(what), std::move(help)};
}

bool is_hidden(const fs::path& path) { return path.filename().string().starts_with('.'); }

// Every *.toml below the directory as a name below it, "rules/us.toml".
std::vector<std::string> toml_files_below(const fs::path& directory, Faults& faults) {
  std::vector<std::string> found;
  std::error_code error;
  fs::recursive_directory_iterator entry(directory, error);
  for (; !error && entry != fs::recursive_directory_iterator{}; entry.increment(error)) {
    std::error_code ignored;
    if (is_hidden(entry->path()))
      entry.disable_recursion_pending();
    else if (entry->path().extension() == ".toml" && !entry->is_directory(ignored))
      found.push_back(entry->path().lexically_relative(directory).generic_string());
  }
  if (error)
    faults.push_back(fault_of(directory, fmt::format("the tables cannot be read: {}", error.message())));
  std::sort(found.begin(), found.end());
  return found;
}

// At most one byte more than a file may have: parse_toml() refuses it then.
std::optional<std::string> bytes_of(const fs::path& path) {
  std::error_code error;
  const std::uintmax_t size = fs::file_size(path, error);
  if (error) return {};
  std::ifstream file(path, std::ios::binary);
  if (!file) return {};
  std::string bytes(std::min<std::uintmax_t>(size, largest_toml_file + 1), '\0');
  file.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (static_cast<std::size_t>(file.gcount()) != bytes.size()) return {};
  return bytes;
}

bool is_rule_set(std::string_view name) {
  return name.starts_with("rules/") && std::count(name.begin(), name.end(), '/') == 1;
}

// What there is of the known names, in reading order.
std::vector<std::string> wanted_of(const std::vector<std::string>& found, const fs::path& directory,
                                   bool of_plant, Faults& faults) {
  std::vector<std::string> wanted;
  for (const std::string_view name : names) {
    if (std::find(found.begin(), found.end(), name) != found.end())
      wanted.emplace_back(name);
    else if (!of_plant)
      faults.push_back(fault_of(directory / name, "there is no such file"));
  }
  std::copy_if(found.begin(), found.end(), std::back_inserter(wanted), is_rule_set);
  if (!of_plant && std::none_of(found.begin(), found.end(), is_rule_set))
    faults.push_back(fault_of(directory / "rules", "there is no rule set"));
  for (const std::string& name : found)
    if (std::find(wanted.begin(), wanted.end(), name) == wanted.end())
      faults.push_back(
          fault_of(directory / name, "no table has this name",
                   suggestion(name, {names.begin(), names.end()}) + "; rule sets are rules/*.toml"));
  return wanted;
}

}  // namespace

TableFile::TableFile(std::string path, std::string name, bool of_plant, toml::table root,
                     std::string_view text)
    : path_(std::move(path)),
      name_(std::move(name)),
      of_plant_(of_plant),
      root_(std::move(root)),
      text_(std::make_unique<const std::string>(text)),
      lines_(*text_) {}

Diagnostic TableFile::fault(const toml::source_region& where, std::string what, std::string help) const {
  const Place begin = lines_.place(where.begin);
  const Place end = lines_.place(where.end);
  const bool one_line = begin.line == end.line && end.column > begin.column;
  return {path_, begin, std::move(what), std::move(help), one_line ? end.column - begin.column : 1};
}

std::vector<TableFile> read_table_files(const fs::path& directory, bool of_plant, std::string& content,
                                        Faults& faults) {
  std::error_code error;
  if (!fs::is_directory(directory, error)) {
    faults.push_back(fault_of(directory, "there is no such directory of tables"));
    return {};
  }
  std::vector<TableFile> files;
  for (const std::string& name :
       wanted_of(toml_files_below(directory, faults), directory, of_plant, faults)) {
    const std::string path = (directory / name).generic_string();
    const std::optional<std::string> text = bytes_of(path);
    if (!text) {
      faults.push_back(fault_of(path, "the file cannot be read"));
      continue;
    }
    content += fmt::format("{} {}\n", name, text->size());
    content += *text;
    auto parsed = parse_toml(path, *text);
    if (auto* fault = std::get_if<Diagnostic>(&parsed))
      faults.push_back(std::move(*fault));
    else
      files.emplace_back(path, name, of_plant, std::move(std::get<toml::table>(parsed)), *text);
  }
  return files;
}

}  // namespace firstpick::tables
