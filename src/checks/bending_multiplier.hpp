// The handbook's equivalent load for bending of the piece, beside the loads computed one by one.
#pragma once

#include "checks/stage_facts.hpp"
#include "record/outcome.hpp"

namespace firstpick::checks {

// By how much the tension under the heaviest load set of the stage is to be raised so that it is not below that under the
// multiplier of the rule set: at least 1. Not assessed: a product that the rule set does not have.
Outcome<Ratio> bending_raise(const StageFacts& facts, Trace& trace);

// By how much more a lighter load set of the stage is to be raised, so that it too comes to the multiplier: at least 1. The
// grip of the form is spread otherwise than the weight, so that the heaviest set does not stand for all.
Ratio lighter_set_raise(const StageFacts& facts, Force total);

}  // namespace firstpick::checks
