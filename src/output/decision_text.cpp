#include "output/decision_text.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "output/csv_cell.hpp"
#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using decision_log::Field;
using decision_log::Row;
using Json = nlohmann::ordered_json;

std::string_view mark_of(const std::string& verdict) {
  return verdict == "GO" ? "(+)" : verdict == "NO-GO" ? "(x)" : "(?)";
}

Json heading() { return {{"format", 1}, {"program", {{"name", "firstpick"}, {"version", program_version}}}}; }
std::string written(const Json& json) {
  return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

std::string row_text(const Row& row, const TerminalStyle& style) {
  const decision_log::Decision& d = row.decision;
  std::string out = paragraph(
      fmt::format("{} {} ", padded_left(std::to_string(row.number), 5),
                  padded(fmt::format("{} {}", mark_of(d.verdict), printable(d.verdict)), 10)),
      "      ", printable(fmt::format("{} {}; {} by {}{}", d.mark, d.serial, d.decided_at, d.by,
                            d.recorded_at.empty() ? "" : "; recorded " + d.recorded_at)),
      style.width);
  if (!d.reason.empty())
    out += paragraph("      ", "      ", printable(fmt::format("{} [{}]", d.reason, d.rule)), style.width);
  if (!d.prediction.empty())
    out += paragraph("      ", "      ", printable("prediction: " + d.prediction), style.width);
  out += paragraph("      ", "      ",
                   printable("evidence: " + d.evidence + (d.report.empty() ? "" : ", report " + d.report)),
                   style.width);
  out += paragraph(
      "      ", "      ",
      printable(fmt::format("plan {} {}, rules {}, {}; hash {}", d.plan_file, d.plan_sha256.substr(0, 16),
                            d.rules, d.program, row.hash.substr(0, 16))),
      style.width);
  return out;
}

}  // namespace

std::string decisions_text(const std::vector<Row>& rows, const TerminalStyle& style) {
  std::string out;
  for (const Row& row : rows) out += row_text(row, style);
  return out + fmt::format("{} decision{}; not verified here: firstpick record verify\n", rows.size(),
                           rows.size() == 1 ? "" : "s");
}

std::string decisions_json(const std::vector<Row>& rows) {
  Json json = heading();
  json["decisions"] = Json::array();
  for (const Row& row : rows) {
    Json one = {{"number", row.number}};
    for (const Field& field : decision_log::fields) one[std::string(field.name)] = row.decision.*field.text;
    one["previous"] = row.previous;
    one["hash"] = row.hash;
    json["decisions"].push_back(std::move(one));
  }
  return written(json);
}

std::string decisions_csv(const std::vector<Row>& rows) {
  std::vector<std::string> cells = {"number"};
  for (const Field& field : decision_log::fields) cells.emplace_back(field.name);
  cells.insert(cells.end(), {"previous", "hash"});
  std::string out = csv_row(cells);
  for (const Row& row : rows) {
    cells = {std::to_string(row.number)};
    for (const Field& field : decision_log::fields) cells.push_back(row.decision.*field.text);
    cells.insert(cells.end(), {row.previous, row.hash});
    out += csv_row(cells);
  }
  return out;
}

std::string verified_text(const std::string& file, const decision_log::Verified& verified,
                          const TerminalStyle& style) {
  std::string out = !verified.problems.empty() ? "(x) CHANGED\n"
                    : verified.times.empty()   ? "(+) INTACT as far as it goes\n"
                                               : "(?) INTACT as far as it goes, with times to look at\n";
  out +=
      paragraph("    ", "    ", fmt::format("{}: {} decisions", printable(file), verified.rows), style.width);
  out +=
      paragraph("    ", "    ", printable("hash of the last one, to be kept elsewhere: " + verified.head), style.width);
  for (const auto& problem : verified.problems)
    out += paragraph("  x ", "    ",
                     printable(problem.number == 0 ? problem.what
                                                   : fmt::format("row {}: {}", problem.number, problem.what)),
                     style.width);
  for (const auto& odd : verified.times)
    out += paragraph("  ? ", "    ", printable(fmt::format("row {}: {}", odd.number, odd.what)), style.width);
  if (verified.beside)
    out += paragraph("    ", "    ", fmt::format("the hash beside the record is that of row {}", *verified.beside),
                     style.width);
  if (verified.kept_head)
    out +=
        paragraph("    ", "    ",
                  fmt::format("the hash that was kept is that of row {}", *verified.kept_head), style.width);
  else
    out += paragraph(
        "  ? ", "    ",
        verified.beside ? "without a hash that was kept elsewhere (--head) rows removed at the end together with the "
                          "hash beside the record cannot be told"
                        : "without a hash that was kept (--head) it cannot be told whether rows have been removed at "
                          "the end: the one beside the record is missing",
        style.width);
  return out;
}

std::string verified_json(const std::string& file, const decision_log::Verified& verified) {
  Json json = heading();
  json["file"] = file;
  json["intact"] = verified.problems.empty();
  json["rows"] = verified.rows;
  json["head"] = verified.head;
  json["kept_head_is_row"] = verified.kept_head ? Json(*verified.kept_head) : Json(nullptr);
  json["hash_beside_is_row"] = verified.beside ? Json(*verified.beside) : Json(nullptr);
  json["times"] = Json::array();
  for (const auto& odd : verified.times) json["times"].push_back({{"row", odd.number}, {"what", odd.what}});
  json["problems"] = Json::array();
  for (const auto& problem : verified.problems)
    json["problems"].push_back(
        {{"row", problem.number == 0 ? Json(nullptr) : Json(problem.number)}, {"what", problem.what}});
  return written(json);
}

}  // namespace firstpick::output
