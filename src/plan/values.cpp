#include "plan/values.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include <fmt/format.h>

#include "plan/words.hpp"
#include "record/utf8.hpp"
#include "units/parse.hpp"

namespace firstpick::plan {
namespace {

// Written so that a NaN is outside.
std::string_view outside(Limit limit, double si) {
  switch (limit) {
    case Limit::none: return std::isfinite(si) ? "" : "must be finite";
    case Limit::more_than_zero: return si > 0.0 ? "" : "must be more than zero";
    case Limit::not_negative: return si >= 0.0 ? "" : "must not be negative";
    case Limit::below_100_percent: return si >= 0.0 && si < 1.0 ? "" : "must be from 0 % to less than 100 %";
    case Limit::at_least_one: return si >= 1.0 ? "" : "must be at least 1";
    case Limit::factor_of_safety: return si >= 1.0 && si <= 12.0 ? "" : "must be from 1 to 12, as a factor of safety is";
    case Limit::friction: return si > 0.0 && si <= 1.0 ? "" : "must be above 0 and at most 1, as a coefficient of friction is";
    case Limit::up_to_90_deg:
      return si >= 0.0 && si <= (90.0 * deg).value() ? "" : "must be from 0 to 90 deg";
    case Limit::up_to_180_deg:
      return si >= 0.0 && si <= (180.0 * deg).value() ? "" : "must be from 0 to 180 deg";
  }
  return "must be finite";
}

std::optional<double> within_limit(double si, const toml::node& node, const Key& key, Faults& faults) {
  const std::string_view fault = std::isfinite(si) ? outside(key.limit, si) : "must be finite";
  if (fault.empty()) return si;
  faults.at(node.source(), fmt::format("'{}' {}", key.name, fault));
  return {};
}

struct HostileCharacter {
  std::size_t at;
  char32_t code;
};
std::optional<HostileCharacter> hostile_character(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    if (!character.valid || is_unprintable(character.code)) return HostileCharacter{at, character.code};
    at += character.length;
  }
  return {};
}

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); at += utf8_at(text, at).length) ++count;
  return count;
}

// A path that a plan of a stranger may name: below the plan's own folder, on every system.
std::string_view refused_path(std::string_view path) {
  if (path.starts_with('/') || path.starts_with('~')) return "must not be absolute";
  if (path.find('\\') != std::string_view::npos) return "is written with '/' between folders, not '\\'";
  if (path.find(':') != std::string_view::npos) return "must not name a drive or a stream";
  for (std::size_t from = 0; from <= path.size();) {
    const std::size_t to = std::min(path.find('/', from), path.size());
    if (path.substr(from, to - from) == "..") return "must not leave the plan's folder";
    from = to + 1;
  }
  return {};
}

std::string_view fault_of_line(std::string_view line, Kind kind) {
  if (kind == Kind::text) return {};
  if (line.empty()) return "is empty";
  if (line.starts_with(' ') || line.ends_with(' ')) return "begins or ends with a space";
  return kind == Kind::path ? refused_path(line) : std::string_view{};
}

}  // namespace

std::string_view noun_for(Kind kind) {
  switch (kind) {
    case Kind::length: return "a length with its unit";
    case Kind::area: return "an area with its unit";
    case Kind::force: return "a force or weight with its unit";
    case Kind::stress: return "a stress with its unit";
    case Kind::density: return "a density with its unit";
    case Kind::angle: return "an angle with its unit";
    case Kind::speed: return "a speed with its unit";
    case Kind::duration: return "a duration with its unit";
    case Kind::temperature: return "a temperature with its unit";
    case Kind::share: return "a share with its %";
    case Kind::number: return "a plain number";
    case Kind::format: return "a whole number";
    case Kind::whole: return "a whole number";
    case Kind::name: return "a name in quotes";
    case Kind::text: return "a text in quotes";
    case Kind::word: return "a word in quotes";
    case Kind::specimen: return "a specimen in quotes";
    case Kind::path: return "a file name in quotes";
    case Kind::yes_no: return "true or false, without quotes";
    case Kind::moment: return "a date and time, without quotes";
    case Kind::date: return "a date, without quotes";
  }
  return "";
}

std::string example_of(const Key& key) { return fmt::format("for example: {} = {}", key.name, key.example); }

void report_wrong_type(const toml::node& node, const Key& key, std::string_view needed, Faults& faults) {
  faults.at(node.source(), fmt::format("'{}' needs {}; given: {}", key.name, needed, given(node)),
            example_of(key));
}

