#!/usr/bin/env bash
# The README's two commands, as a newcomer would give them: in a fresh clone, with a fresh environment and an empty home.
# By hand: `bash tests/fresh_machine.sh`. Needs git, Python, and for the second command Node.js and Chromium.
set -euo pipefail
checkout=$(cd "$(dirname "$0")/.." && pwd)
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
git clone -q "$checkout" "$place/clone"
mkdir "$place/home"
cd "$place/clone"
# pip and npm are told where the registries are by the machine's own settings, which are the one thing kept.
kept=$(env | grep -E '^(PIP_|NPM_CONFIG_|npm_config_|SSL_CERT|HTTPS?_PROXY|https?_proxy|NO_PROXY)' || true)
grep -E '^python3 -m venv ' README.md | while read -r command; do
  rm -rf .venv
  echo "\$ $command"
  # shellcheck disable=SC2086
  env -i PATH="$PATH" HOME="$place/home" LANG=C.UTF-8 $kept bash -ec "$command" </dev/null
done
git status --short
echo "Both commands have done what the README says, and left nothing in the checkout that git would see."
