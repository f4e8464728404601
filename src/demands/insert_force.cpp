#include "demands/insert_force.hpp"

namespace firstpick::demands {

namespace {

Force along(const ForceVector& force, const Direction& d) {
  return d.x * force.x + d.y * force.y + d.z * force.z;
}

}  // namespace

InsertForce insert_force(const LegForce& leg, const piece::InsertSite& site) {
  const Force out = along(leg.on_insert, site.normal);
  InsertForce force;
  force.presses_in = out < Force{};
  force.tension = force.presses_in ? Force{} : out;
  force.shear = norm(leg.on_insert - site.normal * out);
  force.shear_u = along(leg.on_insert, site.u);
  force.shear_v = along(leg.on_insert, site.v);
  return force;
}

}  // namespace firstpick::demands
