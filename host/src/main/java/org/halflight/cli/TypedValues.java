package org.halflight.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.halflight.speeds.DecimalComma;
import org.halflight.words.Words;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Turns what was typed into values; what cannot be one is said in words of the person. */
final class TypedValues {
  private TypedValues() {}

  /** Has all commands use them. */
  static void in(CommandLine commands) {
    commands.registerConverter(Path.class, TypedValues::path);
    ITypeConverter<Integer> whole = text -> number("cli.noWholeNumber", text, Integer::valueOf);
    commands.registerConverter(Integer.class, whole);
    commands.registerConverter(int.class, whole);
    ITypeConverter<Long> longer = text -> number("cli.noWholeNumber", text, Long::valueOf);
    commands.registerConverter(Long.class, longer);
    commands.registerConverter(long.class, longer);
    ITypeConverter<Double> any = text -> number("cli.noNumber", text, TypedValues::finite);
    commands.registerConverter(Double.class, any);
    commands.registerConverter(double.class, any);
  }

  private static Path path(String text) {
    try {
      if (!text.isBlank()) {
        return Path.of(text);
      }
    } catch (InvalidPathException noName) {
      // Said below.
    }
    throw new TypeConversionException(Words.say("cli.noFileName", text));
  }

  private interface Reading<T> {
    T of(String text);
  }

  private static <T> T number(String otherwise, String text, Reading<T> reading) {
    try {
      return reading.of(text);
    } catch (NumberFormatException none) {
      throw new TypeConversionException(Words.say(otherwise, text));
    }
  }

  /** No rate, angle or time is endless. */
  private static double finite(String text) {
    double value = Double.parseDouble(DecimalComma.pointed(text));
    if (!Double.isFinite(value)) {
      throw new NumberFormatException(text);
    }
    return value;
  }
}
