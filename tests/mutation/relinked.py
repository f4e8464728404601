"""Compiles some folders of src anew, from other sources or with other flags, and links the test programs of a build that
is there with them: everything else is taken as it was built. Neither the checkout nor that build is touched."""
import concurrent.futures
import hashlib
import json
import os
import re
import shlex
import subprocess


class Relinked:
    def __init__(self, root, build, out, folders, flags=(), dropped_flags=(), link_flags=(), src=None,
                 compiler=None):
        self.root, self.build, self.out, self.folders = root, build, out, folders
        self.flags, self.dropped, self.link_flags = list(flags), set(dropped_flags), list(link_flags)
        self.src, self.compiler = src or f"{root}/src", compiler
        self.units = []
        for entry in json.load(open(f"{build}/compile_commands.json")):
            words = shlex.split(entry["command"])
            made = words[words.index("-o") + 1]
            m = re.match(r"src/CMakeFiles/fp_(\w+)\.dir/", made)
            if m and m.group(1) in folders:
                self.units.append((m.group(1), made, words, entry["file"]))
        os.makedirs(f"{out}/tests", exist_ok=True)
        for name in ("lib", "share"):  # what programs look for beside themselves
            if os.path.isdir(f"{build}/{name}") and not os.path.islink(f"{out}/{name}"):
                os.symlink(f"{build}/{name}", f"{out}/{name}")

    def _command(self, words, source, made):
        """The compiler's words for another source, object and place of the folders; without the precompiled header."""
        new, i = [], 0
        while i < len(words):
            word = words[i]
            if word == "-include":
                i += 2
                continue
            if word == "-o":
                new += ["-o", made]
                i += 2
                continue
            if word == f"-I{self.root}/src" and self.src != f"{self.root}/src":
                new.append(f"-I{self.src}")
            if word not in self.dropped and word not in ("-Werror", "-Winvalid-pch") and word != words[-1]:
                new.append(word)
            i += 1
        if self.compiler:
            return [self.compiler] + new[1:] + ["-w"] + self.flags + [source]
        return new + ["-w", "-fmax-errors=0", "-fdiagnostics-plain-output"] + self.flags + [source]

    def _header(self, folder, words):
        """What is precompiled, once for each folder, for its flags are others now."""
        if "-include" not in words or self.compiler:
            return None
        header = f"{self.out}/{folder}/precompiled.hxx"
        if not os.path.exists(header + ".gch"):
            os.makedirs(os.path.dirname(header), exist_ok=True)
            text = open(words[words.index("-include") + 1]).read()
            open(header, "w").write(text)
            flags = [w for w in self._command(words, header, header + ".gch") if w != "-c"]
            subprocess.run(["nice", "-n", "10"] + flags[:-1] + ["-x", "c++-header", header], check=True, cwd=self.build)
        return header

    def _compile(self, unit):
        folder, made, words, source = unit
        made = f"{self.out}/{made}"
        os.makedirs(os.path.dirname(made), exist_ok=True)
        text = open(source).read()
        if "/Unity/" in source:  # a list of #include lines
            source = made[:-2] + ".cxx"
            open(source, "w").write(text.replace(f"{self.root}/src/", f"{self.src}/"))
        else:
            source = source.replace(f"{self.root}/src/", f"{self.src}/")
        header = self._header(folder, words)
        command = self._command(words, source, made)
        if header:
            command[1:1] = ["-include", header]
        command[1:1] = ["-MD", "-MF", made + ".d"]
        state = made + ".state"
        if os.path.exists(made) and os.path.exists(state) and open(state).read() == self._state(command, made + ".d"):
            return made, ""
        done = subprocess.run(["nice", "-n", "10"] + command, cwd=self.build, stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT, text=True)
        if done.returncode != 0:
            if os.path.exists(state):
                os.remove(state)
            return made, done.stdout or "compiler failed"
        open(state, "w").write(self._state(command, made + ".d"))
        return made, ""

    def _state(self, command, dependencies):
        whole = hashlib.sha256(" ".join(command).encode())
        for name in sorted(set(open(dependencies).read().replace("\\\n", " ").split()[1:])):
            if name.startswith((self.src, self.out, self.root)):
                whole.update(open(name, "rb").read())
        return whole.hexdigest()

    def compile(self, jobs):
        """What the compiler said of each unit that did not compile."""
        for folder, _, words, _ in self.units:
            self._header(folder, words)
        with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
            results = list(pool.map(self._compile, self.units))
        self.objects = {}
        for (folder, _, _, _), (made, _) in zip(self.units, results):
            self.objects.setdefault(folder, []).append(made)
        return [said for _, said in results if said]

    def link(self, programs):
        for folder, objects in self.objects.items():
            archive = f"{self.out}/libfp_{folder}.a"
            if os.path.exists(archive):
                if os.path.getmtime(archive) >= max(os.path.getmtime(o) for o in objects):
                    continue
                os.remove(archive)
            subprocess.run(["ar", "qc", archive] + objects, check=True)
            subprocess.run(["ranlib", archive], check=True)
        newest = max(os.path.getmtime(f"{self.out}/libfp_{folder}.a") for folder in self.objects)
        for program in programs:
            made, as_built = f"{self.out}/tests/{program}", f"{self.build}/tests/{program}"
            if os.path.exists(made) and os.path.getmtime(made) >= max(newest, os.path.getmtime(as_built)):
                continue
            said = subprocess.run(["ninja", "-C", self.build, "-t", "commands", program], check=True, text=True,
                                  stdout=subprocess.PIPE).stdout
            line = [l for l in said.split("\n") if f"-o tests/{program} " in l][-1]
            words = shlex.split(re.sub(r"^: && ", "", line).split(" && ")[0])
            words[words.index("-o") + 1] = f"{self.out}/tests/{program}"
            words = [f"{self.out}/libfp_{m.group(1)}.a" if (m := re.fullmatch(r"src/libfp_(\w+)\.a", w)) and
                     m.group(1) in self.folders else w for w in words]
            subprocess.run(words + self.link_flags, check=True, cwd=self.build)
