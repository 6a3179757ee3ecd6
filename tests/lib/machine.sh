# What the tests need of the machine, and installing it. Part of tests/run.sh.
# shellcheck shell=bash

postgres_bin() { find /usr/lib/postgresql -mindepth 3 -maxdepth 3 -name initdb 2>/dev/null | sort -V | tail -n 1 | xargs -r dirname; }
# Chromium's headless shell, the same engine without a browser's windows; a whole Chromium will do, and takes longer.
browser_shell=/usr/bin/chromium-headless-shell
browser() {
  if [ -n "${REEDCLINIC_TEST_BROWSER:-}" ]; then printf '%s' "$REEDCLINIC_TEST_BROWSER"
  elif [ -x "$browser_shell" ]; then printf '%s' "$browser_shell"
  else printf '%s' /usr/bin/chromium
  fi
}
symbols_font() { find /usr/share/fonts -name 'DejaVuSerif.ttf' 2>/dev/null | head -n 1; }

lacking_packages() {
  [ -x "$(browser)" ] || say chromium-headless-shell
  command -v sslscan > /dev/null || say sslscan
  [ -n "$(postgres_bin)" ] || say postgresql
  [ -n "$(symbols_font)" ] || say fonts-dejavu-core
  command -v pdftoppm > /dev/null || say poppler-utils
  command -v qpdf > /dev/null || say qpdf
}

# Quicker than a whole Chromium that is there already; where it can't be had, that one does.
install_quicker_browser() {
  if [ "$(id -u)" -eq 0 ] && [ -z "${REEDCLINIC_TEST_BROWSER:-}" ] && [ ! -x "$browser_shell" ] && command -v apt-get > /dev/null; then
    { apt-get -qq update && DEBIAN_FRONTEND=noninteractive apt-get -qq install --yes --no-install-recommends chromium-headless-shell; } \
      > tests/artifacts/apt-browser.log 2>&1 || say "No chromium-headless-shell here; the tests use $(browser)."
  fi
}

install_lacking() {
  local packages
  packages=$(lacking_packages | tr '\n' ' ')
  [ -n "$packages" ] || return 0
  if [ "$(id -u)" -ne 0 ] || ! command -v apt-get > /dev/null; then
    stop_here "this machine lacks the Debian packages: ${packages}(as root this script installs them)."
  fi
  say "Installing: $packages"
  # The package must not start a server of its own: the tests bring their own cluster.
  if [ ! -e /etc/postgresql-common/createcluster.conf ]; then
    mkdir -p /etc/postgresql-common
    say 'create_main_cluster = false' > /etc/postgresql-common/createcluster.conf
  fi
  export DEBIAN_FRONTEND=noninteractive UCF_FORCE_CONFFOLD=1
  # shellcheck disable=SC2086
  { apt-get -qq update && apt-get -qq install --yes --no-install-recommends $packages; } > tests/artifacts/apt.log 2>&1 ||
    stop_here "apt-get could not install: $packages(see tests/artifacts/apt.log)"
  packages=$(lacking_packages | tr '\n' ' ')
  [ -z "$packages" ] || stop_here "still lacking after the installation: $packages"
}

# Caddy, for the tests with two processes. Out of Debian's package and not installed: the package would start a server.
fetch_proxy() {
  local folder=$PWD/tests/artifacts/caddy
  if [ -n "${REEDCLINIC_TEST_CADDY:-}" ] || command -v caddy > /dev/null; then return 0; fi
  if [ ! -x "$folder/usr/bin/caddy" ]; then
    mkdir -p "$folder"
    { (cd "$folder" && { apt-get -qq download caddy || { apt-get -qq update && apt-get -qq download caddy; }; } && dpkg --extract caddy_*.deb .); } > tests/artifacts/caddy.log 2>&1 ||
      stop_here "this machine lacks Caddy, and its Debian package could not be fetched (tests/artifacts/caddy.log)."
  fi
  export REEDCLINIC_TEST_CADDY=$folder/usr/bin/caddy
}
