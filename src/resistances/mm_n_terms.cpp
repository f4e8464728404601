#include "resistances/mm_n_terms.hpp"

#include <utility>

#include "resistances/lb_in_terms.hpp"

namespace firstpick::resistances {

namespace {

const RootStress root_MPa = root(MPa);
const BreakoutCoefficient newton_per_root_MPa_mm_3_2 = newton / (root(MPa) * power<3, 2>(mm));

template <class Q>
Term either(const tables::HeadedInsertModel& model, std::string symbol, Q q) {
  return model.en ? mm_n(std::move(symbol), q) : lb_in(std::move(symbol), q);
}

}  // namespace

Term mm_n(std::string symbol, Ratio number) { return {std::move(symbol), number.value(), "1"}; }
Term mm_n(std::string symbol, Length length) { return {std::move(symbol), in(mm, length), "mm"}; }
Term mm_n(std::string symbol, Area area) { return {std::move(symbol), in(mm2, area), "mm2"}; }
Term mm_n(std::string symbol, Force force) { return {std::move(symbol), in(newton, force), "N"}; }
Term mm_n(std::string symbol, Stress stress) { return {std::move(symbol), in(MPa, stress), "MPa"}; }
Term mm_n(std::string symbol, RootStress coefficient) {
  return {std::move(symbol), in(root_MPa, coefficient), "MPa^0.5"};
}
Term mm_n(std::string symbol, BreakoutCoefficient coefficient) {
  return {std::move(symbol), in(newton_per_root_MPa_mm_3_2, coefficient), "N / (MPa^0.5 mm^1.5)"};
}

Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Ratio number) {
  return either(model, std::move(symbol), number);
}
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Length length) {
  return either(model, std::move(symbol), length);
}
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Area area) {
  return either(model, std::move(symbol), area);
}
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Force force) {
  return either(model, std::move(symbol), force);
}
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Stress stress) {
  return either(model, std::move(symbol), stress);
}

}  // namespace firstpick::resistances
