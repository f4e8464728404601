#include "plan/shift_file.hpp"

#include <fmt/format.h>

#include "plan/contradictions.hpp"
#include "plan/fields.hpp"
#include "plan/values.hpp"

namespace firstpick::plan {
namespace {

constexpr long long longest_shift_s = 24 * 3600;  // a longer one is a wrong date
const Duration stale_unless_stated = 5.0 * minute;
const Duration stale_at_most = 1.0 * hour;  // nobody lifts by a page of an hour ago

const Section& of_shift_file(std::string_view path) { return section(path, shift_file_sections()); }

std::optional<clock::Zone> read_zone(Fields& in, Reading& reading) {
  const std::string name = in.line("zone");
  if (name.empty()) return {};
  if (auto zone = clock::zone_named(name)) return zone;
  const std::vector<std::string> names = clock::zone_names();
  reading.faults.at(in.where("zone"), fmt::format("there is no zone {}", in_quotes(name)),
                    names.empty()
                        ? "this system has no zone database (package tzdata): write an offset, \"-05:00\""
                        : suggestion(name, {names.begin(), names.end()}));
  return {};
}

Timestamp read_moment_in(Fields& in, std::string_view key, const std::optional<clock::Zone>& zone,
                         Reading& reading) {
  std::optional<Timestamp> moment = in.moment(key);
  if (!moment || !zone) return {};
  if (moment->has_offset) {
    const int offset_s = clock::offset_in_seconds(*zone, moment->seconds);
    if (offset_s != moment->offset_seconds)
      reading.faults.at(in.where(key),
                        fmt::format("'{}': the clock of {} is not at this offset then", key, zone->name),
                        fmt::format("its offset then is {}", clock::words_for_offset(offset_s)));
  } else if (const auto fault = put_into_zone(*moment, *zone)) {
    reading.faults.at(in.where(key), fmt::format("'{}': {}", key, fault->what), fault->help);
  }
  return *moment;
}

ShiftPiece read_piece_line(const toml::table& table, const std::optional<clock::Zone>& zone, Reading& reading) {
  Fields in(table, of_shift_file("piece"), reading);
  ShiftPiece piece{.plan = in.line("plan"),
                   .pour = in.line("pour"),
                   .count = in.whole("count").value_or(0),
                   .form = in.line("form"),
                   .priority = in.whole("priority"),
                   .place = in.place()};
  for (Placed<std::string>& serial : in.names("serials")) piece.serials.push_back(std::move(serial.value));
  if (in.has("cast")) piece.cast = read_moment_in(in, "cast", zone, reading);
  if (in.has("serials") == in.has("count"))
    reading.faults.at(
        in.where(),
        in.has("count") ? "[[piece]] has 'serials' and 'count'" : "[[piece]] needs 'serials' or 'count'",
        "serials = [\"MB-0211\", \"MB-0212\"], or count = 2 where they have no serials");
  if (!piece.serials.empty()) piece.count = static_cast<long long>(piece.serials.size());
  return piece;
}

void check_length(const Shift& shift, Fields& in, Reading& reading) {
  const long long length_s = shift.ends.seconds - shift.starts.seconds;
  if (length_s <= 0)
    reading.faults.at(in.where("ends"), "the shift ends before it starts");
  else if (length_s > longest_shift_s)
    reading.faults.at(in.where("ends"), "the shift is longer than a day");
}

Shift read_shift(const std::string& file, const toml::table& table, Reading& reading) {
  Fields in(table, of_shift_file(""), reading);
  Shift shift{.file = file};
  in.format("format");
  shift.plant = in.line("plant");
  const auto zone = read_zone(in, reading);
  if (zone) shift.zone = *zone;
  shift.starts = read_moment_in(in, "starts", zone, reading);
  shift.ends = read_moment_in(in, "ends", zone, reading);
  if (reading.faults.none()) check_length(shift, in, reading);
  shift.stale_after = in.quantity<Duration>("stale_after").value_or(stale_unless_stated);
  if (shift.stale_after > stale_at_most)
    reading.faults.at(in.where("stale_after"), "'stale_after' is more than an hour", "for example: stale_after = \"10 min\"");
  for (const toml::table* each : in.each("piece")) shift.pieces.push_back(read_piece_line(*each, zone, reading));
  return shift;
}

}  // namespace

std::variant<Shift, std::vector<Diagnostic>> read_shift_file(const std::string& file, std::string_view text,
                                                             const tables::Tables& tables) {
  const auto parsed = tables::parse_toml(file, text);
  if (const auto* fault = std::get_if<Diagnostic>(&parsed)) return std::vector{*fault};
  const auto& table = std::get<toml::table>(parsed);
  Faults faults(file, text);
  Reading reading{.faults = faults, .tables = tables, .sections = shift_file_sections()};
  Shift shift = read_shift(file, table, reading);
  reading.names.report(faults);
  // Pieces are cast at many times, each put into the zone already: only starts and ends are held to each other.
  std::erase_if(reading.moments, [](const Moment& moment) { return moment.key == "cast"; });
  check_moments(reading);
  if (!faults.none()) return faults.in_order_of_place();
  return shift;
}

}  // namespace firstpick::plan
