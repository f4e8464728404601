#include "whole_file.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

namespace firstpick {

namespace fs = std::filesystem;

std::optional<std::string> whole_file(const std::string& path) {
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return {};
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  if (!in || !(text << in.rdbuf() || fs::file_size(path, error) == 0)) return {};
  return std::move(text).str();
}

bool replace_file(const std::string& path, const std::string& text) {
  const std::string beside = path + ".part";
  {
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    if (!out) return false;
  }
  std::error_code error;
  fs::rename(beside, path, error);
  if (error) fs::remove(beside, error);
  return !error;
}

}  // namespace firstpick
