// A page on paper or screen.


#include <cmath>
#include <memory>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include "pictures/cairo_bytes.hpp"
#include "pictures/pango_words.hpp"
#include "card/pictures_module.hpp"

namespace firstpick::card {

namespace {

void paint_line(cairo_t* cairo, const LineMark& line) {
  if (line.points.size() < 2) return;
  cairo_move_to(cairo, line.points.front().x, line.points.front().y);
  for (const Point& p : line.points) cairo_line_to(cairo, p.x, p.y);
  if (line.fill >= 0.0) {
    cairo_set_source_rgb(cairo, line.fill, line.fill, line.fill);
    cairo_fill_preserve(cairo);
  }
  if (line.thick > 0.0) {
    const double dashes[] = {2.4, 1.8};
    cairo_set_dash(cairo, dashes, line.dashed ? 2 : 0, 0.0);
    cairo_set_line_width(cairo, line.thick);
    cairo_set_source_rgb(cairo, 0.0, 0.0, 0.0);
    cairo_stroke_preserve(cairo);
  }
  cairo_new_path(cairo);
}

void paint_text(cairo_t* cairo, PangoContext* context, const TextMark& text) {
  if (text.clears) {
    cairo_set_source_rgb(cairo, 1.0, 1.0, 1.0);
    cairo_rectangle(cairo, text.at.x, text.at.y, text.at.width, text.at.height);
    cairo_fill(cairo);
  }
  const double ink = text.words.white ? 1.0 : 0.0;
  cairo_set_source_rgb(cairo, ink, ink, ink);
  cairo_move_to(cairo, text.at.x, text.at.y);
  const PangoWords words = pango_words(context, text.words, text.at.width);
  pango_cairo_show_layout(cairo, words.get());
}

void paint_page(cairo_t* cairo, const Page& page) {
  const auto context = pango_context();
  cairo_set_source_rgb(cairo, 1.0, 1.0, 1.0);
  cairo_paint(cairo);
  cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
  for (const Box& box : page.boxes) {
    for (const LineMark& line : box.lines) paint_line(cairo, line);
    for (const TextMark& text : box.texts) paint_text(cairo, context.get(), text);
  }
}

cairo_surface_t* surface_for(const Page& page, Picture picture, const std::string& title,
                             std::string& bytes) {
  if (picture == Picture::png)
    return cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                      static_cast<int>(std::lround(page.width * dots_per_point)),
                                      static_cast<int>(std::lround(page.height * dots_per_point)));
  if (picture == Picture::svg)
    return cairo_svg_surface_create_for_stream(&pictures::append_bytes, &bytes, page.width, page.height);
  cairo_surface_t* pdf = cairo_pdf_surface_create_for_stream(&pictures::append_bytes, &bytes, page.width, page.height);
  cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATE_DATE, "");  // no clock: same page, same bytes
  return pdf;
}

Painted painted_page(const Page& page, Picture picture, const std::string& title) {
  Painted painted;
  const Painted failed{"", "the card could not be drawn"};
  const std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)> surface(
      surface_for(page, picture, title, painted.bytes), &cairo_surface_destroy);
  {
    const std::unique_ptr<cairo_t, void (*)(cairo_t*)> cairo(cairo_create(surface.get()), &cairo_destroy);
    if (picture == Picture::png) cairo_scale(cairo.get(), dots_per_point, dots_per_point);
    paint_page(cairo.get(), page);
    if (cairo_status(cairo.get()) != CAIRO_STATUS_SUCCESS) return failed;
  }
  if (picture == Picture::png &&
      cairo_surface_write_to_png_stream(surface.get(), &pictures::append_bytes, &painted.bytes) != CAIRO_STATUS_SUCCESS)
    return failed;
  cairo_surface_finish(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return failed;
  if (picture == Picture::svg) painted.bytes = pictures::without_surface_numbers(painted.bytes);
  return painted;
}

}  // namespace
}  // namespace firstpick::card

extern "C" [[gnu::visibility("default")]] void firstpick_paint(const firstpick::card::Page& page,
                                                                firstpick::card::Picture picture, const std::string& title,
                                                                firstpick::card::Painted& painted) {
  painted = firstpick::card::painted_page(page, picture, title);
}
