package org.halflight.drawing;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** The outline of an Uno class board beside the breadboard, with the sockets that are used. */
final class Uno {
  static final List<String> PINS = List.of("D7", "A0", "5V", "GND");
  private static final double TOP = 220;
  private static final double EDGE_COLUMN = 12.2;

  private Uno() {}

  static double x(DoubleUnaryOperator column) {
    return column.applyAsDouble(EDGE_COLUMN) - 16;
  }

  static double y(String pin) {
    return TOP + 130 + 52 * PINS.indexOf(pin);
  }

  static void draw(Svg svg, DoubleUnaryOperator column) {
    double right = column.applyAsDouble(EDGE_COLUMN);
    svg.rect(60, TOP, right - 60, 320, "#12506b", "#222", 1.5);
    svg.rect(36, TOP + 40, 80, 70, "#c9ced2", "#222", 1.5);
    svg.text(76, TOP + 80, 14, "middle", "#222", "USB");
    svg.text(220, TOP + 140, 17, "middle", "#fff", "Uno class board");
    svg.text(220, TOP + 164, 14, "middle", "#fff", "(not to scale: go by the");
    svg.text(220, TOP + 184, 14, "middle", "#fff", "names printed on it)");
    svg.text(220, TOP + 250, 14, "middle", "#fff", "D2 to D6: empty");
    for (String pin : PINS) {
      svg.rect(x(column) - 9, y(pin) - 9, 18, 18, "#1a1a1a", "#e8c45a", 1.5);
      svg.bold(x(column) - 18, y(pin) + 5, 15, "end", "#fff", pin);
    }
  }
}
