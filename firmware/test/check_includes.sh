#!/bin/sh
# A source file and its header are one part. Prints a TAP line: `not ok` when parts include each other in a circle, with one such circle.
cd "$1" || exit 1
circle=$(for file in *.[chS]; do
  sed -n "s|^#include \"\(.*\)\.h\".*|${file%.*} \1|p" "$file"
done | tsort 2>&1 > /dev/null)
if [ -z "$circle" ]; then echo "ok 1 - no parts include each other in a circle"; else
  echo "not ok 1 - no parts include each other in a circle"
  echo "$circle" | sed 's/^/# /'
fi
echo "1..1"
[ -z "$circle" ]
