// Words of the card: made inert, cut where they are too long, and the code of the fingerprint.

#include "card/content.hpp"

#include <catch2/catch.hpp>

#include <string>

#include "card/page.hpp"
#include "card/qr_code.hpp"
#include "card/typeset.hpp"

using namespace firstpick;

TEST_CASE("a name is cut at a whole character, and the cut shows") {
  CHECK(card::inert("short", 10) == "short");
  CHECK(card::inert("exactly 10", 10) == "exactly 10");
  CHECK(card::inert("eleven char", 10) == "eleven cha...");
  CHECK(card::inert("\xC3\xA9\xC3\xA9\xC3\xA9", 2) == "\xC3\xA9\xC3\xA9...");
  CHECK(card::inert("", 5) == "");
}

TEST_CASE("orders to terminals and readers are shown, not obeyed") {
  CHECK(card::inert("\x1b[31mred", 60) == "\\x1B[31mred");
  CHECK(card::inert("a\nb", 60).find('\n') == std::string::npos);
  CHECK(card::inert("\xE2\x80\xAEGO-ON", 60).find("\xE2\x80\xAE") == std::string::npos);
}

TEST_CASE("the code of a fingerprint fills its square but for the quiet margin") {
  const card::Rect square{10.0, 20.0, 90.0, 90.0};
  const auto modules = card::qr_code(std::string(64, 'a'), square);
  REQUIRE(modules.size() > 100);
  double low = 1e9, high = -1e9;
  for (const card::LineMark& module : modules)
    for (const card::Point& p : module.points) {
      CHECK(card::inside({p.x, p.y, 0.0, 0.0}, square));
      low = std::min(low, p.x), high = std::max(high, p.x);
    }
  const double margin = low - square.x;
  CHECK(margin ==
        Approx(square.x + square.width - high).margin(2.0));  // the corner marks reach both sides, to a dot
  CHECK(margin > 90.0 * 4 / (4 * 40 + 17 + 8));  // four modules, even of the largest code of ISO/IEC 18004
}

TEST_CASE("what is too long for a code has none") {
  CHECK(card::qr_code(std::string(5000, 'a'), {0.0, 0.0, 90.0, 90.0}).empty());
}

TEST_CASE("larger letters take more room, a narrower column more lines") {
  const card::Words small{.text = "take up the slack", .size = 8.0},
      large{.text = "take up the slack", .size = 16.0};
  CHECK(card::extent_of(large, 1000.0).width ==
        Approx(2.0 * card::extent_of(small, 1000.0).width).epsilon(0.01));
  CHECK(card::extent_of(small, 40.0).height >= 1.9 * card::extent_of(small, 1000.0).height);
}

TEST_CASE("what is ticked by hand before a strip lift asks for the form, before others not") {
  const auto strip = card::ticks_of(plan::StageKind::strip), yard = card::ticks_of(plan::StageKind::yard);
  CHECK(strip.size() == yard.size() + 1);
}
