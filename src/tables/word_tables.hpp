// The tables whose keys are words that a plan writes: a finish, a steel, a kind of concrete, of sling, of
// hoist, of ground, of specimen. Each reads every word of its file and every value the word must have.
#pragma once

#include <map>
#include <string>

#include "tables/entry_reader.hpp"
#include "tables/tables.hpp"

namespace firstpick::tables {

std::map<std::string, FormFace> form_faces(EntryReader& read);
std::map<std::string, Steel> steels(EntryReader& read);
std::map<std::string, ConcreteKind> concretes(EntryReader& read);
std::map<std::string, SlingKind> slings(EntryReader& read);
std::map<std::string, Ground> grounds(EntryReader& read);
std::map<std::string, HoistClass> hoists(EntryReader& read);
std::map<std::string, SpecimenKind> specimens(EntryReader& read);
LegLimits leg_limits(EntryReader& read);  // reads the whole table
Wind wind(EntryReader& read);  // reads the whole table

}  // namespace firstpick::tables
