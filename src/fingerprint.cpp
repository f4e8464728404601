#include "fingerprint.hpp"

#include <array>
#include <cstdint>

#include <fmt/format.h>
#include <nettle/sha2.h>

#include "version.hpp"

namespace firstpick {

namespace {

// Each part goes in behind its length, so that no two different sets of parts give the same bytes.
void add(sha256_ctx& hash, std::string_view part) {
  const std::string length = fmt::format("{}:", part.size());
  sha256_update(&hash, length.size(), reinterpret_cast<const std::uint8_t*>(length.data()));
  sha256_update(&hash, part.size(), reinterpret_cast<const std::uint8_t*>(part.data()));
}

}  // namespace

std::string sha256_of(const std::vector<std::string_view>& parts) {
  sha256_ctx hash;
  sha256_init(&hash);
  for (const std::string_view part : parts) add(hash, part);
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&hash, digest.size(), digest.data());
  std::string text;
  for (const std::uint8_t byte : digest) text += fmt::format("{:02x}", byte);
  return text;
}

std::string fingerprint_of(std::string_view plan_text, std::string_view rules, const tables::Tables& tables) {
  return sha256_of({program_version, rules, plan_text, tables.content});
}

}  // namespace firstpick
