#include "command_board.hpp"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <iostream>
#include <map>
#include <thread>

#include <fmt/format.h>

#include "board_pipeline.hpp"
#include "decision_log/decision_log.hpp"
#include "decisions_of_board.hpp"
#include "output/board_html.hpp"
#include "output/board_text.hpp"
#include "record/diagnostic.hpp"
#include "record/utf8.hpp"
#include "strength/moment_text.hpp"
#include "whole_file.hpp"

namespace firstpick {

namespace {

namespace fs = std::filesystem;

constexpr int all_go = 0, some_no_go = 1, wrong_input = 2, some_hold = 3;
constexpr auto look_again_after = std::chrono::milliseconds(500);
constexpr long long write_again_after_s =
    30;  // evidence runs out and predictions come due while no file changes

volatile std::sig_atomic_t interrupted = 0;
void interrupt(int) { interrupted = 1; }

int wrong(const std::string& what, const std::string& help) {
  std::cerr << "error: " << what << "\n      = help: " << help << '\n';
  return wrong_input;
}

bool is_a_name(const std::string& text) {
  if (text.find_first_not_of(' ') == std::string::npos) return false;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    if (!character.valid || is_unprintable(character.code)) return false;
    at += character.length;
  }
  return true;
}

std::optional<int> fault_of_call(const BoardCommand& command) {
  if (command.json && command.csv) return wrong("--json and --csv are two answers", "ask for one of them");
  if (!command.record.empty() && !is_a_name(command.by))
    return wrong("--record needs the name of who decides", "--by \"R. Example\"");
  if (command.record.empty() && !command.by.empty())
    return wrong("--by without --record", "--record decisions.sqlite");
  if (command.watch && command.html.empty())
    return wrong("--watch needs a page to write", "--html board.html");
  if (command.watch && !command.now.empty()) return wrong("--watch goes by the clock", "leave out --now");
  if (command.watch && !command.record.empty())
    return wrong("--watch records nothing: a decision is recorded when somebody takes it",
                 "run firstpick board --record beside the watch");
  return {};
}

std::optional<plan::Timestamp> time_of(const BoardCommand& command, const BoardSurroundings& surroundings) {
  if (command.now.empty())
    return plan::Timestamp{.seconds = surroundings.clock_seconds(), .has_offset = true, .text = {}};
  const auto given = strength::moment_of(command.now, false);
  if (const auto* fault = std::get_if<QuantityFault>(&given)) {
    std::cerr << "--now " << printable(command.now) << ": error: " << fault->what
              << "\n      = help: " << fault->help << '\n';
    return {};
  }
  return std::get<plan::Timestamp>(given);
}

int status_of(const board::Board& board) {
  using checks::Verdict;
  if (pieces_with(board, Verdict::no_go) > 0) return some_no_go;
  return pieces_with(board, Verdict::hold) > 0 ? some_hold : all_go;
}

// Rows as they were acknowledged; an empty text: they could not be written.
std::string recorded(const BoardCommand& command, const board::Board& board, long long clock_s) {
  const auto written = decision_log::append(command.record, decisions_of(board, command.by, clock_s));
  if (const auto* fault = std::get_if<decision_log::Fault>(&written)) {
    std::cerr << printable(command.record) << ": error: nothing was recorded: " << printable(fault->what)
              << '\n';
    return {};
  }
  const auto& rows = std::get<std::vector<decision_log::Row>>(written);
  return fmt::format("recorded as rows {} to {} of {}\nhash of the last one, to be kept elsewhere: {}\n",
                     rows.front().number, rows.back().number, printable(command.record), rows.back().hash);
}

std::string page_of(const BoardCommand& command, const BoardAnswer& answer, long long now_s) {
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.board))
    return output::board_faults_html(command.file, now_s, strength::words_for_moment(now_s, 0), *faults);
  return output::board_html(std::get<board::Board>(answer.board));
}

bool write_page(const BoardCommand& command, const BoardAnswer& answer, long long now_s) {
  if (command.html.empty()) return true;
  if (replace_file(command.html, page_of(command, answer, now_s))) return true;
  std::cerr << printable(command.html) << ": error: the page could not be written\n";
  return false;
}

