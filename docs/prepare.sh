# What docs/try.sh and tests/run.sh share: the packages, and how a build directory is configured.
# Read by them, not run by itself. POSIX sh.

program_packages="g++ cmake ninja-build libboost-dev libfmt-dev libtomlplusplus-dev libeigen3-dev libcli11-dev
  nlohmann-json3-dev nettle-dev libcairo2-dev libpango1.0-dev libqrencode-dev libnlopt-dev pkgconf fonts-dejavu-core libsqlite3-dev
  libhowardhinnant-date-dev tzdata libocct-modeling-algorithms-dev libocct-data-exchange-dev"
test_packages="catch2 librapidcheck-dev poppler-utils zbar-tools calculix-ccx"

# install_packages program|tests : installs what is missing; if all is there, needs no network.
# On a system without Debian's packages it names what is needed and goes on: CMake finds it, or stops.
install_packages() {
  # The lists are split into words on purpose, here and below.
  # shellcheck disable=SC2086
  case $1 in
    program) set -- $program_packages ;;
    tests) set -- $program_packages $test_packages ;;
  esac
  if ! command -v dpkg-query >/dev/null 2>&1 || ! command -v apt-get >/dev/null 2>&1; then
    echo "This is not a Debian system. Needed, by the names of Debian 12:"
    echo "  $*"
    return 0
  fi
  missing=""
  for package in "$@"; do
    case "$(dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null)" in
      installed) ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0

  as_root=""
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      echo "Packages are missing. As root: apt-get install --no-install-recommends$missing"
      return 1
    fi
    as_root="sudo"
  fi
  echo "Installing:$missing"
  # shellcheck disable=SC2086
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q update &&
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y install --no-install-recommends $missing
}

processors() { nproc 2>/dev/null || getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2; }

# configure DIRECTORY OPTION... : a directory configured before keeps its generator.
configure() {
  directory=$1
  shift
  if [ ! -f "$directory/CMakeCache.txt" ] && command -v ninja >/dev/null 2>&1; then
    set -- -G Ninja "$@"
  fi
  cmake -S . -B "$directory" "$@"
}
