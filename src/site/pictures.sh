#!/usr/bin/env bash
# Makes the pictures of the pages in src/site/resources with the built program: results of shipped models, drawn by a browser,
# and the window on a virtual display. Needs chromium, Xvfb and ImageMagick (Debian: chromium, xvfb, imagemagick). About five minutes.
set -euo pipefail
cd "$(dirname "$0")/../.."
to=src/site/resources
work="$(mktemp -d)"
trap 'rm -rf "$work"; [[ -z "${xvfb:-}" ]] || kill "$xvfb"' EXIT
mkdir -p "$to"

quietband() { java -jar target/quietband.jar "$@" > /dev/null; }

# shoot FILE WIDTH HEIGHT NAME: a page or drawing as a PNG of few colours
shoot() {
  chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$work/browser" --window-size="$2,$3" \
    --screenshot="$work/shot.png" "file://$1" 2> /dev/null
  convert "$work/shot.png" -strip -background white -flatten -trim -bordercolor white -border 8 +dither -colors 96 "PNG8:$to/$4.png"
}

quietband assess models/ridge-relay.yaml --out "$work/assess"
shoot "$work/assess/report.html" 1280 750 report
shoot "$work/assess/chart-residual-z.svg" 1000 600 assess
quietband simulate models/ridge-relay.yaml --drive shock --axis z --out "$work/simulate"
shoot "$work/simulate/report.html" 1000 1300 simulate
quietband tolerance models/ridge-relay.yaml --units 2000 --out "$work/tolerance"
shoot "$work/tolerance/report.html" 1000 1160 tolerance
quietband compare models/trial-a.yaml models/trial-a-cured.yaml --out "$work/compare"
shoot "$work/compare/chart-residual-x.svg" 1000 600 compare
quietband springs models/trial-a.yaml --natural-frequency "90 Hz" --damping 0.2 --out "$work/springs"
shoot "$work/springs/sketch.svg" 1000 700 springs
quietband filter models/ridge-relay.yaml --form sections --count 2 --goal limit --out "$work/filter"
shoot "$work/filter/chart-region.svg" 1000 600 filter
quietband orient models/ridge-relay.yaml --out "$work/orient"
shoot "$work/orient/chart-orient.svg" 1000 600 orient
quietband trade models/trial-a.yaml --vary "platform.springs.corners.damping = 2 N*s/m to 14 N*s/m, 13 steps" \
  --vary "platform.springs.corners.stiffness = 8 N/mm to 20 N/mm, 13 steps" --out "$work/trade"
shoot "$work/trade/chart-margin.svg" 1000 700 trade
quietband shaker models/runs/ridge-shaker.csv --carrier "10 MHz" --out "$work/shaker"
shoot "$work/shaker/chart-1-z.svg" 1000 600 shaker
quietband sort models/lots/unsorted-lot.csv --limit "0.3 ppb/g" --bins "0.2 ppb/g, 0.3 ppb/g, 0.5 ppb/g" --out "$work/sort"
shoot "$work/sort/chart-lengths.svg" 1000 600 sort
quietband fit models/ridge-relay.yaml models/runs/ridge-built-shelf.csv --measured transmissibility \
  --free platform.springs.corners.stiffness,platform.springs.corners.loss_factor --out "$work/fit"
shoot "$work"/fit/chart-transmissibility-x*.svg 1000 600 fit

# the window: its only child on the virtual screen, once it has painted
Xvfb -displayfd 3 -screen 0 1280x860x24 -nolisten tcp 3> "$work/display" 2> /dev/null &
xvfb=$!
for ((i = 0; i < 100; i++)); do
  [[ -s "$work/display" ]] && break
  sleep 0.1
done
export DISPLAY=":$(cat "$work/display")"
java -jar target/quietband.jar window models/ridge-relay.yaml &
window=$!
sleep 20
import -window root "$work/window.png"
kill "$window"
convert "$work/window.png" -strip -trim +dither -colors 128 "PNG8:$to/window.png"
ls -l "$to"
