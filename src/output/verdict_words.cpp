#include "output/verdict_words.hpp"

#include <fmt/format.h>

namespace firstpick::output {

std::string_view mark_for(checks::Verdict verdict) {
  switch (verdict) {
    case checks::Verdict::go: return "(+)";
    case checks::Verdict::hold: return "(?)";
    case checks::Verdict::no_go: return "(x)";
  }
  return "(?)";
}

std::string verdict_words(checks::Verdict verdict, bool colour) {
  const std::string words = fmt::format("{} {}", mark_for(verdict), checks::word_for(verdict));
  if (!colour) return words;
  const int code = verdict == checks::Verdict::go ? 32 : verdict == checks::Verdict::hold ? 33 : 31;
  return fmt::format("\x1b[1;{}m{}\x1b[0m", code, words);
}

}  // namespace firstpick::output
