// A writer that is killed at any moment: the record verifies, and nothing that was acknowledged is lost.
//
// A child process appends and, after each append, tells the hash of the last row through a pipe, as the
// command prints it; it is killed (SIGKILL) a random time after none, one or two of them, a hundred times
// over the same record. In memory, where there is a disk of it: what a kill leaves behind is the same, and a
// slow disk would see few appends.

#include <random>

#include <sys/wait.h>
#include <unistd.h>
#include <csignal>

#include <catch2/catch.hpp>

#include "decision_log/decision_log.hpp"
#include "unit/decision_log/made_decisions.hpp"

using namespace firstpick::decision_log;
using namespace firstpick::tests;

namespace {

constexpr std::size_t hash_length = 64;

// Never comes back.
[[noreturn]] void append_for_ever(const std::string& file, int acknowledged) {
  for (int i = 0;; ++i) {
    const auto rows = append(file, made_decisions(1 + i % 3, i));
    const auto* written = std::get_if<std::vector<Row>>(&rows);
    if (!written) _exit(1);
    if (write(acknowledged, written->back().hash.data(), hash_length) != static_cast<ssize_t>(hash_length))
      _exit(2);
  }
}

// Until that many hashes have come; fewer if the child has ended.
std::string first_of(int descriptor, std::size_t hashes) {
  std::string text;
  char hash[hash_length];
  while (text.size() < hashes * hash_length) {
    const ssize_t got = read(descriptor, hash, hash_length);
    if (got <= 0) break;
    text.append(hash, static_cast<std::size_t>(got));
  }
  return text;
}

std::string rest_of(int descriptor) {
  std::string text;
  char part[4096];
  for (ssize_t got; (got = read(descriptor, part, sizeof part)) > 0;)
    text.append(part, static_cast<std::size_t>(got));
  return text;
}

}  // namespace

TEST_CASE("a hundred writers killed at random moments lose nothing that they acknowledged") {
  const RecordFile record("/dev/shm");
  REQUIRE(std::holds_alternative<std::vector<Row>>(append(record.path, made_decisions(1))));
  std::mt19937_64 random(20260303);
  std::uniform_int_distribution<useconds_t> microseconds(0, 25000);
  std::size_t acknowledged_in_all = 0, killed = 0;
  for (int round = 0; round < 100; ++round) {
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      close(ends[0]);
      append_for_ever(record.path, ends[1]);
    }
    close(ends[1]);
    std::string acknowledged = first_of(ends[0], static_cast<std::size_t>(round % 3));
    usleep(microseconds(random));
    REQUIRE(kill(child, SIGKILL) == 0);
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    killed += WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL ? 1U : 0U;
    acknowledged += rest_of(ends[0]);
    close(ends[0]);

    CAPTURE(round, acknowledged.size() / hash_length);
    const std::string head =
        acknowledged.size() >= hash_length
            ? acknowledged.substr((acknowledged.size() / hash_length - 1) * hash_length, hash_length)
            : std::string();
    acknowledged_in_all += acknowledged.size() / hash_length;
    const auto result = verify(record.path, head);
    REQUIRE(std::holds_alternative<Verified>(result));
    for (const Problem& problem : std::get<Verified>(result).problems)
      FAIL_CHECK(problem.number << ": " << problem.what);
  }
  CHECK(killed == 100);
  CHECK(acknowledged_in_all >= 99);
}
