#!/bin/sh
# The map of the RAM as a table: which file takes how much for which variables, how deep the stack went, what was never touched.
# $1: folder of the objects, compiled without link-time optimisation, which would join all files to one; $2: the linked ELF;
# $3: what test_memory printed about that ELF.
objects=$1
elf=$2
measured=$3

variables=$("${CROSS}size" "$elf" | awk 'NR == 2 { print $2 + $3 }')
figure() { sed -n "s/^# simulated: RAM of 2048 bytes: .* \([0-9]*\) $1.*/\1/p" "$measured"; }
stack=$(figure "stack at its deepest")
free=$(figure "never touched")

echo "| bytes | what | largest |"
echo "|---|---|---|"
rows=$(for object in "$objects"/*.o; do
  name=$(basename "$object" .o)
  bytes=$("${CROSS}size" "$object" | awk 'NR == 2 { print $2 + $3 }')
  largest=$("${CROSS}nm" -S --size-sort -r "$object" | awk '
    function value(hex,    i, n) { for (i = 1; i <= length(hex); i++) n = n * 16 + index("0123456789abcdef", substr(hex, i, 1)) - 1; return n }
    tolower($3) ~ /[bd]/ && value($2) >= 8 { sub(/\.[0-9]+$/, "", $4); list = list (list == "" ? "" : ", ") "`" $4 "` " value($2) }
    END { print list }')
  [ "$bytes" = 0 ] || echo "$bytes|$name|$largest"
done)
printf '%s\n' "$rows" | sort -t '|' -k1,1nr -k2,2 | awk -F '|' -v variables="$variables" '
  $1 >= 16 { printf "| %d | `%s` | %s |\n", $1, $2, $3; told += $1; next }
  { few = few (few == "" ? "" : ", ") "`" $2 "` " $1; rest += $1 }
  END {
    printf "| %d | less than 16 each | %s |\n", rest, few
    if (told + rest != variables) printf "| %d | by linking all at once | |\n", variables - told - rest
    printf "| **%d** | **variables** | |\n", variables
    if (told + rest - variables > 16 || variables - told - rest > 16) {
      printf "the files add up to %d bytes, not to %d\n", told + rest, variables
      exit 1
    }
  }' || exit 1
echo "| $stack | stack at its deepest, simulated | |"
echo "| $free | never touched, simulated | 128 are kept free |"
