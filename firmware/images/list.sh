#!/bin/sh
# Writes the list of the images in this folder, images.tsv, from what was built. Run by `make images`.
set -e
cd "$(dirname "$0")"
version=$(sed -n 's/^#define FIRMWARE_VERSION "\(.*\)"$/\1/p' ../src/config.h)
echo '# The firmware that Halflight puts on a board. Written by `make -C firmware images`; do not edit.'
echo '# Rig, version, bytes in flash, file, SHA-256 of the file.'
for rig in full small starter; do
  bytes=$("${CROSS}size" "../build/$rig/rig.elf" | awk 'NR == 2 { print $1 + $2 }')
  printf '%s\t%s\t%s\t%s.hex\t%s\n' "$rig" "$version" "$bytes" "$rig" "$(sha256sum "$rig.hex" | cut -d ' ' -f 1)"
done
