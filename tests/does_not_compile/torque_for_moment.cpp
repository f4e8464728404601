// A bending moment is force x length; the torque of Boost.Units carries 1/radian and is something else.
#include <boost/units/systems/si/torque.hpp>

#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const Moment bending = 3.0 * kN * (2.0 * m);
#else
const Moment bending = boost::units::quantity<boost::units::si::torque>::from_value(6000.0);
#endif
