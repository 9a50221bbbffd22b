#!/usr/bin/env bash
# Speed beside R's survival package and Spark MLlib on the same lives, in one run. Run from the top folder after
#   mvn -q -pl model test-compile; apt-get install -y r-base-core r-cran-survival
# Arguments: lives (default 1000000), repetitions (default 7). A peer that is not there is left out, and said so. MLlib is fetched
# by Maven for this alone. The measured figures are in docs/benchmarks-survival.md.
set -euo pipefail
lives=${1:-1000000}
repetitions=${2:-7}
here=$(cd "$(dirname "$0")" && pwd)
top="$here/../../../.."
classes="$top/model/target/classes:$top/model/target/test-classes"
data=$(mktemp -d)
trap 'rm -rf "$data"' EXIT
machine() { echo "$(nproc) cores, $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -n 1), load $(cut -d' ' -f1-3 /proc/loadavg)"; }
ours() {
  java -cp "$classes" sensorrounds.regression.PeerBenchmark "$data/lives" "$lives" "$repetitions"
  java -cp "$classes" sensorrounds.turnbull.PeerBenchmark "$data/grid" 100000 "$repetitions"
  java -cp "$classes" sensorrounds.survival.CohortBenchmark 200 5000 3
}
# Its curve of intervals may take longer than anyone waits: that is said, and the rest goes on.
r() {
  command -v Rscript > /dev/null || { echo "R is not installed: left out"; return; }
  Rscript "$here/survival.R" lives "$data/lives" "$repetitions"
  timeout 120 Rscript "$here/survival.R" grid "$data/grid" || echo "R's survfit on the weekly grid: not ended after 120 s"
}
mllib() {
  mvn -q -B -ntp -f "$here/mllib/pom.xml" dependency:build-classpath -Dmdep.outputFile="$data/classpath" || return 1
  mapfile -t options < <(grep -v '^#' "$top/jobs/bin/jvm-options")
  java "${options[@]}" -Xmx6g -cp "$(cat "$data/classpath")" "$here/mllib/MllibPeer.java" "$data/lives" "$repetitions" 2> "$data/log" || { tail -n 5 "$data/log"; return 1; }
}
java -version 2>&1 | head -n 1
for round in 1 2; do
  echo "round $round: $(machine)"
  ours
  r
  mllib || echo "MLlib could not be run: left out"
done
machine
