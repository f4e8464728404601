#include "strength/temperature_log.hpp"

#include "strength/maturity.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

using Texts = std::vector<std::string>;

auto read(const std::string& text, const std::string& sensor = "") {
  return strength::read_temperature_log("log.csv", text, sensor, *us_tables().maturity);
}

strength::TemperatureLog log_of(const std::string& text, const std::string& sensor = "") {
  auto result = read(text, sensor);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&result)) FAIL(show(faults->front()));
  return std::get<strength::TemperatureLog>(std::move(result));
}

Texts told(const std::vector<Diagnostic>& all) {
  Texts texts;
  for (const Diagnostic& each : all)
    texts.push_back(std::to_string(each.place.line) + ":" + std::to_string(each.place.column) + " " + each.what);
  return texts;
}

Texts faults_of(const std::string& text, const std::string& sensor = "") {
  const auto result = read(text, sensor);
  if (!std::holds_alternative<std::vector<Diagnostic>>(result)) FAIL("no fault");
  return told(std::get<std::vector<Diagnostic>>(result));
}

double hours_that_count(const strength::TemperatureLog& log) {
  Duration sum{};
  const plan::Timestamp start = log.readings.front().at;
  for (const auto& each : strength::curing_intervals(log, start, log.readings.back().at.seconds)) sum += each.length;
  return in(hour, sum);
}

const std::string good =
    "time,corner [degC]\n"
    "2026-03-02T16:30:00-05:00,18\n"
    "2026-03-02T17:00:00-05:00,20\n"
    "2026-03-02T17:30:00-05:00,24\n";

}  // namespace

TEST_CASE("a log without doubt") {
  const auto log = log_of(good);
  REQUIRE(log.readings.size() == 3);
  CHECK(log.sensor == "corner");
  CHECK(log.readings[1].temperature.value() == Approx(293.15));
  CHECK(log.readings[1].at.text == "2026-03-02 17:00 -05:00");
  CHECK(log.doubts.empty());
  CHECK(hours_that_count(log) == Approx(1.0));
}

TEST_CASE("the scale of the header is used: 68 degF is 20 degC, 293.15 K too") {
  const auto fahrenheit = log_of("time,a [degF]\n2026-03-02T16:30:00Z,68\n");
  const auto kelvin = log_of("time,a [K]\n2026-03-02T16:30:00Z,293.15\n");
  CHECK(fahrenheit.readings[0].temperature.value() == Approx(293.15));
  CHECK(kelvin.readings[0].temperature.value() == Approx(293.15));
}

TEST_CASE("a scale is never guessed") {
  CHECK(faults_of("time,corner\n2026-03-02T16:30:00Z,68\n") ==
        Texts{"1:6 the column 'corner' does not say its scale: degC, degF or K"});
  CHECK(faults_of("time,corner [psi]\n2026-03-02T16:30:00Z,68\n") ==
        Texts{"1:6 the column 'corner [psi]' does not say its scale: degC, degF or K"});
}

TEST_CASE("several sensors: one must be chosen, by its name") {
  const std::string two = "time;corner [degC];core [degC]\n2026-03-02T16:30:00Z;18;22\n";
  CHECK(faults_of(two) == Texts{"1:20 the log has several sensors, and none is chosen"});
  CHECK(faults_of(two, "middle") == Texts{"1:1 the header has no sensor 'middle'"});
  CHECK(log_of(two, "core").readings[0].temperature.value() == Approx(295.15));
}

TEST_CASE("a stamp without its zone, an impossible date, a cell that is no number: each with its place") {
  CHECK(faults_of("time,a [degC]\n2026-03-02T16:30:00,18\n2026-02-30T16:30:00Z,18\n2026-03-02T16:30:00Z,18.x\n"
                  "2026-03-02T16:40:00Z,\n2026-03-02T16:50:00Z,nan\n2026-03-02T17:00:00Z,\"18,5\"\n") ==
        Texts{"2:20 the zone is missing: without it an hour may count twice or not at all", "3:11 this is no date",
              "4:22 '18.x' is no reading", "5:22 the reading is missing", "6:22 'nan' is no reading",
              "7:22 '18,5' is no reading"});
}

