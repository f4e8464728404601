// How much room words take, as Pango sets them.


#include <cmath>

#include "pictures/pango_words.hpp"
#include "card/pictures_module.hpp"

namespace firstpick::card {

std::unique_ptr<PangoContext, void (*)(gpointer)> pango_context() {
  PangoFontMap* map = pango_cairo_font_map_get_default();
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map), 72.0);
  std::unique_ptr<PangoContext, void (*)(gpointer)> context(pango_font_map_create_context(map),
                                                            &g_object_unref);
  cairo_font_options_t* plain = cairo_font_options_create();
  cairo_font_options_set_hint_style(plain, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(plain, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(plain, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), plain);
  cairo_font_options_destroy(plain);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  pango_context_set_base_dir(context.get(), PANGO_DIRECTION_LTR);
  return context;
}

PangoWords pango_words(PangoContext* context, const Words& words, double width) {
  PangoWords layout(pango_layout_new(context), &g_object_unref);
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family_static(font, words.fixed ? "DejaVu Sans Mono" : "DejaVu Sans");
  pango_font_description_set_weight(font, words.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font, words.size * PANGO_SCALE);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  // A name or a fingerprint that is broken gets no dash that is not its own.
  PangoAttrList* attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_insert_hyphens_new(FALSE));
  pango_layout_set_attributes(layout.get(), attributes);
  pango_attr_list_unref(attributes);
  pango_layout_set_auto_dir(layout.get(), FALSE);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  pango_layout_set_alignment(layout.get(), words.align == Align::left     ? PANGO_ALIGN_LEFT
                                           : words.align == Align::centre ? PANGO_ALIGN_CENTER
                                                                          : PANGO_ALIGN_RIGHT);
  pango_layout_set_width(layout.get(), static_cast<int>(std::ceil(width * PANGO_SCALE)));
  pango_layout_set_text(layout.get(), words.text.data(), static_cast<int>(words.text.size()));
  return layout;
}

}  // namespace firstpick::card

extern "C" [[gnu::visibility("default")]] void firstpick_extent_of(const firstpick::card::Words& words, double width,
                                                                    firstpick::card::Extent& extent) {
  using namespace firstpick::card;
  static const auto context = pango_context();
  const PangoWords layout = pango_words(context.get(), words, width);
  int wide = 0, high = 0;
  pango_layout_get_size(layout.get(), &wide, &high);
  extent = {static_cast<double>(wide) / PANGO_SCALE, static_cast<double>(high) / PANGO_SCALE};
}
