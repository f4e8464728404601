#include "plan/rewrite_picks.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "tables/toml_file.hpp"

namespace firstpick::plan {

namespace {

constexpr int sixteenths = 16;

// The letters of the last unit of a quantity: "in" of "8 ft 4 in".
std::string_view last_unit(std::string_view text) {
  const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  std::size_t end = text.size();
  while (end > 0 && !is_letter(text[end - 1])) --end;
  std::size_t first = end;
  while (first > 0 && is_letter(text[first - 1])) --first;
  return text.substr(first, end - first);
}

std::size_t decimals_of(std::string_view text) {
  const std::size_t point = text.find('.');
  if (point == std::string_view::npos) return 0;
  std::size_t end = point + 1;
  while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
  return end - point - 1;
}

// As many decimals as `like` has, and more where the number needs them, to `most`.
std::string decimal(double number, std::size_t least, std::size_t most) {
  std::string text = fmt::format("{:.{}f}", number, most);
  const std::size_t point = text.find('.');
  if (point == std::string::npos) return text;
  while (text.back() == '0' && text.size() - point - 1 > least) text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string inches(double number) {
  const long long all = std::llround(std::abs(number) * sixteenths);
  long long whole = all / sixteenths, top = all % sixteenths, bottom = sixteenths;
  while (top != 0 && top % 2 == 0) top /= 2, bottom /= 2;
  const std::string sign = number < 0.0 && all != 0 ? "-" : "";
  if (top == 0) return fmt::format("{}{} in", sign, whole);
  if (whole == 0) return fmt::format("{}{}/{} in", sign, top, bottom);
  return fmt::format("{}{} {}/{} in", sign, whole, top, bottom);
}

struct Edit {
  std::size_t from = 0, to = 0;  // bytes of the text
  std::string text;
};

class Rewriting {
 public:
  Rewriting(const std::string& file, std::string_view text) : file_(file), text_(text), lines_(text) {
    starts_.push_back(0);
    for (std::size_t i = 0; i < text.size(); ++i)
      if (text[i] == '\n') starts_.push_back(i + 1);
  }

  void replace(const toml::node* node, Length length) {
    const auto* value = node ? node->as_string() : nullptr;
    if (!value) return refuse({}, "a length that is to be changed is not written as a string");
    const auto& source = value->source();
    const std::size_t from = offset(source.begin), to = offset(source.end);
    const std::string_view written = from < to && to <= text_.size() ? text_.substr(from, to - from) : "";
    const bool plain = written.size() >= 3 && (written.front() == '"' || written.front() == '\'') &&
                       written.back() == written.front() && written.substr(1, written.size() - 2) == value->get();
    if (!plain)
      return refuse(lines_.place(source.begin), "this length is to be changed, but is not written as one plain string");
    const std::string quote(1, written.front());
    edits_.push_back({from, to, quote + written_like(value->get(), length) + quote});
  }

  std::variant<std::string, Diagnostic> result() {
    if (fault_) return *fault_;
    std::ranges::sort(edits_, {}, &Edit::from);
    std::string made;
    std::size_t at = 0;
    for (const Edit& edit : edits_) {
      made += text_.substr(at, edit.from - at);
      made += edit.text;
      at = edit.to;
    }
    made += text_.substr(at);
    return made;
  }

 private:
  std::size_t offset(const toml::source_position& position) const {
    const Place place = lines_.place(position);
    if (place.line == 0 || place.line > starts_.size()) return text_.size() + 1;
    return starts_[place.line - 1] + place.column - 1;
  }
  void refuse(Place place, std::string what) {
    if (!fault_) fault_ = Diagnostic{.file = file_, .place = place, .what = std::move(what), .help = "write it as \"1.25 m\""};
  }

  std::string file_;
  std::string_view text_;
  tables::Lines lines_;
  std::vector<std::size_t> starts_;
  std::vector<Edit> edits_;
  std::optional<Diagnostic> fault_;
};

const toml::node* at(const toml::node* node, std::string_view key) {
  return node && node->as_table() ? node->as_table()->get(key) : nullptr;
}
const toml::node* at(const toml::node* node, std::size_t index) {
  return node && node->as_array() ? node->as_array()->get(index) : nullptr;
}

}  // namespace

std::string written_like(std::string_view like, Length length) {
  const std::string_view unit = last_unit(like);
  if (like.find("ft") != std::string_view::npos)
    return print(length, UnitSystem::us);
  if (unit == "in" || unit == "inch" || unit == "inches") return inches(length / inch);
  const std::size_t decimals = decimals_of(like);
  if (unit == "m") return decimal(in(m, length), std::min<std::size_t>(decimals, 3), 3) + " m";
  if (unit == "cm") return decimal(100.0 * in(m, length), std::min<std::size_t>(decimals, 1), 1) + " cm";
  return decimal(1000.0 * in(m, length), 0, 0) + " mm";
}

std::variant<std::string, Diagnostic> with_picks_of(const std::string& file, std::string_view text, const Plan& before,
                                                    const Plan& after) {
  const auto parsed = tables::parse_toml(file, text);
  if (const auto* fault = std::get_if<Diagnostic>(&parsed)) return *fault;
  const toml::node* top = &std::get<toml::table>(parsed);
  Rewriting rewriting(file, text);
  for (std::size_t i = 0; i < before.inserts.size(); ++i) {
    const toml::node* place = at(at(at(top, "insert"), i), "at");
    const Position &was = before.inserts[i].at, &is = after.inserts.at(i).at;
    if (is.x != was.x) rewriting.replace(at(place, std::size_t{0}), is.x);
    if (is.y != was.y) rewriting.replace(at(place, std::size_t{1}), is.y);
    if (is.z != was.z) rewriting.replace(at(place, std::size_t{2}), is.z);
  }
  for (std::size_t r = 0; r < before.riggings.size(); ++r)
    for (std::size_t leg = 0; leg < before.riggings[r].legs.size(); ++leg) {
      const auto &was = before.riggings[r].legs[leg].length, &is = after.riggings.at(r).legs.at(leg).length;
      if (is && was != is) rewriting.replace(at(at(at(at(at(top, "rigging"), r), "legs"), leg), "length"), *is);
    }
  return rewriting.result();
}

}  // namespace firstpick::plan
