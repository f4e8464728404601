#include "tables/source_list.hpp"

#include <utility>

#include <fmt/format.h>

#include "tables/fields.hpp"

namespace firstpick::tables {

void read_sources(const TableFile& file, SourceList& sources, Faults& faults) {
  static const std::vector<std::string_view> kinds = {"standard", "regulation", "guide",
                                                      "handbook", "report",     "article"};
  refuse_other_keys(file, {"title", "source"}, faults);
  for (const toml::table* table : tables_of(file, "source", faults)) {
    Fields fields(file, *table, "[[source]]", faults);
    Document document;
    document.key = fields.text("key");
    document.title = fields.text("title");
    document.edition = fields.text_or_none("edition");
    document.kind = fields.word("kind", kinds);
    fields.refuse_others();
    if (document.key.empty()) continue;
    if (sources.contains(document.key))
      fields.fault(fields.value_region("key"), fmt::format("there is already a source '{}'", document.key),
                   "give the document a key of its own");
    else
      sources.emplace(document.key, std::move(document));
  }
}

std::string title_of(const Document& document) {
  return document.edition.empty() ? document.title : fmt::format("{}, {}", document.title, document.edition);
}

}  // namespace firstpick::tables
