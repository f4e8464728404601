// How a straight line lies to the concrete: what of it would run inside, and how near it passes.
//
// A line that starts at an insert starts on the concrete. The face that the insert sits in, and what lies behind the plane
// of that face, is not "near"; a line that leaves a face behind whose plane all of the piece lies meets nothing at all, and
// the geometry kernel is not asked. Nor is it for a line outside the bounding box.
#pragma once

#include <memory>
#include <optional>

#include "piece/body.hpp"
#include "record/outcome.hpp"

namespace firstpick::piece {

struct LineInConcrete {
  Length inside_end{};            // of the line, inside, up to `end` from where it starts
  Length inside{};                // of the rest, inside
  std::optional<Length> nearest;  // of the rest to a face; empty: nothing nearer than `within`
  Position at;                    // where it enters, or is nearest
};

class ConcreteBeside {
 public:
  explicit ConcreteBeside(const Body& body);
  ~ConcreteBeside();
  ConcreteBeside(const ConcreteBeside&) = delete;
  ConcreteBeside& operator=(const ConcreteBeside&) = delete;

  // `site`: of the insert at `from`, if there is one. Not assessed: a line of no length or not finite; a piece whose solid
  // the kernel does not hold, or gives up on.
  Outcome<LineInConcrete> line(const Position& from, const Position& to, Length within, Length end = {},
                               const InsertSite* site = nullptr);

 private:
  struct Kernel;
  const Body& body_;
  std::unique_ptr<Kernel> kernel_;  // once it was asked
};

}  // namespace firstpick::piece