const toml::value<std::string>* read_string(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<std::string>* text = node.as_string();
  if (!text) {
    report_wrong_type(node, key, noun_for(key.kind), faults);
    return nullptr;
  }
  if (const auto hostile = hostile_character(text->get())) {
    const auto code = static_cast<std::uint32_t>(hostile->code);
    faults.inside(*text, hostile->at,
                  fmt::format("'{}' has the character U+{:04X}, which cannot be seen", key.name, code),
                  "write one line of visible text");
    return nullptr;
  }
  if (characters(text->get()) > longest_line) {
    faults.at(node.source(), fmt::format("'{}' has more than {} characters", key.name, longest_line));
    return nullptr;
  }
  return text;
}

std::optional<double> read_in_si(const toml::node& node, const Key& key, Faults& faults) {
  if (key.kind == Kind::number && node.is_number()) {
    const toml::value<std::int64_t>* whole = node.as_integer();
    return within_limit(whole ? static_cast<double>(whole->get()) : node.as_floating_point()->get(), node,
                        key, faults);
  }
  const toml::value<std::string>* text = read_string(node, key, faults);
  if (!text) return {};
  const auto read = parse_in_si(text->get(), dimension_for(key.kind));
  if (const auto* fault = std::get_if<QuantityFault>(&read)) {
    faults.inside(*text, fault->at, fmt::format("'{}': {}", key.name, fault->what),
                  fault->help.empty() ? example_of(key) : fault->help);
    return {};
  }
  return within_limit(std::get<double>(read), node, key, faults);
}

std::optional<long long> read_format(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<std::int64_t>* number = node.as_integer();
  if (!number) {
    report_wrong_type(node, key, noun_for(key.kind), faults);
    return {};
  }
  if (number->get() == format_read) return number->get();
  faults.at(node.source(), fmt::format("this program reads plans of format {}", format_read));
  return {};
}

std::optional<long long> read_whole(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<std::int64_t>* number = node.as_integer();
  if (!number) {
    report_wrong_type(node, key, noun_for(key.kind), faults);
    return {};
  }
  if (number->get() >= 1 && number->get() <= largest_whole) return number->get();
  faults.at(node.source(), fmt::format("'{}' must be from 1 to {}", key.name, largest_whole));
  return {};
}

std::optional<bool> read_yes_no(const toml::node& node, const Key& key, Faults& faults) {
  if (const toml::value<bool>* yes = node.as_boolean()) return yes->get();
  report_wrong_type(node, key, noun_for(key.kind), faults);
  return {};
}

std::optional<Timestamp> read_moment(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<toml::date_time>* value = node.as_date_time();
  if (!value) {
    report_wrong_type(node, key, noun_for(key.kind), faults);
    return {};
  }
  const toml::date_time& when = value->get();
  const std::chrono::sys_days day =
      std::chrono::year_month_day{std::chrono::year{when.date.year}, std::chrono::month{when.date.month},
                                  std::chrono::day{when.date.day}};
  Timestamp moment;
  moment.seconds = day.time_since_epoch() / std::chrono::seconds{1} + when.time.hour * 3600LL +
                   when.time.minute * 60LL + when.time.second;
  moment.text = fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", when.date.year, when.date.month, when.date.day,
                            when.time.hour, when.time.minute);
  if (when.time.second != 0) moment.text += fmt::format(":{:02}", when.time.second);
  if (when.offset) {
    const int minutes = when.offset->minutes;
    moment.has_offset = true;
    moment.offset_seconds = minutes * 60LL;
    moment.seconds -= moment.offset_seconds;
    moment.text += fmt::format(" {}{:02}:{:02}", minutes < 0 ? '-' : '+', std::abs(minutes) / 60,
                               std::abs(minutes) % 60);
  }
  return moment;
}

std::optional<Day> read_date(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<toml::date>* value = node.as_date();
  if (!value) {
    report_wrong_type(node, key, noun_for(key.kind), faults);
    return {};
  }
  const toml::date& date = value->get();
  const std::chrono::sys_days day = std::chrono::year_month_day{
      std::chrono::year{date.year}, std::chrono::month{date.month}, std::chrono::day{date.day}};
  return Day{day.time_since_epoch().count(), fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day)};
}

std::optional<std::string> read_line(const toml::node& node, const Key& key, Faults& faults) {
  const toml::value<std::string>* text = read_string(node, key, faults);
  if (!text) return {};
  if (const std::string_view fault = fault_of_line(text->get(), key.kind); !fault.empty()) {
    faults.at(node.source(), fmt::format("'{}' {}", key.name, fault), example_of(key));
    return {};
  }
  return text->get();
}

std::optional<std::string> read_word(const toml::node& node, const Key& key, const tables::Tables& tables,
                                     Faults& faults) {
  const std::vector<std::string_view> words = words_of(key.words, tables);
  const toml::value<std::string>* text = read_string(node, key, faults);
  if (!text) return {};
  for (const std::string_view word : words)
    if (word == text->get()) return text->get();
  faults.at(node.source(), fmt::format("'{}' cannot be {}", key.name, in_quotes(text->get())),
            suggestion(text->get(), words));
  return {};
}

}  // namespace firstpick::plan
