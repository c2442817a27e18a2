#!/usr/bin/env bash
# Checks the browser page, and the printable sheet, in a headless Chromium:
# the page loads and asks no other machine for anything, controls moved by the
# keyboard change the finding, a redraw takes less than 50 ms, nothing runs off
# a telephone or off A4 paper, and axe-core finds nothing serious.
#
#   .ci/browser/run.sh [FOLDER]    screenshots go to FOLDER, if one is named
#
# As root it installs Chromium if it is missing. axe-core comes from npm into a
# folder that is thrown away; AXE=FILE uses an axe.min.js that is there already.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
pictures=${1:+$(mkdir -p "$1" && cd "$1" && pwd)}
cd "$here/../.."
go=$(command -v go || echo /usr/local/go/bin/go)
export PATH="$(dirname "$go"):$PATH"
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT

missing=()
command -v chromium >/dev/null 2>&1 || command -v chromium-browser >/dev/null 2>&1 || missing+=(chromium fonts-dejavu-core)
if [ -z "${AXE:-}" ] && ! command -v npm >/dev/null 2>&1; then missing+=(npm); fi
if [ ${#missing[@]} -gt 0 ]; then
	[ "$(id -u)" = 0 ] || { echo "not root; install these packages: ${missing[*]}"; exit 1; }
	export DEBIAN_FRONTEND=noninteractive
	apt-get update -qq
	apt-get install -y -qq --no-install-recommends "${missing[@]}" >"$tmp/apt" 2>&1 || { cat "$tmp/apt"; exit 1; }
fi
if [ -z "${AXE:-}" ]; then
	mkdir "$tmp/npm"
	cp "$here/package.json" "$tmp/npm/"
	(cd "$tmp/npm" && npm install --no-package-lock --no-audit --no-fund --ignore-scripts >"$tmp/npm.log" 2>&1) || { cat "$tmp/npm.log"; exit 1; }
	AXE=$tmp/npm/node_modules/axe-core/axe.min.js
fi
export AXE BROWSER=require PICTURES="$pictures"
go test -count=1 -timeout 5m -run '^TestInBrowser$' -v ./examples/browser
