#!/usr/bin/env bash
# Times Ouzelbook beside base R on the same tables: processor seconds of the whole process, start and reading included.
# Usage: docs/speed/compare.sh path/to/ouzelbook
set -euo pipefail
program=$(realpath "$1"); here=$(dirname "$(realpath "$0")"); work=$(mktemp -d); cd "$work"
Rscript "$here/data.R"
seconds() { # runs a command, leaves its last line in the file "answer", prints user and system seconds
  local TIMEFORMAT='%U %S'
  { time "$@" > answer; } 2> took; awk 'END { printf "%.1f", $1 + $2 }' took
}
row() { # what, R's arguments, our arguments
  local ours r
  r=$(seconds Rscript "$here/fit.R" $2); cp answer r-answer
  ours=$(seconds "$program" $3)
  printf '| %s | %s | %s | %s |\n' "$1" "$r" "$ours" "$(awk -v a="$r" -v b="$ours" 'BEGIN { printf "%.1f", a / b }')"
  printf '<!-- R: %s -->\n' "$(tail -1 r-answer)" >&2
  grep -m 4 -A 8 '"part"' answer >&2 || true
}
echo '| what | base R, s | Ouzelbook, s | R over Ouzelbook |'
echo '|---|---|---|---|'
row 'line, 300 sites × 40 seasons, `glm`' 'glm counts-300.csv' 'estimate trend counts-300.csv --poisson --json'
row 'line, 10,000 sites × 40 seasons, `optim` on the profiled likelihood' 'line counts-10000.csv' 'estimate trend counts-10000.csv --poisson --json'
row 'occupancy, 2,000 sites × 20 seasons × 4 visits, `optim` with Hessian' 'occupancy visits-2000.csv' 'estimate occupancy visits-2000.csv --draws 0 --json'
rm -rf "$work"