TEST_CASE("rows and quotes that do not fit the header are faults") {
  CHECK(faults_of("time,a [degC]\n2026-03-02T16:30:00Z\n") == Texts{"2:1 this row has 1 cells, the header has 2"});
  CHECK(faults_of("time,a [degC]\n2026-03-02T16:30:00Z,\"18\n") ==
        Texts{"2:22 the quote of this cell does not end at the end of the cell"});
  CHECK(faults_of("") == Texts{"0:0 the file is empty: a header was expected"});
  CHECK(faults_of("time,a [degC]\n") == Texts{"0:0 the file has a header and no row"});
  CHECK(faults_of("when,a [degC]\n2026-03-02T16:30:00Z,18\n") == Texts{"1:1 the header has no column 'time', it has 'when'"});
  CHECK(faults_of("a [degC]\n18\n") == Texts{"1:1 the header has no column 'time'"});
}

TEST_CASE("comments, blank lines, quotes, a byte order mark and Windows line ends count for nothing") {
  const auto log = log_of("\xEF\xBB\xBF# plant\r\n\r\n\"time\",a [degC]\r\n\"2026-03-02T16:30:00Z\",\"18.5\"\r\n");
  REQUIRE(log.readings.size() == 1);
  CHECK(log.readings[0].temperature.value() == Approx(291.65));
}

TEST_CASE("a gap is told, and its time does not count") {
  const auto log = log_of(good + "2026-03-02T19:30:00-05:00,30\n2026-03-02T20:00:00-05:00,31\n");
  CHECK(told(log.doubts) ==
        Texts{"5:1 no reading for 2 h, since 2026-03-02 17:30 -05:00: this time does not count"});
  CHECK(hours_that_count(log) == Approx(1.5));
}

TEST_CASE("a repeated and a backward stamp are told, left out, and the time around them does not count") {
  const auto repeated = log_of(good + "2026-03-02T17:30:00-05:00,40\n2026-03-02T18:00:00-05:00,25\n");
  CHECK(told(repeated.doubts) ==
        Texts{"5:1 2026-03-02 17:30 -05:00 is the same moment as the reading above it, 2026-03-02 17:30 -05:00: this "
              "reading does not count"});
  CHECK(repeated.readings.size() == 4);
  CHECK(hours_that_count(repeated) == Approx(1.0));
  const auto backward = log_of(good + "2026-03-02T16:45:00-05:00,40\n2026-03-02T18:00:00-05:00,25\n");
  CHECK(told(backward.doubts) ==
        Texts{"5:1 2026-03-02 16:45 -05:00 is before the reading above it, 2026-03-02 17:30 -05:00: this reading does "
              "not count"});
  CHECK(hours_that_count(backward) == Approx(1.0));
}

TEST_CASE("a reading that no concrete has is told at its own cell, and the time around it does not count") {
  const auto log = log_of(good + "2026-03-02T18:00:00-05:00,999\n2026-03-02T18:30:00-05:00,25\n");
  CHECK(told(log.doubts) == Texts{"5:27 999 degC is no temperature of concrete: this reading does not count"});
  CHECK(log.readings.size() == 4);
  CHECK(hours_that_count(log) == Approx(1.0));
}

TEST_CASE("a sensor that does not change is dead: none of that time counts") {
  std::string text = "time,a [degC]\n2026-03-02T00:00:00Z,20\n";
  for (int i = 1; i <= 18; ++i)
    text += "2026-03-02T" + std::string(i / 2 < 10 ? "0" : "") + std::to_string(i / 2) + (i % 2 ? ":30" : ":00") +
            ":00Z,25\n";
  const auto log = log_of(text);
  CHECK(told(log.doubts) == Texts{"3:1 the readings from 2026-03-02 00:30 +00:00 on do not change for more than 8 h: "
                                  "this time does not count"});
  CHECK(hours_that_count(log) == Approx(0.5));
}

TEST_CASE("a sensor that holds its reading as long as the tables allow is in no doubt") {
  std::string text = "time,a [degC]\n";
  for (int i = 0; i <= 8; ++i) text += "2026-03-02T0" + std::to_string(i) + ":00:00Z,25\n";
  CHECK(log_of(text).doubts.empty());
  CHECK(told(log_of(text + "2026-03-02T08:00:01Z,25\n").doubts).size() == 1);
}

TEST_CASE("daylight saving: a log over either change is one hour after the other, by its offsets") {
  const auto spring = log_of(
      "time,a [degC]\n2026-03-29T01:30:00+01:00,18\n2026-03-29T03:00:00+02:00,19\n2026-03-29T03:30:00+02:00,20\n");
  CHECK(spring.doubts.empty());
  CHECK(hours_that_count(spring) == Approx(1.0));
  const auto autumn = log_of(
      "time,a [degC]\n2026-10-25T02:30:00+02:00,18\n2026-10-25T02:00:00+01:00,19\n2026-10-25T02:30:00+01:00,20\n");
  CHECK(autumn.doubts.empty());
  CHECK(hours_that_count(autumn) == Approx(1.0));
}

