// A shift file as its author wrote it: which pieces one crane is to take in one shift. docs/shift-file.md
// describes it.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "clock/zone.hpp"
#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

struct ShiftPiece {        // pieces of one plan and one pour
  std::string plan, pour;  // files below the folder of the shift file; pour may be empty
  std::vector<std::string> serials;
  long long count = 0;  // of the serials where there are some
  std::string form;
  std::optional<Timestamp> cast;  // in UTC with the offset of the zone
  std::optional<long long> priority;
  Place place;
};

struct Shift {
  std::string file;  // as named on the command line
  std::string plant;
  clock::Zone zone;
  Timestamp starts, ends;  // both in UTC with the offset of the zone
  Duration stale_after{};
  std::vector<ShiftPiece> pieces;
};

// The shift file, or every fault of it in the order of the text. A local time that comes twice when the clock
// goes back needs its offset; one that the clock skips is a fault; so is an offset that the zone does not
// have at that time.
std::variant<Shift, std::vector<Diagnostic>> read_shift_file(const std::string& file, std::string_view text,
                                                             const tables::Tables& tables);

// A moment without an offset, put into the zone; what cannot be put there, in words, with what to write
// instead.
struct ZoneFault {
  std::string what, help;
};
std::optional<ZoneFault> put_into_zone(Timestamp& moment, const clock::Zone& zone);

}  // namespace firstpick::plan
