#include "demands/node_ordering.hpp"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

namespace firstpick::demands {

std::vector<int> node_order(int columns, const int* first_of_column, const int* rows, int freedoms_of_node) {
  const int nodes = columns / freedoms_of_node;
  std::vector<Eigen::Triplet<double>> touching;
  for (int node = 0; node < nodes; ++node) {
    const int column = freedoms_of_node * node;
    int last = -1;
    for (int entry = first_of_column[column]; entry < first_of_column[column + 1]; ++entry) {
      const int other = rows[entry] / freedoms_of_node;
      if (other != last) touching.emplace_back(other, node, 1.0);
      last = other;
    }
  }
  Eigen::SparseMatrix<double> graph(nodes, nodes);
  graph.setFromTriplets(touching.begin(), touching.end());
  Eigen::AMDOrdering<int>::PermutationType order;
  Eigen::AMDOrdering<int>()(graph.selfadjointView<Eigen::Lower>(), order);
  std::vector<int> places;
  places.reserve(static_cast<std::size_t>(columns));
  for (int node = 0; node < nodes; ++node)
    for (int i = 0; i < freedoms_of_node; ++i) places.push_back(freedoms_of_node * order.indices()[node] + i);
  return places;
}

}  // namespace firstpick::demands
