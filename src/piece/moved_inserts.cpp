#include "piece/moved_inserts.hpp"

#include <exception>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {

std::variant<Body, std::vector<Diagnostic>> with_inserts_of(const Body& body, const plan::Plan& plan) {
  const auto gave_up = [&](const char* why) {
    return std::vector<Diagnostic>{
        {plan.file, plan.piece.place, fmt::format("the geometry kernel gave up on the piece: {}", why), ""}};
  };
  if (!body.assembly) return gave_up("its solid was not kept");
  try {
    std::vector<Diagnostic> faults;
    std::vector<InsertSite> sites = insert_sites(plan, *body.assembly, faults);
    if (!faults.empty()) return faults;
    Body moved = body;
    moved.sites = std::move(sites);
    return moved;
  } catch (const Standard_Failure& failure) {
    return gave_up(failure.GetMessageString());
  } catch (const std::exception& failure) {
    return gave_up(failure.what());
  }
}

}  // namespace firstpick::piece
