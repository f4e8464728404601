#include "sheet/formula.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

#include <fmt/format.h>

namespace firstpick::sheet {

namespace {

using Kind = Formula::Kind;

// Recursive descent: sum > product > sign > power > atom. `failed_` once, failed for good.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  std::optional<Formula> whole() {
    Formula formula = sum();
    if (failed_ || at_ != text_.size()) return {};
    return formula;
  }

 private:
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
  Formula sum() {
    Formula left = product();
    while (!failed_) {
      if (take('+'))
        left = {Kind::sum, {}, {std::move(left), product()}};
      else if (take('-'))
        left = {Kind::difference, {}, {std::move(left), product()}};
      else
        break;
    }
    return left;
  }
  Formula product() {
    Formula left = sign();
    while (!failed_) {
      if (take('*'))
        left = {Kind::product, {}, {std::move(left), sign()}};
      else if (take('/'))
        left = {Kind::quotient, {}, {std::move(left), sign()}};
      else
        break;
    }
    return left;
  }
  Formula sign() {
    if (++depth_ > most_depth) return fail();
    Formula made = take('-') ? Formula{Kind::negative, {}, {sign()}} : power();
    --depth_;
    return made;
  }
  Formula power() {
    Formula base = atom();
    if (!take('^')) return base;
    return {Kind::power, {}, {std::move(base), sign()}};
  }
  Formula atom() {
    const char first = next();
    if (take('(')) {
      Formula inner = sum();
      return take(')') ? inner : fail();
    }
    if (std::isdigit(static_cast<unsigned char>(first))) return {Kind::number, word(".", true), {}};
    if (std::isalpha(static_cast<unsigned char>(first))) return named();
    return fail();
  }
  std::string word(std::string_view also, bool number) {
    const std::size_t start = at_;
    while (at_ < text_.size() &&
           (std::isalnum(static_cast<unsigned char>(text_[at_])) ||
            also.find(text_[at_]) != std::string_view::npos ||
            (number && (text_[at_] == '+' || text_[at_] == '-') && text_[at_ - 1] == 'e')))
      ++at_;
    std::string found(text_.substr(start, at_ - start));
    next();
    return found;
  }
  Formula named() {
    std::string name = word("_'", false);
    if (!take('(')) return {Kind::symbol, std::move(name), {}};
    Formula made{Kind::function, std::move(name), {sum()}};
    while (!failed_ && take(',')) made.parts.push_back(sum());
    return take(')') ? made : fail();
  }
  Formula fail() {
    failed_ = true;
    at_ = text_.size();
    return {};
  }

  static constexpr int most_depth = 50;
  std::string_view text_;
  std::size_t at_ = 0;
  int depth_ = 0;
  bool failed_ = false;
};

int strength_of(const Formula& f) {  // of its binding
  switch (f.kind) {
    case Kind::sum:
    case Kind::difference: return 1;
    case Kind::product:
    case Kind::quotient: return 2;
    case Kind::negative: return 3;
    case Kind::power: return 4;
    default: return 5;
  }
}

std::string in_parentheses_below(const Formula& f, int least) {
  const std::string text = as_text(f);
  return strength_of(f) < least ? "(" + text + ")" : text;
}

std::string mathml_below(const Formula& f, int least) {
  const std::string inner = as_mathml(f);
  return strength_of(f) < least ? "<mrow><mo>(</mo>" + inner + "<mo>)</mo></mrow>" : inner;
}

std::string number_as_mathml(const std::string& text) {
  const std::size_t e = text.find('e');
  if (e == std::string::npos) return "<mn>" + text + "</mn>";
  std::string power = text.substr(e + 1);
  const bool below = power.front() == '-';
  power.erase(0, power.find_first_not_of("+-0"));
  return fmt::format(
      "<mrow><mn>{}</mn><mo>&#215;</mo><msup><mn>10</mn><mrow>{}<mn>{}</mn></mrow></msup></mrow>",
      text.substr(0, e), below ? "<mo>&#8722;</mo>" : "", power);
}