TEST_CASE("maturity stops at the last reading, starts at the pour, and cuts an interval by a straight line") {
  const auto log = log_of(good);
  const plan::Timestamp cast{log.readings[0].at.seconds + 900, true, "cast"};
  const auto far = strength::curing_intervals(log, cast, log.readings.back().at.seconds + 86400);
  REQUIRE(far.size() == 2);
  CHECK(in(minute, far[0].length) == Approx(15.0));
  CHECK(far[0].mean.value() == Approx(273.15 + 19.5));
  CHECK(in(minute, far[1].length) == Approx(30.0));
  CHECK(strength::curing_intervals(log, cast, cast.seconds).empty());
}

TEST_CASE("the sensors beside the named one are read too: what they do not read, and a dead one, are doubts") {
  const std::string head = "time,corner [degC],core [degF],humidity [%]\n";
  const auto beside = log_of(head + "2026-03-02T16:30:00Z,18,68,70\n2026-03-02T17:00:00Z,19,77,\n", "corner");
  CHECK(beside.doubts.empty());
  REQUIRE(beside.beside.size() == 1);  // a column without a scale of temperature is no sensor
  CHECK(beside.beside[0].sensor == "core");
  CHECK(beside.beside[0].readings[1].temperature.value() == Approx(298.15));

  const auto empty = log_of(head + "2026-03-02T16:30:00Z,18,,\n2026-03-02T17:00:00Z,19,x,\n", "corner");
  CHECK(told(empty.doubts) == Texts{"2:25 the sensor 'core' beside the one that is read: it has no reading here"});
  CHECK(told(log_of(head + "2026-03-02T16:30:00Z,18,-58,\n", "corner").doubts) ==
        Texts{"2:25 the sensor 'core' beside the one that is read: -50 degC is no temperature of concrete: this reading "
              "does not count"});

  std::string dead = head;
  for (int i = 0; i <= 18; ++i)
    dead += "2026-03-02T" + std::string(i / 2 < 10 ? "0" : "") + std::to_string(i / 2) + (i % 2 ? ":30" : ":00") + ":00Z," +
            std::to_string(20 + i) + ",77,\n";
  CHECK(told(log_of(dead, "corner").doubts) ==
        Texts{"2:1 the sensor 'core' beside the one that is read: the readings from 2026-03-02 00:00 +00:00 on do not "
              "change for more than 8 h: this time does not count"});
  // Stamps and gaps are those of the file, and told once.
  CHECK(told(log_of("time,a [degC],b [degC]\n2026-03-02T16:30:00Z,18,18\n2026-03-02T16:30:00Z,18,18\n"
                    "2026-03-02T19:30:00Z,18,19\n", "a").doubts).size() == 2);
}

TEST_CASE("the column of times as people call it: Time, Date/Time, TIMESTAMP, with or without a byte order mark") {
  for (const std::string name : {"Time", "TIME", "Date/Time", "date time", "DateTime", "Timestamp", "time_stamp", "\xEF\xBB\xBFTime",
                                 "\"Date and Time\""}) {
    CAPTURE(name);
    CHECK(log_of(name + ",a [degC]\n2026-03-02T16:30:00Z,18\n").readings[0].temperature.value() == Approx(291.15));
  }
  CHECK(faults_of("Date,Time,a [degC]\n2026-03-02,16:30,18\n") == Texts{"1:1 the date stands in a column of its own"});
  CHECK(faults_of("Time,Timestamp,a [degC]\n2026-03-02T16:30:00Z,1,18\n") ==
        Texts{"1:6 'Time' and 'Timestamp' are both columns of times"});
  const auto near = std::get<std::vector<Diagnostic>>(read("a [degC],Reading time (UTC)\n18,2026-03-02T16:30:00\n"));
  REQUIRE(near.size() == 1);
  CHECK(told(near) == Texts{"1:10 the header has no column 'time', it has 'Reading time (UTC)'"});
  CHECK(near[0].help == "did you mean 'time'? write a header such as: time,corner [degC]");
  // Time since the start is no moment: each cell says so.
  CHECK(faults_of("Time,a [degC]\n0.5,18\n") == Texts{"2:2 this is no date"});
  CHECK(faults_of("Time,a [degC]\n03/02/2026 16:30,18\n") == Texts{"2:3 this is no date"});
}

