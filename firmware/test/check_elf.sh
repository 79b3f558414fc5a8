#!/bin/sh
# Looks into the linked firmware for what must not and what must be there. Prints TAP lines.
elf=$1
number=0
failed=0
report() { # condition, name
  number=$((number + 1))
  if [ "$1" = 0 ]; then echo "ok $number - $2"; else echo "not ok $number - $2"; failed=1; fi
}
symbols=$("${CROSS}nm" "$elf") || exit 1

found=$(echo "$symbols" | grep -E '__u?div|__u?mod|__(add|sub|mul|div|cmp|fix|float|eq|ne|lt|gt|le|ge)u?n?s?[sdt]f|__float|__fix|printf')
test -z "$found"
report $? "no division, floating point or printf in the firmware"
[ -z "$found" ] || echo "# $found"

handlers=$(echo "$symbols" | grep -E ' T __vector_[0-9]+$' | sed 's/.* //' | sort | tr '\n' ' ')
test "$handlers" = "__vector_10 __vector_14 __vector_3 __vector_5 "
report $? "only the two pin change handlers, the capture handler and the one of the readings exist"

test "$(echo "$symbols" | awk '$3 == "snapshot_ring" || $3 == "capture_ring" { print substr($1, length($1) - 1) }' | tr '\n' ' ')" = "00 00 "
report $? "both rings stand on 256-byte boundaries"

test "$(echo "$symbols" | awk '$3 == "stream_ring" { print substr($1, length($1) - 1) }' | grep -cE '^(00|80)$')" = 1
report $? "the ring of the readings stands on a 128-byte boundary"

flag_users=$("${CROSS}objdump" -d "$elf" | awk '
  /<__vector_3>:|<__vector_5>:|<__vector_10>:|<capture_snapshot_now>:/ { inside = 1 }
  inside && /^$/ { inside = 0 }
  inside { print $0 }' | grep -cE '	(add|adc|adiw|sub|subi|sbc|sbci|sbiw|and|andi|or|ori|eor|com|neg|sbr|cbr|inc|dec|tst|clr|cp|cpc|cpi|lsl|lsr|rol|ror|asr|mul|bst|se[znvhtcs]|cl[znvhtcs])	')
test "$flag_users" = 0
report $? "no handler touches a flag that it does not save"

echo "1..$number"
exit $failed
