#include "demands/insert_force.hpp"

namespace firstpick::demands {

namespace {

Force along(const ForceVector& force, const Direction& d) {
  return d.x * force.x + d.y * force.y + d.z * force.z;
}

// A pull along the face does not press, however its last bit falls.
constexpr double along_the_face = 1e-9;

}  // namespace

InsertForce insert_force(const LegForce& leg, const piece::InsertSite& site) {
  const Force out = along(leg.on_insert, site.normal);
  InsertForce force;
  force.presses_in = out < -along_the_face * norm(leg.on_insert);
  force.tension = out < Force{} ? Force{} : out;
  force.shear = norm(leg.on_insert - site.normal * out);
  force.shear_u = along(leg.on_insert, site.u);
  force.shear_v = along(leg.on_insert, site.v);
  return force;
}

}  // namespace firstpick::demands
