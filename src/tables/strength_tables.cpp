#include "tables/strength_tables.hpp"

#include <algorithm>

namespace firstpick::tables {

MaturityConstants maturity_constants(EntryReader& read) {
  const auto number = [&](std::string_view gives, std::string_view of) {
    return read.quantity<Ratio>(gives, Limit::positive, of);
  };
  const auto temperature = [&](std::string_view gives, std::string_view of) {
    return read.quantity<Temperature>(gives, Limit::positive, of);
  };
  constexpr std::string_view nurse_saul = "nurse-saul", en = "en-1992-1-1", log = "temperature log",
                             by_temperature = "freiesleben-hansen-pedersen", fit = "calibration",
                             arrhenius = "arrhenius";
  MaturityConstants constants{
      .reference = temperature("reference", "every function"),
      .datum_low = temperature("datum_low", nurse_saul),
      .datum_high = temperature("datum_high", nurse_saul),
      .activation_warm = number("activation_warm", by_temperature),
      .activation_slope = number("activation_slope", by_temperature),
      .gas_constant = number("gas_constant", by_temperature),
      .activation_threshold = temperature("activation_threshold", by_temperature),
      .en_constant = number("en_constant", en),
      .en_activation = number("en_activation", en),
      .en_zero = number("en_zero", en),
      .longest_gap = read.quantity<Duration>("longest_gap", Limit::positive, log),
      .frozen_after = read.quantity<Duration>("frozen_after", Limit::positive, log),
      .coldest = temperature("coldest", log),
      .hottest = temperature("hottest", log),
      .peak = temperature("peak", log),
      .colder_by = temperature("colder_by", log),
      .cured_low = temperature("cured_low", fit),
      .cured_high = temperature("cured_high", fit),
      .activation_low = temperature("activation_low", arrhenius),
      .activation_high = temperature("activation_high", arrhenius)};
  if (constants.datum_low.value > constants.datum_high.value)
    read.fault("datum_low", nurse_saul, "'datum_low' is above 'datum_high'");
  if (constants.coldest.value >= constants.hottest.value)
    read.fault("coldest", log, "'coldest' is not below 'hottest'");
  if (constants.cured_low.value >= constants.cured_high.value)
    read.fault("cured_low", fit, "'cured_low' is not below 'cured_high'");
  if (constants.activation_low.value >= constants.activation_high.value)
    read.fault("activation_low", arrhenius, "'activation_low' is not below 'activation_high'");
  read.refuse_others();
  return constants;
}

std::map<std::string, GrowthCurve> growth_curves(EntryReader& read) {
  std::map<std::string, GrowthCurve> curves;
  for (const std::string& word : read.words()) {
    if (read.has("band_age", word) || read.has("band_low", word)) continue;
    GrowthCurve curve{.key = word};
    if (read.has("en_s", word)) {
      curve.en_s = read.quantity<Ratio>("en_s", Limit::positive, word);
    } else {
      curve.aci_a = read.quantity<Duration>("aci_a", Limit::positive, word);
      curve.aci_beta = read.quantity<Ratio>("aci_beta", Limit::positive, word);
    }
    curves.emplace(word, std::move(curve));
  }
  return curves;
}

std::vector<GrowthBand> growth_bands(EntryReader& read) {
  std::vector<GrowthBand> bands;
  for (const std::string& word : read.words()) {
    if (!read.has("band_age", word) && !read.has("band_low", word)) continue;
    GrowthBand band{.key = word,
                    .band_age = read.quantity<Duration>("band_age", Limit::positive, word),
                    .band_low = read.quantity<Ratio>("band_low", Limit::positive, word),
                    .band_middle = read.quantity<Ratio>("band_middle", Limit::positive, word),
                    .band_high = read.quantity<Ratio>("band_high", Limit::positive, word)};
    if (band.band_low.value > band.band_middle.value || band.band_middle.value > band.band_high.value)
      read.fault("band_low", word, "the band is not in rising order");
    bands.push_back(std::move(band));
  }
  std::ranges::stable_sort(bands, {}, [](const GrowthBand& band) { return band.band_age.value.value(); });
  return bands;
}

AcceptanceLimits acceptance_limits(EntryReader& read) {
  constexpr std::string_view of = "aci-318 acceptance";
  AcceptanceLimits limits{.run_length = read.quantity<Ratio>("run_length", Limit::whole, of),
                          .least_results = read.quantity<Ratio>("least_results", Limit::whole, of),
                          .single_drop = read.quantity<Stress>("single_drop", Limit::positive, of),
                          .drop_up_to = read.quantity<Stress>("drop_up_to", Limit::positive, of),
                          .share_above = read.quantity<Ratio>("share_above", Limit::at_most_one, of),
                          .d2_of_two = read.quantity<Ratio>("d2_of_two", Limit::at_least_one, of),
                          .d2_of_three = read.quantity<Ratio>("d2_of_three", Limit::at_least_one, of)};
  read.refuse_others();
  return limits;
}

}  // namespace firstpick::tables
