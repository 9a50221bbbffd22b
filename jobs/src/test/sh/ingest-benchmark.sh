#!/usr/bin/env bash
# All measurements of docs/benchmarks-ingest.md, one after the other, in about ten minutes on two cores.
# Usage: ingest-benchmark.sh BIG SMALL SCRATCH
#   BIG, SMALL  data folders of 20 and of 2 million readings, made by 'sensor-rounds simulate FOLDER --readings N'
#   SCRATCH     a folder to write in, on the same disk as BIG; some 8 GB, removed at the end
set -euo pipefail

big=$1
small=$2
scratch=$3
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
jobs=$(cd "$here/../../.." && pwd)
sensor_rounds=$jobs/bin/sensor-rounds
mkdir -p "$scratch"
trap 'rm -rf "$scratch"/five-years "$scratch"/store-of-all "$scratch"/one-file "$scratch"/work' EXIT

seconds() { # seconds LABEL COMMAND...: elapsed and processor time of a call, as its user meets it
  local label=$1
  shift
  TIMEFORMAT="| $label | %R s | %U + %S s |"
  time "$@" >"$scratch/last.log" 2>&1
}

"$sensor_rounds" --version # builds what must be built, and the class archive

echo "== calls of the launcher: $big"
logs=$scratch/five-years/visit-logs
mkdir -p "$logs"
cp -l "$big"/visit-logs/*.jsonl "$logs" 2>/dev/null || cp "$big"/visit-logs/*.jsonl "$logs"
seconds "all logs into an empty store" "$sensor_rounds" ingest --data "$scratch/five-years" --store "$scratch/store-of-all"
seconds "nothing new" "$sensor_rounds" ingest --data "$scratch/five-years" --store "$scratch/store-of-all"
# A day: some 13,000 readings, as many visits of another file under keys of their own.
head -n 2900 "$small/visit-logs/fleet-00001.jsonl" | sed 's/"visitId":"/&day-/' >"$logs/day.jsonl"
seconds "one day more" "$sensor_rounds" ingest --data "$scratch/five-years" --store "$scratch/store-of-all"
tail -n 1 "$scratch/last.log"
rm -rf "$scratch/store-of-all"

if ! [ "$jobs/target/test-classes/sensorrounds/run/IngestBenchmark.class" -nt "$jobs/src/test/java/sensorrounds/run/IngestBenchmark.java" ]; then
  mvn -q -B -f "$jobs/../pom.xml" test-compile
fi
classpath=$jobs/target/test-classes:$jobs/target/sensor-rounds.jar
for lib in "$jobs"/target/spark/*.jar; do classpath=$classpath:$lib; done
compare() { # compare DATA PASSES WHAT
  java @"$jobs/bin/jvm-options" -Xmx8g -XX:+UseParallelGC -cp "$classpath" \
    sensorrounds.run.IngestBenchmark "$1" "$scratch/work" "$2" "$3" 2>/dev/null
}

echo "== 2 million readings: bare Spark, store, table"
compare "$small" 3 table
echo "== 2 million readings: groupings by sensor, lives"
compare "$small" 5 lives
echo "== one file of 1 GB: one core, all cores"
mkdir -p "$scratch/one-file/visit-logs"
cat "$big"/visit-logs/*.jsonl | head -c 1073741824 | sed '$d' >"$scratch/one-file/visit-logs/all.jsonl" || true
compare "$scratch/one-file" 2 cores
echo "== 20 million readings: bare Spark, store"
compare "$big" 1 store
