#include "board_pipeline.hpp"

#include <filesystem>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "board/crane_order.hpp"
#include "board/judge_piece.hpp"
#include "checks/standing_texts.hpp"
#include "fingerprint.hpp"
#include "pipeline.hpp"
#include "plan/shift_file.hpp"
#include "strength_pipeline.hpp"

namespace firstpick {

namespace {

namespace fs = std::filesystem;

std::string in_folder_of(const std::string& file, const std::string& path) {
  return (fs::path(file).parent_path() / path).generic_string();
}

std::string first_of(const std::vector<Diagnostic>& faults) {
  const Diagnostic& first = faults.front();
  std::string text = first.file;
  if (first.place.line > 0) text += fmt::format(":{}:{}", first.place.line, first.place.column);
  return text + ": " + first.what;
}

struct Fault {
  std::string text;
};

struct KnownPlan {
  std::string text;
  PreparedPlan prepared;
  std::optional<SignOffText> sign_off;
  checks::KnownBending bending{};
};

struct KnownPour {
  checks::StrengthQuestion question;
  std::string texts;  // of the pour and of what it names, for the fingerprints
};

// What has been read and judged already, each once however often the shift file names it.
class Shelf {
 public:
  Shelf(const BoardQuestion& question, const tables::Tables& tables, const ReadFile& read_file)
      : question_(question), tables_(tables), read_file_(read_file) {}

  std::variant<KnownPlan, Fault>& plan(const std::string& path) {
    const auto known = plans_.find(path);
    return known != plans_.end() ? known->second : plans_.emplace(path, read_plan(path)).first->second;
  }
  const std::variant<KnownPour, Fault>& pour(const std::string& path) {
    const auto known = pours_.find(path);
    return known != pours_.end() ? known->second : pours_.emplace(path, read_pour(path)).first->second;
  }

  std::optional<std::string> read(const std::string& path) {
    if (std::ranges::find(inputs, path) == inputs.end()) inputs.push_back(path);
    return read_file_(path);
  }

  std::vector<std::string> inputs;

 private:
  std::variant<KnownPlan, Fault> read_plan(const std::string& path) {
    auto text = read(path);
    if (!text) return Fault{path + ": the file cannot be read"};
    auto prepared = prepare_plan(path, *text, question_.rules, tables_);
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&prepared)) return Fault{first_of(*faults)};
    return KnownPlan{std::move(*text), std::move(std::get<PreparedPlan>(prepared)), sign_off_of(path)};
  }

  // A sign-off that is there and cannot be read is told, never taken for none.
  std::optional<SignOffText> sign_off_of(const std::string& path) {
    const std::string file = sign_off_file_of(path);
    std::error_code error;
    if (fs::symlink_status(file, error).type() == fs::file_type::not_found) return {};
    return SignOffText{file, read(file)};
  }

  std::variant<KnownPour, Fault> read_pour(const std::string& path) {
    const auto text = read(path);
    if (!text) return Fault{path + ": the file cannot be read"};
    if (plan::is_plan(*text)) return Fault{path + ": this is a plan, a strength file was expected"};
    auto asked = read_strength_question(path, *text, question_.rules, tables_, [&](const std::string& named) {
      return read(in_folder_of(path, named));
    });
    if (!asked.faults.empty()) return Fault{first_of(asked.faults)};
    KnownPour pour{std::move(asked.question), {}};
    for (const NamedText& each : asked.texts) pour.texts += each.text + '\0';
    return pour;
  }

  const BoardQuestion& question_;
  const tables::Tables& tables_;
  const ReadFile& read_file_;
  std::map<std::string, std::variant<KnownPlan, Fault>> plans_;
  std::map<std::string, std::variant<KnownPour, Fault>> pours_;
};

struct LineAnswer {
  std::string mark, title, revision;
  UnitSystem units = UnitSystem::si;
  board::Judged judged;
  board::RestsOn rests_on;
  std::vector<Source> unconfirmed;
  std::vector<std::string> choices, cautions;
};

struct Named {
  std::string plan, pour;  // paths; pour may be empty
  std::optional<plan::Timestamp> cast;
};

LineAnswer answer_line(const Named& named, const plan::Shift& shift, const plan::Timestamp& now, Shelf& shelf,
                       const tables::Tables& tables) {
  const auto& [plan_path, pour_path, cast] = named;
  LineAnswer line;
  auto& plan_known = shelf.plan(plan_path);
  const std::variant<KnownPour, Fault>* pour_known = pour_path.empty() ? nullptr : &shelf.pour(pour_path);
  if (const auto* plan = std::get_if<KnownPlan>(&plan_known)) {
    line.mark = plan->prepared.plan.piece.mark;
    line.title = plan->prepared.plan.piece.title;
    line.revision = plan->prepared.plan.piece.revision;
    line.units = plan->prepared.plan.piece.units;
    line.rests_on.plan = sha256_of({plan->text});
    line.rests_on.rules = plan->prepared.rules.id;
  }
  const Fault* fault = std::get_if<Fault>(&plan_known);
  if (!fault && pour_known) fault = std::get_if<Fault>(pour_known);
  if (fault) {
    line.judged = board::not_checked(fault->text);
    return line;
  }
  auto& plan = std::get<KnownPlan>(plan_known);
  const KnownPour* pour = pour_known ? &std::get<KnownPour>(*pour_known) : nullptr;
  if (pour) line.rests_on.pour = sha256_of({pour->texts});
  const std::string& rules = plan.prepared.rules.id;
  line.rests_on.answer = fingerprint_of(
      sha256_of({plan.text, pour ? pour->texts : std::string(), shift.zone.name, cast ? cast->text : std::string(),
                 now.text}),
      rules, tables);
  auto answer = board::judge_piece({.plan = plan.prepared.plan,
                                    .body = plan.prepared.body,
                                    .rules = plan.prepared.rules,
                                    .pour = pour ? &pour->question : nullptr,
                                    .zone = shift.zone,
                                    .now = now,
                                    .cast = cast,
                                    .sign_off = sign_off_state(plan.sign_off, plan.text, rules, tables),
                                    .bending = &plan.bending},
                                   tables, line.rests_on.answer);
  line.judged = std::move(answer.judged);
  line.unconfirmed = std::move(answer.report.unconfirmed);
  line.choices = std::move(answer.report.choices);
  line.cautions = std::move(answer.report.cautions);
  return line;
}

