#include "tables/provenance.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include <fmt/format.h>

namespace firstpick::tables {
namespace {

std::optional<Basis> basis_of(std::string_view word) {
  for (const Basis basis :
       {Basis::published, Basis::quoted, Basis::common_practice, Basis::from_memory, Basis::choice})
    if (word_for(basis) == word) return basis;
  return {};
}

bool was_read(Basis basis) { return basis == Basis::published || basis == Basis::quoted; }

void read_basis(Fields& fields, Source& source) {
  static const std::vector<std::string_view> words = {word_for(Basis::published), word_for(Basis::quoted),
                                                      word_for(Basis::common_practice),
                                                      word_for(Basis::from_memory), word_for(Basis::choice)};
  const std::string word = fields.word("basis", words);
  source.locator = fields.text_or_none("locator");
  source.note = fields.text_or_none("note");
  const std::optional<Basis> basis = basis_of(word);
  if (!basis) return;
  source.basis = *basis;
  if (was_read(*basis) && !fields.has("locator"))
    fields.fault(fields.value_region("basis"), fmt::format("a value that is {} needs a 'locator'", word),
                 "clause, table or page where it stands");
  if (!was_read(*basis) && !fields.has("note"))
    fields.fault(fields.value_region("basis"),
                 fmt::format("a value with the basis '{}' needs a 'note'", word), "say why it is this value");
}

// Empty for a choice that rests on no document.
std::string read_source(Fields& fields, Source& source, const SourceList* sources) {
  if (source.basis == Basis::choice && !fields.has("source")) {
    source.title = "choice of this table";
    fields.text_or_none("source");
    return {};
  }
  const std::string key = fields.text("source");
  if (key.empty() || !sources) return {};
  if (const auto document = sources->find(key); document != sources->end()) {
    source.title = title_of(document->second);
    return key;
  }
  std::vector<std::string_view> keys;
  for (const auto& [known, document] : *sources) keys.push_back(known);
  fields.fault(fields.value_region("source"), fmt::format("sources.toml has no source '{}'", key),
               suggestion(key, keys));
  return {};
}

void check_id(Fields& fields, const Source& source, std::string_view source_key) {
  const std::string_view id = source.id;
  if (id.empty()) return;
  constexpr std::string_view allowed = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-";
  const std::size_t dot = id.find('.');
  const bool named = dot != std::string_view::npos && dot > 0 && dot + 1 < id.size();
  if (!named || id.find_first_not_of(allowed) != std::string_view::npos)
    fields.fault(fields.value_region("id"), fmt::format("'{}' is not an id", id),
                 "an id is \"<source>.<symbol>\" of letters, digits, '.', '_' and '-'");
  else if (!source_key.empty() && id.substr(0, source_key.size() + 1) != fmt::format("{}.", source_key))
    fields.fault(fields.value_region("id"), fmt::format("the id '{}' does not begin with its source", id),
                 fmt::format("write \"{}.{}\"", source_key, id.substr(dot + 1)));
}

void read_confirmation(Fields& fields, Source& source, bool of_plant) {
  static constexpr std::array<std::string_view, 3> keys = {"confirmed_by", "edition", "confirmed_on"};
  source.confirmed_by = fields.text_or_none(keys[0]);
  source.confirmed_edition = fields.text_or_none(keys[1]);
  source.confirmed_on = fields.date_or_none(keys[2]);
  const auto written = std::count_if(keys.begin(), keys.end(), [&](auto key) { return fields.has(key); });
  if (written == 0) return;
  for (const std::string_view key : keys) {
    if (!of_plant && fields.has(key))
      fields.fault(fields.key_region(key), fmt::format("'{}' belongs in a table of the plant", key),
                   "confirm a value in the plant's own directory");
    if (of_plant && !fields.has(key))
      fields.fault(
          fields.key_region(*std::find_if(keys.begin(), keys.end(), [&](auto k) { return fields.has(k); })),
          fmt::format("a confirmation needs '{}' too", key),
          "confirmed_by (who), edition (of the document in hand), confirmed_on (day)");
  }
}

}  // namespace

void read_provenance(Fields& fields, Source& source, const SourceList* sources, bool of_plant) {
  read_basis(fields, source);
  check_id(fields, source, read_source(fields, source, sources));
  read_confirmation(fields, source, of_plant);
}

}  // namespace firstpick::tables
