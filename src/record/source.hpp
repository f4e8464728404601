// Where a number comes from, and how sure that is.
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace firstpick {

enum class Basis {
  published,        // the text was read
  quoted,           // read second-hand, in a document that quotes it
  common_practice,  // a fact of the trade
  from_memory,      // no text was seen: unconfirmed until the plant's own table confirms it
  choice,           // a choice of this rule set, not a fact; the engineer of record owns it
};

std::string_view word_for(Basis basis);  // "published", "quoted", "common practice", "from memory", "choice"

// One entry of a table, without its value. `id` is "<source>.<symbol>", unique over the tables (each rule set
// has its own copy), never reused.
struct Source {
  std::string id;
  std::string symbol;
  std::string what;        // one sentence
  std::string title;       // title and edition of the document
  std::string locator;     // clause, table, page
  Basis basis = Basis::from_memory;
  std::string note;        // where sources disagree, or why this value
  std::string value_text;  // value and unit as the table writes them
  std::string table;       // file below tables/
  std::string confirmed_by, confirmed_edition, confirmed_on;  // set by a plant's own table

  // A value from memory that nobody has confirmed; it prints on every output it takes part in.
  bool unconfirmed() const { return basis == Basis::from_memory && confirmed_by.empty(); }
};

// "ACI 318-19 ..., 17.6.2.2.1": title, and locator where there is one.
std::string citation(const Source& source);

// A table value together with its source. No default: a value without a source cannot be made.
template <class T>
struct Sourced {
  Sourced(T v, Source s) : value(std::move(v)), source(std::move(s)) {}
  T value;
  Source source;
};

}  // namespace firstpick
