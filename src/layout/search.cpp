#include "layout/search.hpp"

#include <algorithm>
#include <cmath>
#include <exception>
#include <memory>

#include <nlopt.h>

namespace firstpick::layout {

namespace {

constexpr int everywhere_each = 28, nearby_each = 20;  // evaluations for each freedom
constexpr std::size_t most_starts = 3;
constexpr double apart = 0.15;                         // of the box, in some freedom: a place of its own
constexpr double first_reach = 0.06;                   // of the box: first step of the search nearby

class Recorder {
 public:
  explicit Recorder(const Score& score) : score_(score) {}

  double operator()(const Places& places) {
    const double value = score_(places);
    seen_.push_back({places, value});
    return value;
  }

  // An exception may not pass through the library: it is kept, and thrown again by check().
  static double for_library(unsigned size, const double* x, double* /*gradient*/, void* self) {
    auto* recorder = static_cast<Recorder*>(self);
    if (recorder->thrown_) return HUGE_VAL;
    try {
      return (*recorder)(Places(x, x + size));
    } catch (...) {
      recorder->thrown_ = std::current_exception();
      return HUGE_VAL;
    }
  }
  void check() const {
    if (thrown_) std::rethrow_exception(thrown_);
  }
  std::vector<Scored>& seen() { return seen_; }

 private:
  const Score& score_;
  std::vector<Scored> seen_;
  std::exception_ptr thrown_;
};

struct Closing {
  void operator()(nlopt_opt optimizer) const { nlopt_destroy(optimizer); }
};

void run(nlopt_algorithm algorithm, Recorder& recorder, const SearchBox& box, Places start, int evaluations) {
  const auto size = static_cast<unsigned>(box.low.size());
  const std::unique_ptr<nlopt_opt_s, Closing> optimizer(nlopt_create(algorithm, size));
  nlopt_set_lower_bounds(optimizer.get(), box.low.data());
  nlopt_set_upper_bounds(optimizer.get(), box.high.data());
  nlopt_set_min_objective(optimizer.get(), &Recorder::for_library, &recorder);
  nlopt_set_maxeval(optimizer.get(), evaluations);
  if (algorithm == NLOPT_LN_SBPLX) {
    nlopt_set_xtol_abs1(optimizer.get(), 0.25 * box.accuracy);
    Places step;
    for (std::size_t i = 0; i < box.low.size(); ++i)
      step.push_back(std::max(first_reach * (box.high[i] - box.low[i]), 0.5 * box.accuracy));
    nlopt_set_initial_step(optimizer.get(), step.data());
  }
  double least = 0.0;
  nlopt_optimize(optimizer.get(), start.data(), &least);  // what it found is in the recorder, however it ended
  recorder.check();
}

bool is_apart(const Places& a, const Places& b, const SearchBox& box) {
  for (std::size_t i = 0; i < a.size(); ++i)
    if (std::abs(a[i] - b[i]) > std::max(apart * (box.high[i] - box.low[i]), box.accuracy)) return true;
  return false;
}

std::vector<Scored> best_apart(std::vector<Scored> seen, const SearchBox& box) {
  std::ranges::stable_sort(seen, {}, &Scored::score);
  std::vector<Scored> best;
  for (const Scored& each : seen) {
    if (best.size() == most_starts) break;
    if (std::ranges::all_of(best, [&](const Scored& other) { return is_apart(each.places, other.places, box); }))
      best.push_back(each);
  }
  return best;
}

}  // namespace

std::vector<Scored> search(const Score& score, const SearchBox& box) {
  Recorder recorder(score);
  const auto size = static_cast<int>(box.low.size());
  if (size == 0) return {};
  Places start = box.start;
  for (std::size_t i = 0; i < start.size(); ++i) start[i] = std::clamp(start[i], box.low[i], box.high[i]);
  recorder(start);
  const bool has_room =
      std::ranges::any_of(start, [&](const double& at) {
        const auto i = static_cast<std::size_t>(&at - start.data());
        return box.high[i] - box.low[i] > box.accuracy;
      });
  if (!has_room) return {{start, recorder.seen().front().score}};
  run(NLOPT_GN_DIRECT_L, recorder, box, start, everywhere_each * size);
  std::vector<Scored> starts = best_apart(recorder.seen(), box);
  for (const Scored& each : starts) run(NLOPT_LN_SBPLX, recorder, box, each.places, nearby_each * size);
  return best_apart(recorder.seen(), box);
}

}  // namespace firstpick::layout
