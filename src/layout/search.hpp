// The least value of a function over a box: everywhere first, then from the best few places; the same every time.
//
// Source   DIRECT-L: Gablonsky and Kelley, "A locally-biased form of the DIRECT algorithm", Journal of Global Optimization 21
//          (2001) 27-37; Sbplx after Rowan's Subplex (thesis, University of Texas at Austin, 1990); both as NLopt writes them
//          anew, GN_DIRECT_L and LN_SBPLX. Neither draws a random number.
#pragma once

#include <functional>
#include <vector>

namespace firstpick::layout {

using Places = std::vector<double>;
using Score = std::function<double(const Places&)>;  // less is better; finite

struct SearchBox {
  Places low, high, start;
  double accuracy = 0.0;  // places nearer than this are one place
};

struct Scored {
  Places places;
  double score = 0.0;
};

// Places far from each other that are each the best around them, best first.
std::vector<Scored> search(const Score& score, const SearchBox& box);

}  // namespace firstpick::layout
