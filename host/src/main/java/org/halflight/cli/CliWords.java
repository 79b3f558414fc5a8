package org.halflight.cli;

import java.util.Locale;

/** Values as they are typed: {@code as-found} for AS_FOUND. */
final class CliWords {
  private CliWords() {}

  static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
