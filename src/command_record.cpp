#include "command_record.hpp"

#include <iostream>

#include "decision_log/decision_log.hpp"
#include "decision_log/head_beside.hpp"
#include "output/decision_text.hpp"
#include "record/diagnostic.hpp"

namespace firstpick {

namespace {

constexpr int in_order = 0, changed = 1, wrong_input = 2, times_to_look_at = 3;

int unreadable(const std::string& file, const decision_log::Fault& fault) {
  std::cerr << printable(file) << ": error: " << printable(fault.what) << '\n';
  return wrong_input;
}

int written(const std::string& text, int status) {
  std::cout << text;
  std::cout.flush();
  if (std::cout) return status;
  std::cerr << "error: the answer could not be written\n";
  return wrong_input;
}

}  // namespace

int show_record_command(const RecordCommand& command) {
  if (command.json && command.csv) {
    std::cerr << "error: --json and --csv are two answers\n      = help: ask for one of them\n";
    return wrong_input;
  }
  const auto rows = decision_log::rows_of(command.file);
  if (const auto* fault = std::get_if<decision_log::Fault>(&rows)) return unreadable(command.file, *fault);
  const auto& all = std::get<std::vector<decision_log::Row>>(rows);
  return written(command.json  ? output::decisions_json(all)
                 : command.csv ? output::decisions_csv(all)
                               : output::decisions_text(all, {.width = command.width}),
                 in_order);
}

int verify_record_command(const RecordCommand& command) {
  std::string head = command.head;
  for (char& c : head)
    if (c >= 'A' && c <= 'F') c = static_cast<char>(c - 'A' + 'a');
  if (command.head_given && !decision_log::is_hash(head)) {
    std::cerr << "--head " << printable(command.head)
              << ": error: this is no hash: 64 hexadecimal digits were expected\n"
                 "      = help: write all of the hash that was printed when the board was recorded\n";
    return wrong_input;
  }
  const auto verified = decision_log::verify(command.file, head);
  if (const auto* fault = std::get_if<decision_log::Fault>(&verified))
    return unreadable(command.file, *fault);
  const auto& result = std::get<decision_log::Verified>(verified);
  return written(command.json ? output::verified_json(command.file, result)
                              : output::verified_text(command.file, result, {.width = command.width}),
                 !result.problems.empty() ? changed
                 : result.times.empty()   ? in_order
                                          : times_to_look_at);
}

}  // namespace firstpick
