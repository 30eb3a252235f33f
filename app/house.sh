# What app/start and tests/run share; sourced, not run. Sets `house`, the folder of the repository.
house=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

# The packages for "program" or for "tests" (which needs the program's too).
packages_for() {
  local name mark
  while read -r name mark; do
    case $name in '' | '#'*) continue ;; esac
    if [ -z "$mark" ] || [ "$1" = tests ]; then echo "$name"; fi
  done <"$house/app/packages.txt"
}

as_root() {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    echo "Packages are missing and neither root nor sudo is at hand. As root, run:" >&2
    echo "  apt-get install --no-install-recommends ${missing[*]}" >&2
    return 1
  fi
}

# Installs what is missing for "program" or "tests"; asks the network for nothing when nothing is.
install_missing() {
  local name log="$house/build/install.log"
  missing=()
  for name in $(packages_for "$1"); do
    dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null | grep -qx installed || missing+=("$name")
  done
  [ ${#missing[@]} -gt 0 ] || return 0
  echo "Installing ${#missing[@]} packages: ${missing[*]}"
  mkdir -p "$house/build"
  local apt=(env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 -q)
  if ! { as_root "${apt[@]}" update &&
    as_root "${apt[@]}" install -y --no-install-recommends "${missing[@]}"; } >"$log" 2> >(tee -a "$log" >&2); then
    tail -n 15 "$log" >&2
    echo "The packages could not be installed; the whole story is in $log." >&2
    return 1
  fi
}

# Configures (once) and builds a preset; further words are targets. Quiet unless it fails.
build_preset() {
  local preset=$1
  local folder="$house/build/$preset" log="$house/build/$preset.log" since=$SECONDS
  shift
  mkdir -p "$house/build"
  echo "Building ($preset)"
  if ! (cd "$house" &&
    { [ -f "$folder/build.ninja" ] || cmake --preset "$preset"; } &&
    cmake --build "$folder" ${1:+--target "$@"}) >"$log" 2>&1; then
    grep -E -A 4 'FAILED|error|Error' "$log" | head -n 60 >&2
    echo "The build failed; the whole story is in $log." >&2
    return 1
  fi
  echo "Built in $((SECONDS - since)) s"
}