std::string letters(std::string_view name) {
  static constexpr std::pair<std::string_view, std::string_view> greek[] = {
      {"phi", "&#966;"},  {"psi", "&#968;"}, {"lambda", "&#955;"},
      {"beta", "&#946;"}, {"rho", "&#961;"}, {"pi", "&#960;"}, {"theta", "&#952;"}};
  for (const auto& [word, letter] : greek)
    if (name == word) return std::string(letter);
  return std::string(name);
}

}  // namespace

std::optional<Formula> formula_of(std::string_view text) { return Reader(text).whole(); }

std::optional<Formula> formula_of(const Step& step) {
  if (step.formula.empty()) return {};
  auto formula = formula_of(step.formula);
  return formula && formula->kind == Kind::number ? std::nullopt : formula;
}

std::string figures(double number) { return fmt::format("{:.6g}", number); }

Formula with_numbers(const Formula& formula, const std::vector<Term>& given) {
  Formula made = formula;
  if (made.kind == Kind::symbol) {
    const auto term = std::ranges::find(given, made.text, &Term::symbol);
    if (term == given.end()) return made;
    if (!(term->number < 0.0)) return {Kind::number, figures(term->number), {}};
    return {Kind::negative, {}, {{Kind::number, figures(-term->number), {}}}};
  }
  for (Formula& part : made.parts) part = with_numbers(part, given);
  return made;
}

std::string as_text(const Formula& f) {
  const auto both = [&](std::string_view sign, int left, int right) {
    return in_parentheses_below(f.parts[0], left) + std::string(sign) +
           in_parentheses_below(f.parts[1], right);
  };
  switch (f.kind) {
    case Kind::number:
    case Kind::symbol: return f.text;
    case Kind::sum: return both(" + ", 1, 2);
    case Kind::difference: return both(" - ", 1, 2);
    case Kind::product: return both(" * ", 2, 3);
    case Kind::quotient: return both(" / ", 2, 3);
    case Kind::power: return both("^", 5, 5);
    case Kind::negative: return "-" + in_parentheses_below(f.parts[0], 4);
    case Kind::function: {
      std::string list;
      for (const Formula& part : f.parts) list += (list.empty() ? "" : ", ") + as_text(part);
      return f.text + "(" + list + ")";
    }
  }
  return {};
}

std::string symbol_as_mathml(std::string_view symbol) {
  const std::size_t bar = symbol.find('_');
  const std::string base = "<mi>" + letters(symbol.substr(0, bar)) + "</mi>";
  if (bar == std::string_view::npos) return base;
  std::string below(symbol.substr(bar + 1));
  std::ranges::replace(below, '_', ',');
  return "<msub>" + base + "<mi>" + below + "</mi></msub>";
}

std::string as_mathml(const Formula& f) {
  const auto row = [](const std::string& inner) { return "<mrow>" + inner + "</mrow>"; };
  const auto both = [&](std::string_view sign, int left, int right) {
    return row(mathml_below(f.parts[0], left) + "<mo>" + std::string(sign) + "</mo>" +
               mathml_below(f.parts[1], right));
  };
  switch (f.kind) {
    case Kind::number: return number_as_mathml(f.text);
    case Kind::symbol: return symbol_as_mathml(f.text);
    case Kind::sum: return both("+", 1, 2);
    case Kind::difference: return both("&#8722;", 1, 2);
    case Kind::product: return both("&#183;", 2, 3);
    case Kind::quotient: return "<mfrac>" + as_mathml(f.parts[0]) + as_mathml(f.parts[1]) + "</mfrac>";
    case Kind::power: return "<msup>" + row(mathml_below(f.parts[0], 5)) + as_mathml(f.parts[1]) + "</msup>";
    case Kind::negative: return row("<mo>&#8722;</mo>" + mathml_below(f.parts[0], 4));
    case Kind::function: {
      if (f.text == "sqrt") return "<msqrt>" + as_mathml(f.parts[0]) + "</msqrt>";
      std::string list;
      for (const Formula& part : f.parts) list += (list.empty() ? "" : "<mo>,</mo>") + as_mathml(part);
      return row("<mi>" + f.text + "</mi><mo>(</mo>" + list + "<mo>)</mo>");
    }
  }
  return {};
}

}  // namespace firstpick::sheet
