#include "audit_pipeline.hpp"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <map>
#include <mutex>
#include <set>
#include <thread>

#include "checks/words_on_bending.hpp"
#include "fingerprint.hpp"
#include "pipeline.hpp"
#include "plan/sign_off.hpp"
#include "tables/toml_file.hpp"

namespace firstpick {

namespace {

enum class What { plan, shift, strength };

// What does not parse, or says nothing of what it is, is told as a broken plan, never skipped.
What what_is(const std::string& text) {
  const auto parsed = tables::parse_toml("", text);
  const auto* table = std::get_if<toml::table>(&parsed);
  if (!table) return What::plan;
  const toml::node* piece = table->get("piece");
  if (piece && piece->is_table()) return What::plan;
  if (table->contains("starts") && table->contains("ends") && table->contains("zone")) return What::shift;
  const bool lifts = table->contains("stage") || table->contains("insert") || table->contains("rigging");
  const bool of_strength = table->contains("concrete") || table->contains("required") || table->contains("evidence") ||
                           table->contains("temperature_log");
  if (!piece && !lifts && of_strength) return What::strength;
  return What::plan;
}

struct Task {
  const AuditFile* file;
  std::optional<SignOffText> sign_off;
};

struct Answered {
  audit::Entry entry;
  std::vector<std::string> cautions, not_checked;
};

std::vector<Diagnostic> only(const std::string& file, std::string what) {
  return {Diagnostic{.file = file, .what = std::move(what)}};
}

// The module that reads STEP and STL files keeps state of its own: one plan at a time.
std::mutex mesh_files;  // NOLINT: guards that module only

Answered answer(const Task& task, const AuditQuestion& question, const tables::Tables& tables) {
  Answered answered;
  try {
    std::unique_lock<std::mutex> alone(mesh_files, std::defer_lock);
    if (task.file->text->find("mesh") != std::string::npos) alone.lock();
    const auto checked =
        check_plan_whole(task.file->path, *task.file->text, question.rules, tables, task.sign_off);
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&checked)) {
      answered.entry.faults = *faults;
      return answered;
    }
    const auto& whole = std::get<CheckedPlan>(checked);
    const auto& evidence = whole.plan.concrete.evidence;
    answered.entry = audit::entry_of(whole.report, evidence ? evidence->tested : std::nullopt, question.now_s,
                                     question.offset_s);
    answered.entry.bending = checks::words_on_bending(whole.plan, whole.report.stages);
    answered.entry.text_hash = sha256_of({*task.file->text});
    answered.cautions = whole.report.cautions;
    answered.not_checked = whole.report.not_checked;
  } catch (const std::exception& fault) {
    answered = {};
    answered.entry.faults = only(task.file->path, std::string("internal fault, no verdict: ") + fault.what());
  }
  return answered;
}

// Plans of the same bytes and sign-off are judged once; those that name other files only within their own folder.
std::string key_of(const Task& task) {
  const std::string& text = *task.file->text;
  const bool alone = text.find("mesh") != std::string::npos || text.find(".csv") != std::string::npos;
  std::string sign_off = task.sign_off ? task.sign_off->file + (task.sign_off->text ? "+" + *task.sign_off->text : "-") : "";
  return sha256_of({text, sign_off, alone ? task.file->path : std::string()});
}

void add_new(std::vector<std::string>& all, const std::vector<std::string>& more) {
  for (const std::string& each : more)
    if (std::ranges::find(all, each) == all.end()) all.push_back(each);
}

// The plan that has the text which was signed and no sign-off beside it; empty: none.
std::string plan_signed_by(const AuditFile& sign_off, const std::vector<audit::Entry>& entries,
                           const tables::Tables& tables) {
  if (!sign_off.text) return {};
  const auto read = plan::read_sign_off(sign_off.path, *sign_off.text, tables);
  const auto* was = std::get_if<plan::SignOff>(&read);
  if (!was) return {};
  for (const audit::Entry& entry : entries)
    if (entry.text_hash == was->plan && entry.sign_off.kind == checks::SignOffState::Kind::none) return entry.file;
  return {};
}

// Each answer in its place, whichever thread finds it.
std::vector<Answered> answers(const std::vector<Task>& tasks, const AuditQuestion& question,
                              const tables::Tables& tables,
                              const std::function<void(std::size_t, std::size_t)>& told) {
  std::vector<Answered> all(tasks.size());
  std::atomic<std::size_t> next{0};
  std::size_t done = 0;
  std::mutex telling;
  const auto work = [&] {
    for (std::size_t i = next++; i < tasks.size(); i = next++) {
      all[i] = answer(tasks[i], question, tables);
      const std::lock_guard<std::mutex> lock(telling);
      told(++done, tasks.size());
    }
  };
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < std::min(question.threads, tasks.size()); ++i) others.emplace_back(work);
  work();
  others.clear();  // waits for them
  return all;
}

}  // namespace

audit::Audit make_audit(const AuditQuestion& question, const tables::Tables& tables,
                        const std::function<void(std::size_t, std::size_t)>& told) {
  audit::Audit audit{.folder = question.folder, .made = question.made, .unread = question.unread};
  std::vector<const AuditFile*> files;
  std::map<std::string, const AuditFile*> sign_offs;
  for (const AuditFile& file : question.files)
    if (is_sign_off_file(file.path)) sign_offs[file.path] = &file;
    else files.push_back(&file);
  std::ranges::sort(files, {}, [](const AuditFile* file) { return file->name; });
  audit.sign_offs = sign_offs.size();
  std::set<std::string> used;

  std::vector<Task> tasks;                   // one for each distinct plan
  std::map<std::string, std::size_t> known;  // key -> task
  std::vector<std::optional<std::size_t>> task_of;
  for (const AuditFile* file : files) {
    const What what = file->text ? what_is(*file->text) : What::plan;
    if (what == What::shift) ++audit.shift_files;
    if (what == What::strength) ++audit.strength_files;
    if (what != What::plan) continue;
    audit.entries.push_back({.file = file->name});
    Task task{file, {}};
    const std::string beside = sign_off_file_of(file->path);
    if (const auto signed_by = sign_offs.find(beside); signed_by != sign_offs.end()) {
      task.sign_off = SignOffText{beside, signed_by->second->text};
      used.insert(beside);
    }
    if (!file->text) {
      audit.entries.back().faults = only(file->name, "the file cannot be read");
      task_of.emplace_back();
      continue;
    }
    const auto [place, is_new] = known.emplace(key_of(task), tasks.size());
    if (is_new) tasks.push_back(std::move(task));
    task_of.emplace_back(place->second);
  }
  const std::vector<Answered> judged = answers(tasks, question, tables, told);
  for (std::size_t i = 0; i < audit.entries.size(); ++i) {
    if (!task_of[i]) continue;
    audit::Entry entry = judged[*task_of[i]].entry;
    entry.file = audit.entries[i].file;
    for (Diagnostic& fault : entry.faults)
      if (fault.file == tasks[*task_of[i]].file->path) fault.file = entry.file;
    audit.entries[i] = std::move(entry);
    add_new(audit.cautions, judged[*task_of[i]].cautions);
    add_new(audit.not_checked, judged[*task_of[i]].not_checked);
  }
  audit::tell_same_pieces(audit.entries);
  for (const auto& [path, file] : sign_offs)
    if (!used.contains(path)) audit.orphans.push_back({file->name, plan_signed_by(*file, audit.entries, tables)});
  return audit;
}

}  // namespace firstpick
