// The plot of a pour.

#include <cmath>
#include <memory>
#include <numbers>

#include <cairo-svg.h>
#include <cairo.h>

#include "pictures/cairo_bytes.hpp"
#include "output/plot_marks.hpp"

namespace firstpick::output {
namespace {

void paint_mark(cairo_t* cairo, const PlotMark& mark) {
  const auto [x, y] = mark.points.front();
  const double dashes[] = {6, 4};
  cairo_set_source_rgb(cairo, mark.ink.r, mark.ink.g, mark.ink.b);
  cairo_set_dash(cairo, dashes, mark.dashed ? 2 : 0, 0);
  cairo_set_line_width(cairo, mark.thick);
  switch (mark.kind) {
    case PlotMark::Kind::words: {
      cairo_text_extents_t size;
      cairo_text_extents(cairo, mark.text.c_str(), &size);
      cairo_move_to(cairo, x - mark.back * size.x_advance, y);
      cairo_show_text(cairo, mark.text.c_str());
      break;
    }
    case PlotMark::Kind::stroke:
      cairo_move_to(cairo, x, y);
      for (const auto& [to_x, to_y] : mark.points) cairo_line_to(cairo, to_x, to_y);
      cairo_stroke(cairo);
      break;
    case PlotMark::Kind::ring:
      cairo_new_path(cairo);
      cairo_arc(cairo, x, y, 5, 0, 2 * std::numbers::pi);
      cairo_stroke(cairo);
      break;
  }
}

bool painted(const Plot& plot, bool svg, std::string& bytes) {
  const std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)> surface(
      svg ? cairo_svg_surface_create_for_stream(&pictures::append_bytes, &bytes, plot.width, plot.height)
          : cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(plot.width), static_cast<int>(plot.height)),
      &cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return false;
  {
    const std::unique_ptr<cairo_t, void (*)(cairo_t*)> cairo(cairo_create(surface.get()), &cairo_destroy);
    cairo_set_source_rgb(cairo.get(), 1.0, 1.0, 1.0);
    cairo_paint(cairo.get());
    cairo_select_font_face(cairo.get(), "sans-serif", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(cairo.get(), plot.text_size);
    for (const PlotMark& mark : plot.marks) paint_mark(cairo.get(), mark);
    if (cairo_status(cairo.get()) != CAIRO_STATUS_SUCCESS) return false;
  }
  if (!svg && cairo_surface_write_to_png_stream(surface.get(), &pictures::append_bytes, &bytes) != CAIRO_STATUS_SUCCESS)
    return false;
  cairo_surface_finish(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return false;
  if (svg) bytes = pictures::without_surface_numbers(bytes);
  return true;
}

}  // namespace
}  // namespace firstpick::output

extern "C" [[gnu::visibility("default")]] bool firstpick_paint_plot(const firstpick::output::Plot& plot, bool svg,
                                                                     std::string& bytes) {
  return firstpick::output::painted(plot, svg, bytes);
}
