// Orders the equations of a mesh by its nodes: all freedoms of a node touch the same others, so the approximate minimum
// degree of the nodes (Amestoy, Davis, Duff 1996, as Eigen has it) orders them as well, for a fraction of the work.
#pragma once

#include <vector>

namespace firstpick::demands {

// New place of each row. Both triangles of a symmetric matrix in compressed columns, `columns` of them, each node's freedoms
// one after the other; an entry that is zero is an entry too.
std::vector<int> node_order(int columns, const int* first_of_column, const int* rows, int freedoms_of_node);

}  // namespace firstpick::demands
