#include "decision_log/head_beside.hpp"

#include <unistd.h>

#include <filesystem>
#include <fstream>

#include <fmt/format.h>

namespace firstpick::decision_log {

namespace fs = std::filesystem;

std::string head_file_of(const std::string& record) { return record + ".head"; }

bool keep_head(const std::string& record, const Row& last) {
  const std::string file = head_file_of(record), part = fmt::format("{}.{}", file, ::getpid());
  {
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    out << last.hash << '\n';
    out.close();
    if (!out) return false;
  }
  std::error_code error;
  fs::rename(part, file, error);
  if (error) fs::remove(part, error);
  return !error;
}

std::optional<std::string> kept_head(const std::string& record) {
  std::error_code error;
  if (fs::symlink_status(head_file_of(record), error).type() == fs::file_type::not_found) return {};
  std::ifstream in(head_file_of(record), std::ios::binary);
  std::string hash;
  std::getline(in, hash);
  return is_hash(hash) ? hash : std::string();
}

bool is_hash(const std::string& text) {
  return text.size() == no_row_before.size() && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

}  // namespace firstpick::decision_log
