#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

Contact read_contact(const toml::table& table, Reading& reading) {
  Fields in(table, section("form.contact"), reading);
  Contact contact;
  contact.place = in.place();
  std::vector<Placed<std::string>> faces = in.names("faces"), all_but = in.names("all_but");
  if (in.has("faces") == in.has("all_but"))
    reading.faults.at(in.has("all_but") ? in.where("all_but") : in.where(),
                      in.has("faces") ? "'faces' and 'all_but' exclude each other"
                                      : "[[form.contact]] needs the key 'faces' or the key 'all_but'",
                      "for example: faces = \"barrel\", or all_but = [\"+z\"]");
  contact.faces.all_but = in.has("all_but");
  contact.faces.names = contact.faces.all_but ? std::move(all_but) : std::move(faces);
  contact.finish = in.word("finish");
  contact.draft = in.quantity<Angle>("draft");
  contact.adhesion = in.quantity<Stress>("adhesion");
  return contact;
}

Attached read_attached(const toml::table& table, Reading& reading) {
  Fields in(table, section("form.attached"), reading);
  Attached attached;
  attached.place = in.place();
  attached.what = in.line("what");
  attached.weight = in.quantity<Force>("weight").value_or(Force{});
  attached.at = in.xyz("at");
  attached.until = in.choice<StageKind>("until", stage_words);
  return attached;
}

}  // namespace

Form read_form(const toml::table& table, Reading& reading) {
  Fields in(table, section("form"), reading);
  Form form;
  form.place = in.place();
  form.product = in.line("product");
  form.released = in.yes_no("released").value_or(false);
  form.nothing_grips = in.is_empty_list("contact");
  form.nothing_attached = in.is_empty_list("attached");
  for (const toml::table* contact : in.each("form.contact"))
    form.contacts.push_back(read_contact(*contact, reading));
  for (const toml::table* attached : in.each("form.attached"))
    form.attached.push_back(read_attached(*attached, reading));
  return form;
}

}  // namespace firstpick::plan
