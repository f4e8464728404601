#include "plan/keys.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

namespace firstpick::plan {
namespace {

std::string_view outer_path(std::string_view path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string_view::npos ? std::string_view{} : path.substr(0, dot);
}

}  // namespace

const std::vector<Section>& sections() {
  static const std::vector<Section> all = [] {
    std::vector<Section> list = piece_sections();
    for (Section& each : lifting_sections()) list.push_back(std::move(each));
    for (Section& each : stage_sections()) list.push_back(std::move(each));
    for (Section& each : layout_sections()) list.push_back(std::move(each));
    return list;
  }();
  return all;
}

const Section& section(std::string_view path, const SectionList& list) {
  const auto found = std::ranges::find(list, path, &Section::path);
  assert(found != list.end());
  return *found;
}

const Key* find_key(const Section& section, std::string_view name) {
  const auto found = std::ranges::find(section.keys, name, &Key::name);
  return found == section.keys.end() ? nullptr : &*found;
}

std::vector<const Section*> sections_inside(const Section& outer, const SectionList& list) {
  std::vector<const Section*> inside;
  for (const Section& each : list)
    if (!each.path.empty() && outer_path(each.path) == outer.path) inside.push_back(&each);
  return inside;
}

std::string_view last_part(std::string_view path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string_view::npos ? path : path.substr(dot + 1);
}

std::string heading(const Section& section) {
  if (section.path.empty()) return std::string(section.called);
  const std::string path(section.path);
  return section.repeated ? "[[" + path + "]]" : "[" + path + "]";
}

bool is_quantity(Kind kind) { return kind <= Kind::share; }

Dimension dimension_for(Kind kind) {
  switch (kind) {
    case Kind::length: return dimension_of<Length>();
    case Kind::area: return dimension_of<Area>();
    case Kind::force: return dimension_of<Force>();
    case Kind::stress: return dimension_of<Stress>();
    case Kind::density: return dimension_of<Density>();
    case Kind::angle: return dimension_of<Angle>();
    case Kind::speed: return dimension_of<Speed>();
    case Kind::duration: return dimension_of<Duration>();
    case Kind::temperature: return dimension_of<Temperature>();
    default: return dimension_of<Ratio>();
  }
}

}  // namespace firstpick::plan
