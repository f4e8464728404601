#include "decision_log/decision.hpp"

#include <cstdint>

#include <fmt/format.h>
#include <nettle/sha2.h>

namespace firstpick::decision_log {

namespace {

void add(std::string& bytes, std::string_view name, std::string_view text) {
  bytes += fmt::format("{}={}:{}\n", name, text.size(), text);
}

}  // namespace

std::string canonical_bytes(const Row& row) {
  std::string bytes = fmt::format("firstpick decision {}\n", row.format);
  add(bytes, "number", std::to_string(row.number));
  add(bytes, "previous", row.previous);
  for (const Field& field : fields)
    if (field.since <= row.format) add(bytes, field.name, row.decision.*field.text);
  return bytes;
}

std::string hash_of(const Row& row) {
  const std::string bytes = canonical_bytes(row);
  sha256_ctx hash;
  sha256_init(&hash);
  sha256_update(&hash, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&hash, digest.size(), digest.data());
  std::string text;
  for (const std::uint8_t byte : digest) text += fmt::format("{:02x}", byte);
  return text;
}

}  // namespace firstpick::decision_log
