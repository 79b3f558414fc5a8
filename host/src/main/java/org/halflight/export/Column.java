package org.halflight.export;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Predicate;
import org.halflight.stats.Figure;

/**
 * A column of a table: its heading and what each row has in it. Figures have full precision and no
 * unit; a cell is empty where nothing is known.
 *
 * @param <R> what a row is made from
 */
record Column<R>(String name, Function<R, String> cell) {
  static List<String> names(List<? extends Column<?>> columns) {
    return columns.stream().<String>map(Column::name).toList();
  }

  static <R> Column<R> text(String name, Function<R, String> cell) {
    return new Column<>(name, cell);
  }

  static <R> Column<R> word(String name, Function<R, Optional<String>> cell) {
    return new Column<>(name, row -> cell.apply(row).orElse(""));
  }

  static <R> Column<R> yesNo(String name, Predicate<R> holds) {
    return new Column<>(name, row -> holds.test(row) ? "yes" : "no");
  }

  static <R> Column<R> count(String name, Function<R, Number> count) {
    return new Column<>(name, row -> String.valueOf(count.apply(row)));
  }

  static <R> Column<R> number(String name, Function<R, OptionalDouble> value) {
    return new Column<>(name, row -> digits(value.apply(row), 1));
  }

  static <R> Column<R> figure(String name, Function<R, Figure<Double>> value) {
    return number(name, row -> optional(value.apply(row).known()));
  }

  /** In milliseconds what is known in seconds. */
  static <R> Column<R> millis(String name, Function<R, OptionalDouble> seconds) {
    return new Column<>(name, row -> digits(seconds.apply(row), 1e3));
  }

  static OptionalDouble optional(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }

  static String whole(OptionalInt value) {
    return value.isPresent() ? String.valueOf(value.getAsInt()) : "";
  }

  private static String digits(OptionalDouble value, double times) {
    return value.isPresent() ? String.format(Locale.ROOT, "%.6f", value.getAsDouble() * times) : "";
  }
}
