// Random rigging trees from a fixed seed: up to 8 picks, 2 beams, 4 sheaves, 1 or 2 hooks. Drawn level with the
// load below the hook, then with errors of length, so that most hang near to how they are drawn.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include "support/hung_pieces.hpp"

namespace firstpick::tests {

class RandomTree {
 public:
  explicit RandomTree(Dice& dice) : dice_(dice) {
    load_kN_ = dice.between(10.0, 500.0);
    error_ = std::pow(10.0, dice.between(-8.0, -2.0));
    kind_ = dice.whole(0, 3);
    const int picks = dice.whole(2, 8);
    std::vector<Pick> all;
    for (int i = 0; i < picks; ++i) all.push_back({dice.between(-3.0, 3.0), dice.between(-1.5, 1.5)});
    std::ranges::sort(all, {}, &Pick::x);
    double x = 0.0, y = 0.0;
    for (const Pick& pick : all) x += pick.x / picks, y += pick.y / picks;
    const double high = dice.between(4.0, 9.0);
    piece.loads = {{at_m(x + dice.between(-0.2, 0.2), y + dice.between(-0.1, 0.1),
                         dice.one_in(6) ? dice.between(-0.2, 0.5) : dice.between(-2.0, -0.05)),
                    load_kN_ * kN}};
    if (picks >= 4 && dice.one_in(5)) {
      const auto half = static_cast<std::ptrdiff_t>(all.size() / 2);
      const std::vector<Pick> left(all.begin(), all.begin() + half), right(all.begin() + half, all.end());
      const double apart = middle_x(right) - middle_x(left);
      hang(left, {{}, at_m(0.0, 0.0, 0.0), at_m(middle_x(left), y, high)});
      hang(right, {{}, at_m(apart, 0.0, 0.0), at_m(middle_x(left) + apart, y, high)});
    } else {
      hang(all, {{}, at_m(0.0, 0.0, 0.0), at_m(x, y, high)});
    }
  }

  HungPiece piece;

 private:
  struct Pick {
    double x, y;
  };
  struct Holder {
    std::optional<std::size_t> carrier;
    Position at, drawn;  // in the carrier's axes; over the piece as drawn
  };

  static double middle_x(const std::vector<Pick>& picks) {
    return std::accumulate(picks.begin(), picks.end(), 0.0,
                           [](double sum, const Pick& pick) { return sum + pick.x; }) /
           static_cast<double>(picks.size());
  }

  void leg(const Holder& from, std::string to, const Position& at, const Position& drawn,
           std::optional<std::size_t> carrier) {
    const Length drawn_length = norm(from.drawn - drawn);
    const bool rigid = kind_ == 0 || (kind_ == 3 && dice_.one_in(2));
    const Force stiffness = rigid        ? does_not_stretch
                            : kind_ == 1 ? 1e5 * load_kN_ * kN
                                         : std::pow(10.0, dice_.between(2.0, 6.0)) * load_kN_ * kN;
    piece.legs.push_back({std::move(to), at, (1.0 + error_ * dice_.between(-1.0, 1.0)) * drawn_length, stiffness,
                          from.carrier, from.at, carrier});
  }

  void hang(const std::vector<Pick>& picks, const Holder& from) {
    const double high = in(m, from.drawn.z);
    double x = 0.0, y = 0.0;
    for (const Pick& pick : picks) x += pick.x / static_cast<double>(picks.size()), y += pick.y / static_cast<double>(picks.size());
    if (picks.size() >= 2 && high > 1.5 && beams_ < 2 && dice_.one_in(2)) return hang_on_a_beam(picks, from, x, y);
    if (picks.size() == 2 && high > 1.0 && sheaves_ < 4 && dice_.one_in(2)) return hang_on_a_sheave(picks, from, x, y);
    if (picks.size() >= 4 && high > 2.0 && sheaves_ < 3 && dice_.one_in(2)) {
      const auto half = static_cast<std::ptrdiff_t>(picks.size() / 2);
      hang(std::vector<Pick>(picks.begin(), picks.begin() + half), from);
      hang(std::vector<Pick>(picks.begin() + half, picks.end()), from);
      return;
    }
    for (const Pick& pick : picks) leg(from, name(), at_m(pick.x, pick.y, 0.0), at_m(pick.x, pick.y, 0.0), {});
  }

  void hang_on_a_sheave(const std::vector<Pick>& picks, const Holder& from, double x, double y) {
    ++sheaves_;
    const std::size_t carrier = piece.carriers.size();
    piece.carriers.push_back({"sheave", dice_.between(0.001, 0.02) * load_kN_ * kN, {}, true});
    const Position drawn = at_m(x, y, in(m, from.drawn.z) * dice_.between(0.4, 0.8));
    leg(from, "sheave " + std::to_string(carrier), {}, drawn, carrier);
    std::vector<std::size_t> rope;
    for (const Pick& pick : picks) {
      rope.push_back(piece.legs.size());
      leg({carrier, {}, drawn}, name(), at_m(pick.x, pick.y, 0.0), at_m(pick.x, pick.y, 0.0), {});
    }
    piece.equalised.push_back(rope);
  }

  void hang_on_a_beam(const std::vector<Pick>& picks, const Holder& from, double x, double y) {
    ++beams_;
    const std::size_t carrier = piece.carriers.size();
    const auto half = static_cast<std::ptrdiff_t>(picks.size() / 2);
    const std::vector<Pick> left(picks.begin(), picks.begin() + half), right(picks.begin() + half, picks.end());
    const double half_length = std::max(0.3, 0.5 * (middle_x(right) - middle_x(left)));
    const double eye = dice_.between(0.02, 0.2), hole = dice_.between(-0.2, -0.02);
    piece.carriers.push_back({"beam", dice_.between(0.005, 0.1) * load_kN_ * kN, {}, false});
    const Position drawn = at_m(x, y, in(m, from.drawn.z) * dice_.between(0.35, 0.7));
    for (const double side : {-1.0, 1.0}) {
      const Position top = at_m(side * half_length, 0.0, eye);
      leg(from, "beam " + std::to_string(carrier), top, drawn + top, carrier);
    }
    const Position below_left = at_m(-half_length, 0.0, hole), below_right = at_m(half_length, 0.0, hole);
    hang(left, {carrier, below_left, drawn + below_left});
    hang(right, {carrier, below_right, drawn + below_right});
  }

  std::string name() { return "A" + std::to_string(++picks_); }

  Dice& dice_;
  double load_kN_ = 0.0, error_ = 0.0;
  int kind_ = 0, beams_ = 0, sheaves_ = 0, picks_ = 0;
};

}  // namespace firstpick::tests
