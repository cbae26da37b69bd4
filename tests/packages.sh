# Installs the Debian or Ubuntu packages that cahier needs. Sourced by the scripts that build.

build_packages="g++ cmake ninja-build pkg-config libhpdf-dev libyaml-cpp-dev libcli11-dev libfmt-dev nlohmann-json3-dev libutfcpp-dev libfreetype-dev libpugixml-dev libzip-dev fonts-noto-core"
test_packages="catch2 clang-format poppler-utils qpdf binutils"
long_packages="minizinc"  # with Gecode, for tests/exact

# need PACKAGE…: installs those that are missing, as root or with sudo.
need() {
  missing=""
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q "ok installed" ||
      missing="$missing $package"
  done
  [ -z "$missing" ] && return 0
  if ! command -v apt-get >/dev/null; then
    echo "These packages are missing, and there is no apt-get here to install them:$missing" >&2
    exit 3
  fi
  if [ "$(id -u)" = 0 ]; then
    as_root=""
  elif command -v sudo >/dev/null; then
    as_root="sudo"
  else
    echo "These packages are missing:$missing" >&2
    echo "Installing them takes root or sudo, and neither is here. Ask whoever keeps this machine." >&2
    exit 3
  fi
  echo "Installing:$missing"
  # shellcheck disable=SC2086
  $as_root env DEBIAN_FRONTEND=noninteractive sh -c \
    "apt-get update -qq && apt-get install -y -qq --no-install-recommends $missing" >/dev/null || {
    echo "The packages could not be installed; the lines above say why." >&2
    exit 3
  }
}

# writable FOLDER: ends the script with words when nothing can be written there.
writable() {
  if ! (: >"$1/.cahier-writable") 2>/dev/null; then
    echo "The folder $(cd "$1" && pwd) cannot be written, and the build puts its files there." >&2
    echo "Copy the whole folder to a place of your own, and run the script from the copy." >&2
    exit 3
  fi
  rm -f "$1/.cahier-writable"
}
