// The names that a plan gives to things, and where it uses them: given twice, or used and never given, is a
// fault.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "plan/faults.hpp"
#include "plan/keys.hpp"

namespace firstpick::plan {

class NameBook {
 public:
  void give(Names kind, const std::string& name, const toml::source_region& where);
  void use(Names kind, const std::string& name, const toml::source_region& where);

  // Something of this kind could not be read: its name is not known, and no use can be called unknown.
  void give_unreadable(Names kind);

  bool is_given(Names kind, const std::string& name) const;
  bool has_unknown(Names kind) const;  // some use of this kind names nothing that there is

  void report(Faults& faults) const;

 private:
  struct Entry {
    Names kind;
    std::string name;
    toml::source_region where;
  };

  void report_unknown(const Entry& use, bool with_help, Faults& faults) const;

  std::vector<Entry> given_, used_, given_again_;                       // in the order of reading
  std::map<std::pair<Names, std::string>, toml::source_region> first_;  // where each name is given first
  std::set<Names> unreadable_;
};

std::string_view word_for(Names kind);  // "insert", "sling", ...

}  // namespace firstpick::plan