TEST_CASE("a scale as people write it: in parentheses, with a degree sign, never by its letter alone") {
  for (const std::string scale : {"(degC)", "[degC]", "(\u00B0C)", "[\u00B0C]", "(\u00B0 C)", "(\u2103)"}) {
    CAPTURE(scale);
    const auto log = log_of("Time,Temp " + scale + "\n2026-03-02T16:30:00Z,20\n", "Temp");
    CHECK(log.readings[0].temperature.value() == Approx(293.15));
  }
  for (const std::string scale : {"(degF)", "(\u00B0F)", "[\u00B0 F]", "[\u2109]"}) {
    CAPTURE(scale);
    const auto log = log_of("Time,Temp" + scale + "\n2026-03-02T16:30:00Z,68\n");
    CHECK(log.readings[0].temperature.value() == Approx(293.15));
    CHECK(log.sensor == "Temp");
  }
  CHECK(log_of("time,corner (north) (degC)\n2026-03-02T16:30:00Z,20\n").sensor == "corner (north)");

  struct Row {
    std::string heading, help;
  };
  const std::string form = "write a header such as: time,corner [degC]";
  for (const Row& row : {Row{"Temp (C)", "did you mean 'Temp [degC]'?"}, Row{"Temp [F]", "did you mean 'Temp [degF]'?"},
                         Row{"Temp (Celsius)", "did you mean 'Temp [degC]'?"}, Row{"Temp (deg C)", "did you mean 'Temp [degC]'?"},
                         Row{"Temp [\u00BAC]", "did you mean 'Temp [degC]'?"}, Row{"Temp [k]", "did you mean 'Temp [K]'?"},
                         Row{"Temp_F", "did you mean 'Temp [degF]'?"}, Row{"Temp \u00B0C", "did you mean 'Temp [degC]'?"},
                         Row{"Temp", form}, Row{"Temp (north)", form}, Row{"Temp [psi]", form}, Row{"(degC)", form}}) {
    CAPTURE(row.heading);
    for (const std::string sensor : {"", "Temp"}) {
      const auto faults = std::get<std::vector<Diagnostic>>(read("time," + row.heading + "\n2026-03-02T16:30:00Z,20\n", sensor));
      REQUIRE(faults.size() == 1);
      CHECK(faults[0].place.line == 1);
      if (sensor.empty() || row.help != form) {
        CHECK(told(faults) == Texts{"1:6 the column '" + row.heading + "' does not say its scale: degC, degF or K"});
        CHECK(faults[0].help == row.help);
      }
    }
  }
}

TEST_CASE("a column beside the sensor whose scale is only seemingly there refuses the file: it may be the coldest place") {
  CHECK(faults_of("time,corner [degC],core (C)\n2026-03-02T16:30:00Z,18,4\n", "corner") ==
        Texts{"1:20 the column 'core (C)' does not say its scale: degC, degF or K"});
  const auto log = log_of("time,corner [degC],core (\u00B0F),battery [V]\n2026-03-02T16:30:00Z,18,41,3\n", "corner");
  REQUIRE(log.beside.size() == 1);
  CHECK(log.beside[0].sensor == "core");
  CHECK(log.beside[0].readings[0].temperature.value() == Approx(278.15));
}

TEST_CASE("semicolons: decimals by a comma or a point, nothing that could be thousands or two numbers") {
  const auto log = log_of("time;a (\u00B0C)\n2026-03-02T16:30:00z;18,5\n2026-03-02t17:00:00z;19.5\n");
  CHECK(log.readings[0].temperature.value() == Approx(291.65));
  CHECK(log.readings[1].temperature.value() == Approx(292.65));
  CHECK(log.readings[0].at.text == "2026-03-02 16:30 +00:00");
  CHECK(faults_of("time;a [K]\n2026-03-02T16:30:00Z;1,293.15\n2026-03-02T16:40:00Z;2,9,3\n2026-03-02T16:50:00Z;,\n") ==
        Texts{"2:22 '1,293.15' is no reading", "3:22 '2,9,3' is no reading", "4:22 ',' is no reading"});
  // By commas, a decimal comma makes a cell too many.
  CHECK(faults_of("time,a [degC]\n2026-03-02T16:30:00Z,18,5\n") == Texts{"2:1 this row has 3 cells, the header has 2"});
}

TEST_CASE("tabs and letters that are no UTF-8 are told at their place") {
  CHECK(faults_of("time\ta [degC]\n") == Texts{"1:5 a tab parts no cells here"});
  CHECK(faults_of("time,a [\xB0" "C]\n") == Texts{"1:9 this byte is no visible text"});
}