void add_new(std::vector<std::string>& all, const std::vector<std::string>& more) {
  for (const std::string& each : more)
    if (std::ranges::find(all, each) == all.end()) all.push_back(each);
}

void add_new(std::vector<Source>& all, const std::vector<Source>& more) {
  for (const Source& each : more)
    if (std::ranges::find(all, each.id, &Source::id) == all.end()) all.push_back(each);
}

// One pour may fill several forms; it may also be the papers of one of them, taken for the other.
void tell_shared_pours(const std::map<std::string, std::vector<std::string>>& forms_of_pours, board::Board& board) {
  for (board::Line& line : board.lines)
    if (const auto forms = forms_of_pours.find(line.pour_file);
        forms != forms_of_pours.end() && forms->second.size() > 1)
      line.judged.notes.push_back(fmt::format("its pour is named for {} forms: {}", forms->second.size(),
                                              fmt::join(forms->second, "; ")));
}

std::optional<plan::ZoneFault> put_question_into_zone(plan::Timestamp& now, const clock::Zone& zone) {
  if (const auto fault = plan::put_into_zone(now, zone)) return fault;
  now.offset_seconds = clock::offset_in_seconds(zone, now.seconds);
  now.text = clock::words_for_moment(zone, now.seconds);
  return {};
}

}  // namespace

BoardAnswer make_board(const BoardQuestion& question, const tables::Tables& tables,
                       const ReadFile& read_file) {
  Shelf shelf(question, tables, read_file);
  shelf.inputs.push_back(question.file);
  const auto read = plan::read_shift_file(question.file, question.text, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return {*faults, shelf.inputs};
  const auto& shift = std::get<plan::Shift>(read);
  plan::Timestamp now = question.now;
  if (const auto fault = put_question_into_zone(now, shift.zone))
    return {std::vector{Diagnostic{.file = "--now", .what = fault->what, .help = fault->help}}, shelf.inputs};

  board::Board board{.file = question.file,
                     .plant = shift.plant,
                     .zone = shift.zone,
                     .starts_utc_s = shift.starts.seconds,
                     .ends_utc_s = shift.ends.seconds,
                     .made_utc_s = now.seconds,
                     .stale_after_s = static_cast<long long>(in(second, shift.stale_after)),
                     .overridden = tables.overridden,
                     .not_checked = checks::not_checked(checks::BendingChecked::none),
                     .tables_fingerprint = sha256_of({tables.content}),
                     .shift_fingerprint = sha256_of({question.text})};
  std::map<std::tuple<std::string, std::string, std::optional<long long>>, LineAnswer> answers;
  std::map<std::string, std::vector<std::string>> forms_of_pours;
  for (const plan::ShiftPiece& piece : shift.pieces) {
    const Named named{in_folder_of(question.file, piece.plan),
                      piece.pour.empty() ? std::string() : in_folder_of(question.file, piece.pour), piece.cast};
    if (!piece.pour.empty() && !piece.form.empty()) add_new(forms_of_pours[piece.pour], {piece.form});
    const std::tuple key{named.plan, named.pour, piece.cast ? std::optional(piece.cast->seconds) : std::nullopt};
    auto known = answers.find(key);
    if (known == answers.end()) known = answers.emplace(key, answer_line(named, shift, now, shelf, tables)).first;
    const LineAnswer& answer = known->second;
    board.lines.push_back({.position = board.lines.size() + 1,
                           .plan_file = piece.plan,
                           .pour_file = piece.pour,
                           .mark = answer.mark,
                           .title = answer.title,
                           .revision = answer.revision,
                           .form = piece.form,
                           .serials = piece.serials,
                           .count = static_cast<std::size_t>(piece.count),
                           .priority = piece.priority,
                           .units = answer.units,
                           .judged = answer.judged,
                           .rests_on = answer.rests_on});
    add_new(board.unconfirmed, answer.unconfirmed);
    add_new(board.choices, answer.choices);
    add_new(board.cautions, answer.cautions);
  }
  tell_shared_pours(forms_of_pours, board);
  board::hold_outside_shift(board);
  board::limit_age(board);
  board::put_in_crane_order(board.lines);
  return {std::move(board), std::move(shelf.inputs)};
}

}  // namespace firstpick
