#include "plan/sign_off.hpp"

#include <fmt/format.h>

#include "plan/fields.hpp"

namespace firstpick::plan {

namespace {

constexpr std::size_t hash_digits = 64;

std::string hash(Fields& in, std::string_view key, Reading& reading) {
  std::string text = in.line(key);
  if (!text.empty() &&
      (text.size() != hash_digits || text.find_first_not_of("0123456789abcdef") != std::string::npos))
    reading.faults.at(in.where(key), fmt::format("'{}' is not a SHA-256 of 64 hexadecimal digits", key),
                      "sign again: firstpick sign PLAN --engineer \"...\"");
  return text;
}

std::string in_toml(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

}  // namespace

const SectionList& sign_off_sections() {
  static const SectionList all = {
      {.path = "",
       .required = true,
       .doc = "One signature under one plan.",
       .keys = {{.name = "format", .kind = Kind::format, .required = true, .doc = "of this file", .example = "1"},
                {.name = "engineer", .kind = Kind::name, .required = true, .doc = "who signed",
                 .example = "\"R. Example\""},
                {.name = "signed", .kind = Kind::moment, .required = true, .doc = "when",
                 .example = "2026-03-02T08:00:00Z"},
                {.name = "verdict", .kind = Kind::name, .required = true,
                 .doc = "on that day: GO, HOLD or NO-GO; a signature does not change it", .example = "\"GO\""},
                {.name = "rules", .kind = Kind::name, .required = true, .doc = "rule set", .example = "\"us\""},
                {.name = "program", .kind = Kind::name, .required = true, .doc = "version of firstpick",
                 .example = "\"0.1.0\""},
                {.name = "plan", .kind = Kind::name, .required = true, .doc = "SHA-256 of the plan",
                 .example = "\"5f...\""},
                {.name = "tables", .kind = Kind::name, .required = true, .doc = "SHA-256 of the tables",
                 .example = "\"77...\""},
                {.name = "fingerprint", .kind = Kind::name, .required = true,
                 .doc = "of plan, tables, rule set and program together", .example = "\"ca82...\""},
                {.name = "seal", .kind = Kind::name, .required = true,
                 .doc = "SHA-256 of everything above: who signed, when and as what", .example = "\"3b0f...\""}},
       .called = "the sign-off"}};
  return all;
}

std::variant<SignOff, std::vector<Diagnostic>> read_sign_off(const std::string& file, std::string_view text,
                                                             const tables::Tables& tables) {
  const auto parsed = tables::parse_toml(file, text);
  if (const auto* fault = std::get_if<Diagnostic>(&parsed)) return std::vector{*fault};
  Faults faults(file, text);
  Reading reading{.faults = faults, .tables = tables, .sections = sign_off_sections()};
  Fields in(std::get<toml::table>(parsed), section("", sign_off_sections()), reading);
  SignOff sign_off;
  in.format("format");
  sign_off.engineer = in.line("engineer");
  if (const auto at = in.moment("signed")) {
    sign_off.signed_at = *at;
    if (!at->has_offset)
      faults.at(in.where("signed"), "'signed' has no offset from UTC", "signed = 2026-03-02T08:00:00Z");
  }
  sign_off.verdict = in.line("verdict");
  if (!sign_off.verdict.empty() && sign_off.verdict != "GO" && sign_off.verdict != "HOLD" &&
      sign_off.verdict != "NO-GO")
    faults.at(in.where("verdict"), fmt::format("{} is no verdict", in_quotes(sign_off.verdict)),
              "\"GO\", \"HOLD\" or \"NO-GO\"");
  sign_off.rules = in.line("rules");
  sign_off.program = in.line("program");
  sign_off.plan = hash(in, "plan", reading);
  sign_off.tables = hash(in, "tables", reading);
  sign_off.fingerprint = hash(in, "fingerprint", reading);
  sign_off.seal = hash(in, "seal", reading);
  if (!faults.none()) return faults.in_order_of_place();
  return sign_off;
}

std::string text_of(const SignOff& s) {
  std::string out = "# Written by firstpick sign. Any change of the plan, the tables or the program asks for a new one.\n";
  out += "format = 1\n";
  out += fmt::format("engineer = {}\nsigned = {}\nverdict = {}\n", in_toml(s.engineer), s.signed_at.text,
                     in_toml(s.verdict));
  out += fmt::format("rules = {}\nprogram = {}\n", in_toml(s.rules), in_toml(s.program));
  return out + fmt::format("plan = {}\ntables = {}\nfingerprint = {}\nseal = {}\n", in_toml(s.plan), in_toml(s.tables),
                           in_toml(s.fingerprint), in_toml(s.seal));
}

}  // namespace firstpick::plan
