// firstpick record: lists the record of decisions, and says whether it is as it was written.
#pragma once

#include <cstddef>
#include <string>

namespace firstpick {

struct RecordCommand {
  std::string file, head;  // head: hash that was kept; empty if none
  bool head_given = false;  // an empty one is no hash
  bool json = false, csv = false;
  std::size_t width = 80;
};

int show_record_command(const RecordCommand& command);    // exit status 0, or 2 if it cannot be read
int verify_record_command(const RecordCommand& command);  // 0 intact, 1 changed, 2 it cannot be read or the call is
                                                          // wrong, 3 intact, with times to look at

}  // namespace firstpick
