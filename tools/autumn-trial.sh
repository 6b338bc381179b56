#!/usr/bin/env bash
# Turns the open autumn trial into a CSV file that `foundress import jars` reads.
#
#   tools/autumn-trial.sh autumn-trial.csv > jars.csv
#   foundress import jars jars.csv --data ./trial
#
# The data: D. Aurell, C. Wall, S. Bruckner & G. R. Williams (2024), DOI 10.5281/zenodo.10612430, CC BY 4.0.
# Changes: apiary = trial arm; each row's three washes stay one jar; the number of bees is by weight.
# The table gives months and days only. YEAR (default 2021) is a placeholder for the year of the autumn days;
# days before July belong to the year after.
set -euo pipefail

if [ $# -lt 1 ] || [ ! -r "$1" ]; then
  echo "usage: [YEAR=2021] $0 autumn-trial.csv > jars.csv" >&2
  exit 2
fi

awk -F, -v year="${YEAR:-2021}" '
  { sub(/\r$/, "") }
  NR == 1 {
    for (i = 1; i <= NF; i++) at[$i] = i
    n = split("colony arm day month_day mites bees washes", needed, " ")
    for (i = 1; i <= n; i++)
      if (!(needed[i] in at)) {
        print "the column " needed[i] " is missing: this is not the trial table" > "/dev/stderr"
        failed = 2
        exit
      }
    print "apiary,colony,date,method,mites,bees,bees_basis,note"
    next
  }
  $at["mites"] == "" || $at["bees"] == "" {
    print "row " NR " has no jar and is left out" > "/dev/stderr"
    next
  }
  {
    split($at["month_day"], when, "-")
    printf "%s,%s,%04d-%s,alcohol-wash,%s,%s,weighed,\"day %s of the trial, %s washes\"\n", \
      $at["arm"], $at["colony"], year + (when[1] + 0 < 7), $at["month_day"], $at["mites"], $at["bees"], $at["day"], $at["washes"]
  }
  END { exit failed }
' "$1"
echo "Data: Aurell, Wall, Bruckner & Williams 2024, DOI 10.5281/zenodo.10612430, CC BY 4.0." >&2
