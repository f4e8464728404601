// A strict reader of our own pages: elements that open and close in order, quoted attributes, no bare '<' or '&'. What a
// browser would repair is a fault here.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace firstpick::tests {

struct PageRead {
  std::string fault;                                            // empty: well formed
  std::vector<std::string> elements;                            // names, in order
  std::vector<std::pair<std::string, std::string>> attributes;  // name, value as written
  std::string text;  // of the body, without tags, entities resolved
};

namespace page_reader {

inline bool is_entity(std::string_view text) {
  for (const std::string_view known : {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"})
    if (text.starts_with(known)) return true;
  return false;
}

inline std::string resolved(std::string_view text) {
  std::string out;
  const std::pair<std::string_view, char> all[] = {
      {"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}};
  while (!text.empty()) {
    bool found = false;
    for (const auto& [entity, letter] : all)
      if (text.starts_with(entity)) {
        out += letter;
        text.remove_prefix(entity.size());
        found = true;
        break;
      }
    if (found) continue;
    out += text.front();
    text.remove_prefix(1);
  }
  return out;
}

}  // namespace page_reader

inline PageRead read_page(std::string_view page) {
  PageRead read;
  std::vector<std::string> open;
  const auto fail = [&](const std::string& what) { read.fault = what; };
  const std::string_view doctype = "<!DOCTYPE html>\n";
  if (!page.starts_with(doctype)) return fail("no doctype"), read;
  page.remove_prefix(doctype.size());
  while (!page.empty() && read.fault.empty()) {
    if (page.front() != '<') {
      const std::string_view text = page.substr(0, page.find('<'));
      for (std::size_t at = 0; (at = text.find('&', at)) != std::string_view::npos; ++at)
        if (!page_reader::is_entity(text.substr(at))) fail("a bare & in: " + std::string(text));
      if (text.find('>') != std::string_view::npos) fail("a bare > in: " + std::string(text));
      read.text += page_reader::resolved(text);
      page.remove_prefix(text.size());
      continue;
    }
    const std::size_t end = page.find('>');
    if (end == std::string_view::npos) return fail("a tag without an end"), read;
    std::string_view tag = page.substr(1, end - 1);
    page.remove_prefix(end + 1);
    if (tag.starts_with('/')) {
      if (open.empty() || open.back() != tag.substr(1))
        return fail("</" + std::string(tag.substr(1)) + "> out of turn"), read;
      open.pop_back();
      continue;
    }
    const bool closed = tag.ends_with('/');
    if (closed) tag.remove_suffix(1);
    const std::string name(tag.substr(0, tag.find(' ')));
    if (name.empty() || name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789") != std::string::npos)
      return fail("no name of an element: " + name), read;
    read.elements.push_back(name);
    tag.remove_prefix(name.size());
    while (!tag.empty()) {
      if (!tag.starts_with(' ')) return fail("no space before an attribute of " + name), read;
      tag.remove_prefix(1);
      const std::size_t equals = tag.find("=\"");
      if (equals == std::string_view::npos) return fail("an attribute without quotes in " + name), read;
      const std::size_t quote = tag.find('"', equals + 2);
      if (quote == std::string_view::npos) return fail("a quote without an end in " + name), read;
      read.attributes.emplace_back(tag.substr(0, equals), tag.substr(equals + 2, quote - equals - 2));
      tag.remove_prefix(quote + 1);
    }
    if (closed) continue;
    if (name == "style" || name == "script") {  // raw text
      const std::string close = "</" + name + ">";
      const std::size_t at = page.find(close);
      if (at == std::string_view::npos) return fail("no " + close), read;
      page.remove_prefix(at + close.size());
      continue;
    }
    open.push_back(name);
  }
  if (read.fault.empty() && !open.empty()) fail("<" + open.back() + "> is never closed");
  return read;
}

}  // namespace firstpick::tests
