#!/bin/sh
# The mite engine beside the same loop in C++ and NumPy, in one run. Needs g++; NumPy is left out where it is not installed.
set -eu
cd "$(dirname "$0")"
binary=$(mktemp)
trap 'rm -f "$binary"' EXIT
g++ -O3 -march=native -std=c++17 mites.cpp -o "$binary"
dotnet build MiteEngine.csproj -c Release -v q -nologo
"$binary"
dotnet run --project MiteEngine.csproj -c Release --no-build -- "${1:-all}" ${2:-}
for python in python3 /usr/bin/python3; do
  if "$python" -c 'import numpy' 2>/dev/null; then "$python" mites.py; exit; fi
done
echo "NumPy is not installed: left out"