// One board: shown, written as a page, recorded.
int show_once(const BoardCommand& command, const tables::Tables& tables, const std::string& text,
              const plan::Timestamp& now, const BoardSurroundings& surroundings) {
  const BoardAnswer answer = make_board({command.file, text, command.rules, now}, tables, whole_file);
  const bool page_written = write_page(command, answer, now.seconds);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.board)) {
    for (const Diagnostic& fault : *faults)
      std::cerr << show(fault, fault.file == command.file ? text : std::string());
    if (command.json) std::cout << output::board_faults_json(command.file, *faults);
    return wrong_input;
  }
  const auto& board = std::get<board::Board>(answer.board);
  if (command.json)
    std::cout << output::board_json(board);
  else if (command.csv)
    std::cout << output::board_csv(board);
  else
    std::cout << output::board_text(board, {.width = command.width, .colour = command.colour});
  bool record_written = true;
  if (!command.record.empty()) {
    const std::string rows = recorded(command, board, surroundings.clock_seconds());
    record_written = !rows.empty();
    (command.json || command.csv ? std::cerr : std::cout) << rows;
  }
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return wrong_input;
  }
  return page_written && record_written ? status_of(board) : wrong_input;
}

using Stamps = std::map<std::string, std::pair<fs::file_time_type, std::uintmax_t>>;

void add_stamp(const fs::path& path, Stamps& stamps) {
  std::error_code error;
  const auto time = fs::last_write_time(path, error);
  const auto size = error ? 0 : fs::file_size(path, error);
  stamps[path.generic_string()] = {error ? fs::file_time_type::min() : time, error ? 0 : size};
}

Stamps stamps_of(const std::vector<std::string>& inputs, const std::vector<fs::path>& folders) {
  Stamps stamps;
  for (const std::string& input : inputs) add_stamp(input, stamps);
  for (const fs::path& folder : folders) {
    std::error_code error;
    for (fs::recursive_directory_iterator each(folder, error), end; !error && each != end;
         each.increment(error))
      if (each->is_regular_file(error)) add_stamp(each->path(), stamps);
  }
  return stamps;
}

int watch(const BoardCommand& command, const BoardSurroundings& surroundings) {
  std::signal(SIGINT, interrupt);
  std::signal(SIGTERM, interrupt);
  Stamps seen;
  std::vector<std::string> inputs{command.file};
  long long written_s = 0;
  while (!interrupted) {
    const long long now_s = surroundings.clock_seconds();
    const Stamps stamps = stamps_of(inputs, surroundings.table_folders);
    if (stamps != seen || now_s < written_s || now_s - written_s >= write_again_after_s) {
      // The stamps are older than what is read: a file that changes meanwhile is seen as changed in the next round.
      BoardAnswer answer{
          std::vector{Diagnostic{.file = command.file, .what = "the file or the tables cannot be read"}},
          inputs};
      const auto text = whole_file(command.file);
      if (const auto tables = surroundings.read_tables(); tables && text)
        answer = make_board(
            {command.file, *text, command.rules, {.seconds = now_s, .has_offset = true, .text = {}}}, *tables,
            whole_file);
      if (!write_page(command, answer, now_s)) return wrong_input;
      inputs = answer.inputs;  // files that are new among them make a second board in the next round
      seen = stamps;
      written_s = now_s;
      if (const auto* board = std::get_if<board::Board>(&answer.board))
        std::cout << fmt::format("{} written: {} GO, {} HOLD, {} NO-GO\n",
                                 clock::words_for_moment(board->zone, now_s),
                                 pieces_with(*board, checks::Verdict::go),
                                 pieces_with(*board, checks::Verdict::hold),
                                 pieces_with(*board, checks::Verdict::no_go))
                  << std::flush;
      else
        std::cout << "written without verdicts: the shift file or the tables are faulty\n" << std::flush;
    }
    std::this_thread::sleep_for(look_again_after);
  }
  return all_go;
}

}  // namespace

int board_command(const BoardCommand& command, const BoardSurroundings& surroundings) {
  if (const auto fault = fault_of_call(command)) return *fault;
  if (command.watch) return watch(command, surroundings);
  const auto now = time_of(command, surroundings);
  if (!now) return wrong_input;
  const auto tables = surroundings.read_tables();
  if (!tables) return wrong_input;
  const auto text = whole_file(command.file);
  if (!text) {
    std::cerr << printable(command.file) << ": error: the file cannot be read\n";
    return wrong_input;
  }
  return show_once(command, *tables, *text, *now, surroundings);
}

}  // namespace firstpick
