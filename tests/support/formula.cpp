// Recursive descent: sum > product > sign > power > atom, one function each.

#include "support/formula.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <functional>
#include <stdexcept>

namespace firstpick::tests {

namespace {

constexpr double pi = 3.14159265358979323846;

class Reader {
 public:
  using Lookup = std::function<double(const std::string&)>;
  Reader(std::string_view text, Lookup number_of) : text_(text), number_of_(std::move(number_of)) {}

  double whole() {
    const double value = sum();
    if (at_ != text_.size()) fault("nothing more was expected");
    return value;
  }

 private:
  [[noreturn]] void fault(const std::string& what) const {
    throw std::invalid_argument(what + " at character " + std::to_string(at_ + 1) + " of '" + std::string(text_) + "'");
  }
  char next() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    return at_ < text_.size() ? text_[at_] : '\0';
  }
  bool take(char wanted) {
    if (next() != wanted) return false;
    ++at_;
    next();
    return true;
  }

  double sum() {
    double value = product();
    while (true) {
      if (take('+')) value += product();
      else if (take('-')) value -= product();
      else return value;
    }
  }
  double product() {
    double value = sign();
    while (true) {
      if (take('*')) value *= sign();
      else if (take('/')) value /= sign();
      else return value;
    }
  }
  double sign() { return take('-') ? -sign() : power(); }
  double power() {
    const double base = atom();
    return take('^') ? std::pow(base, sign()) : base;
  }
  double atom() {
    const char first = next();
    if (take('(')) {
      const double value = sum();
      if (!take(')')) fault("')' was expected");
      return value;
    }
    if (std::isdigit(static_cast<unsigned char>(first))) return number();
    if (std::isalpha(static_cast<unsigned char>(first))) return named();
    fault("a number, a symbol or '(' was expected");
  }
  double number() {
    double value = 0.0;
    const auto [end, error] = std::from_chars(text_.data() + at_, text_.data() + text_.size(), value);
    if (error != std::errc{}) fault("no number");
    at_ = static_cast<std::size_t>(end - text_.data());
    next();
    return value;
  }
  double named() {
    const std::size_t start = at_;
    const auto belongs = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '\''; };
    while (at_ < text_.size() && belongs(text_[at_])) ++at_;
    const std::string name(text_.substr(start, at_ - start));
    if (take('(')) return applied(name);
    next();
    return name == "pi" ? pi : number_of_(name);
  }
  double applied(const std::string& function) {
    std::vector<double> of{sum()};
    while (take(',')) of.push_back(sum());
    if (!take(')')) fault("')' was expected");
    if (function == "min" && of.size() > 1) return *std::ranges::min_element(of);
    if (function == "max" && of.size() > 1) return *std::ranges::max_element(of);
    if (of.size() == 1) {
      if (function == "sqrt") return std::sqrt(of[0]);
      if (function == "ln") return std::log(of[0]);
      if (function == "sin") return std::sin(of[0]);
      if (function == "cos") return std::cos(of[0]);
      if (function == "tan") return std::tan(of[0]);
      if (function == "abs") return std::abs(of[0]);
    }
    fault("there is no function '" + function + "' of " + std::to_string(of.size()));
  }

  std::string_view text_;
  Lookup number_of_;
  std::size_t at_ = 0;
};

}  // namespace

double value_of(std::string_view formula, const Symbols& symbols) {
  return Reader(formula, [&](const std::string& symbol) {
           const auto found = symbols.find(symbol);
           if (found == symbols.end()) throw std::invalid_argument("'" + symbol + "' has no number");
           return found->second;
         }).whole();
}

std::vector<std::string> symbols_of(std::string_view formula) {
  std::vector<std::string> found;
  Reader(formula, [&](const std::string& symbol) {
    if (std::ranges::find(found, symbol) == found.end()) found.push_back(symbol);
    return 1.0;
  }).whole();
  return found;
}

}  // namespace firstpick::tests
