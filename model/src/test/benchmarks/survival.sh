#!/usr/bin/env bash
# Speed beside R's survival package on the same lives, in one run. Run from the top folder after
#   mvn -q -pl model test-compile; apt-get install -y r-base-core r-cran-survival
# Arguments: lives (default 1000000), repetitions (default 7). The measured figures are in docs/benchmarks-survival.md.
set -euo pipefail
lives=${1:-1000000}
repetitions=${2:-7}
here=$(cd "$(dirname "$0")" && pwd)
classes="$here/../../../target/classes:$here/../../../target/test-classes"
data=$(mktemp -d)
trap 'rm -rf "$data"' EXIT
machine() { echo "$(nproc) cores, $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -n 1), load $(cut -d' ' -f1-3 /proc/loadavg)"; }
ours() {
  java -cp "$classes" sensorrounds.regression.PeerBenchmark "$data/lives" "$lives" "$repetitions"
  java -cp "$classes" sensorrounds.turnbull.PeerBenchmark "$data/grid" 100000 "$repetitions"
}
java -version 2>&1 | head -n 1
for round in 1 2; do
  echo "round $round: $(machine)"
  ours
  machine
  Rscript "$here/survival.R" "$data/lives" "$lives" "$repetitions" "$data/grid"
done
machine
