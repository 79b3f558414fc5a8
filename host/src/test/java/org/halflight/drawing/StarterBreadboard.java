package org.halflight.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The starter rig on a breadboard, step by step. A breadboard joins the holes a to e of a column,
 * the holes f to j of it, and all holes of a rail.
 */
final class StarterBreadboard {
  /** Both sides of a Nano class board from its USB socket on, from memory. */
  private static final List<String> FAR_SIDE =
      List.of(
          "D12", "D11", "D10", "D9", "D8", "D7", "D6", "D5", "D4", "D3", "D2", "GND", "RST", "D0",
          "D1");

  private static final List<String> NEAR_SIDE =
      List.of(
          "D13", "3V3", "AREF", "A0", "A1", "A2", "A3", "A4", "A5", "A6", "A7", "5V", "RST", "GND",
          "VIN");

  private static final char FAR_ROW = 'h';
  private static final char NEAR_ROW = 'd';
  private static final String ROWS = "jihgf  edcba";
  private static final int COLUMNS = 30;
  private static final double PITCH = 26;
  private static final double TOP = 218;
  private static final int WIDTH = 1130;
  private static final int HEIGHT = 700;

  /** To the right of these are other things. */
  private static final List<String> LEFT_OF_THE_HOLE = List.of("j6", "b4", "a22");

  private static final String NEW = "#ffd54a";
  private static final String RED = "#c62828";
  private static final String BLACK = "#222";
  private static final String BLUE = "#1565c0";
  private static final String GREEN = "#2e7d32";
  private static final String VIOLET = "#6a1b9a";
  private static final String GREY = "#777";

  /** What is pushed into the breadboard. */
  private sealed interface Part {}

  /** The board, pushed in over columns 1 to 15. */
  private record NanoBoard() implements Part {}

  /** The board, beside the breadboard. */
  private record UnoBoard() implements Part {}

  /** A wire on its way; {@code over} are places between its ends, in columns and rows. */
  private record Wire(String from, String to, String colour, List<Double> over) implements Part {
    Wire(String from, String to, String colour, double... over) {
      this(from, to, colour, Arrays.stream(over).boxed().toList());
    }
  }

  /** A part with two legs, lying between two holes. */
  private record TwoLegs(String name, String from, String to, String label) implements Part {}

  /** The photodiode at the end of two leads. */
  private record Photodiode(String cathode, String anode) implements Part {}

  /** A socket for the release, at the end of two leads. */
  private record Release(String signal, String ground) implements Part {}

  /**
   * One picture.
   *
   * @param words what to do
   * @param added the parts that are new in it
   */
  record Step(String name, String title, List<String> words, List<Part> added) {}

  private static final List<Part> DIVIDER =
      List.of(
          new TwoLegs("resistor", "c22", "c18", "22, 47 or 100 k"), new Wire("a18", "-18", BLACK));

  private static final Part CAPACITOR = new TwoLegs("capacitor", "d22", "d18", "1 nF");
  private static final Part DIODE = new Photodiode("+27", "a22");

  /** The steps in order; the last one is optional. */
  static final List<Step> STEPS =
      List.of(
          new Step(
              "starter-1",
              "1  The board",
              List.of(
                  "Leave the USB cable out until the last picture. Push the board into the holes d1 to d15 and h1 to h15,",
                  "its USB socket to the left. Compare the names printed on your board with these: go by the names."),
              List.of(new NanoBoard())),
          new Step(
              "starter-2",
              "2  Supply",
              List.of(
                  "Red wire: from a12, the column of 5V, to the red rail +. Take 5V, not VIN and not 3V3.",
                  "Black wire: from a14, the column of GND, to the blue rail −. Never both in one rail: that is a short."),
              List.of(new Wire("a12", "+12", RED), new Wire("a14", "-14", BLACK))),
          new Step(
              "starter-3",
              "3  Resistor",
              List.of(
                  "Resistor from c18 to c22, either way round. The table of lamps says which: 22, 47 or 100 k.",
                  "Black wire: from a18 to the blue rail −."),
              DIVIDER),
          new Step(
              "starter-4",
              "4  Capacitor",
              List.of(
                  "Capacitor of 1 nF (marked 102) from d18 to d22, either way round.",
                  "It lies beside the resistor: both join the same two columns."),
              List.of(CAPACITOR)),
          new Step(
              "starter-5",
              "5  Light to A0 and to D7",
              List.of(
                  "Green wire: from b4, the column of A0, to b22.",
                  "Violet wire: from j6, the column of D7, across the middle to e22."),
              List.of(
                  new Wire("b4", "b22", GREEN, 4, 10.45, 22, 10.45),
                  new Wire("j6", "e22", VIOLET, 6, -0.55, 22.4, -0.55, 22.4, 6.3))),
          new Step(
              "starter-6",
              "6  Photodiode",
              List.of(
                  "Two leads of 20 to 30 cm, twisted. Cathode (the leg with the mark) to the red rail +, anode to a22.",
                  "Then go over all six pictures once more, and only then plug in the USB cable."),
              List.of(DIODE)),
          new Step(
              "starter-7",
              "7  Release (leave it out if you like)",
              List.of(
                  "Blue wire: from j1, the column of D12, to j25. 1 k from h25 to h29. Release socket: j29 and the blue rail −.",
                  "Cable out first. Touch bare metal before you plug anything in. Only a switch goes there, never a flash cable."),
              List.of(
                  new Wire("j1", "j25", BLUE, 1, -1.05, 25, -1.05),
                  new TwoLegs("release resistor", "h25", "h29", "1 k"),
                  new Release("j29", "-29"))));

  /** The same with the board beside the breadboard; everything at once. */
  static final Step UNO =
      new Step(
          "starter-uno",
          "With an Uno class board: all of it",
          List.of(
              "The board lies beside the breadboard, on nothing that conducts. Four jumper wires go to its sockets:",
              "5V to the red rail +, GND to the blue rail −, A0 to b22, D7 to e22. The rest is as in pictures 3, 4 and 6."),
          List.of(
              new UnoBoard(),
              DIVIDER.get(0),
              DIVIDER.get(1),
              CAPACITOR,
              new Wire("5V", "+16", RED, 14.2, 13),
              new Wire("GND", "-16", BLACK, 13.4, 14),
              new Wire("A0", "b22", GREEN, 15, 10.45, 22, 10.45),
              new Wire("D7", "e22", VIOLET, 15, 5.5, 22, 5.5),
              DIODE));

  private final Svg svg;
  private final int firstColumn;

  private StarterBreadboard(Svg svg, int firstColumn) {
    this.svg = svg;
    this.firstColumn = firstColumn;
  }

  /** All parts up to a step of {@link #STEPS}, or those of {@link #UNO}. */
  static List<Part> parts(Step step) {
    List<Part> parts = new ArrayList<>();
    for (Step each :
        STEPS.contains(step) ? STEPS.subList(0, STEPS.indexOf(step) + 1) : List.of(step)) {
      parts.addAll(each.added());
    }
    return parts;
  }

  /** How many wires there are without the leads of photodiode and release. */
  static int wires() {
    return (int) parts(STEPS.get(STEPS.size() - 1)).stream().filter(Wire.class::isInstance).count();
  }

  /** What is joined after a step. */
  static Netlist netlist(Step step) {
    Netlist netlist = new Netlist();
    for (Part part : parts(step)) {
      if (part instanceof NanoBoard) {
        for (int i = 0; i < FAR_SIDE.size(); i++) {
          netlist.leg(FAR_SIDE.get(i), point("" + FAR_ROW + (i + 1)));
          netlist.leg(NEAR_SIDE.get(i), point("" + NEAR_ROW + (i + 1)));
        }
      } else if (part instanceof UnoBoard) {
        Uno.PINS.forEach(pin -> netlist.leg(pin, pin));
      } else if (part instanceof Wire wire) {
        netlist.wire(point(wire.from), point(wire.to));
      } else if (part instanceof TwoLegs two) {
        netlist.leg(two.name + " 1", point(two.from)).leg(two.name + " 2", point(two.to));
      } else if (part instanceof Photodiode diode) {
        netlist.leg("photodiode cathode", point(diode.cathode));
        netlist.leg("photodiode anode", point(diode.anode));
      } else if (part instanceof Release release) {
        netlist.leg("release signal", point(release.signal));
        netlist.leg("release ground", point(release.ground));
      }
    }
    return netlist;
  }

  /** The holes that are filled after a step, one for each leg and each end of a wire. */
  static List<String> holes(Step step) {
    List<String> holes = new ArrayList<>();
    for (Part part : parts(step)) {
      if (part instanceof NanoBoard) {
        for (int column = 1; column <= FAR_SIDE.size(); column++) {
          // The board covers the holes between its two rows of pins.
          for (char row = NEAR_ROW; row <= FAR_ROW; row++) {
            holes.add("" + row + column);
          }
        }
      } else if (part instanceof Wire wire) {
        holes.addAll(List.of(wire.from, wire.to));
      } else if (part instanceof TwoLegs two) {
        holes.addAll(List.of(two.from, two.to));
      } else if (part instanceof Photodiode diode) {
        holes.addAll(List.of(diode.cathode, diode.anode));
      } else if (part instanceof Release release) {
        holes.addAll(List.of(release.signal, release.ground));
      }
    }
    return holes;
  }

  /** The point of a netlist that a hole belongs to. */
  private static String point(String hole) {
    char first = hole.charAt(0);
    if (first == '+' || first == '-') {
      return hole.substring(0, 1);
    }
    return Character.isLowerCase(first)
        ? (first <= 'e' ? "a-e " : "f-j ") + hole.substring(1)
        : hole;
  }

  /** The picture of a step. */
  static Svg picture(Step step) {
    Svg svg = new Svg("Starter rig on a breadboard: " + step.title(), WIDTH, HEIGHT);
    boolean uno = step.equals(UNO);
    StarterBreadboard drawing = new StarterBreadboard(svg, uno ? 16 : 1);
    svg.bold(34, 40, 24, "start", BLACK, step.title());
    double y = 68;
    for (String line : step.words()) {
      svg.text(34, y, 17, "start", BLACK, line);
      y += 23;
    }
    drawing.holes();
    if (!uno) {
      step.added().forEach(part -> drawing.draw(part, true));
    }
    List<Part> all = parts(step);
    all.forEach(part -> drawing.draw(part, false));
    all.forEach(drawing::named);
    all.stream().filter(NanoBoard.class::isInstance).forEach(part -> drawing.empty());
    drawing.caution();
    return svg;
  }

  private void caution() {
    double y = 622;
    svg.rect(34, y, WIDTH - 68, 64, "#fff3e0", RED, 1.5);
    svg.bold(
        46,
        y + 25,
        16,
        "start",
        RED,
        "Power from a USB port only: no mains, no other supply. Never a flash unit, never the camera's flash contact.");
    svg.text(
        46,
        y + 50,
        16,
        "start",
        BLACK,
        "Nothing goes to D2, D3, D4, D5 or D6. Yellow is new in this step. Nobody has built it yet: computed and simulated.");
  }

  private double x(double column) {
    return 56 + (column + 0.9) * PITCH;
  }

  /** Of a row counted downwards from j, 0. */
  private static double y(double row) {
    return TOP + row * PITCH;
  }

  private static double y(char row) {
    return y(row == '+' ? 13 : row == '-' ? 14 : ROWS.indexOf(row));
  }

  private double x(String hole) {
    return x(Integer.parseInt(hole.substring(1)));
  }

  private static double y(String hole) {
    return y(hole.charAt(0));
  }

  private void holes() {
    double left = x(firstColumn - 1);
    double wide = (COLUMNS - firstColumn + 2) * PITCH;
    svg.rect(left, y(-3.7), wide, 18.4 * PITCH, "#fbfaf5", "#bbb", 1.5);
    svg.rect(left, y(4.6), wide, 1.8 * PITCH, "#efede4", "none", 0);
    for (double rail : new double[] {-3, 13}) {
      svg.line(RED, 1.5, left + 8, y(rail - 0.45), left + wide - 8, y(rail - 0.45));
      svg.line(BLUE, 1.5, left + 8, y(rail + 1.45), left + wide - 8, y(rail + 1.45));
      svg.bold(left - 8, y(rail) + 6, 18, "end", RED, "+");
      svg.bold(left - 8, y(rail + 1) + 6, 18, "end", BLUE, "−");
    }
    for (int column = firstColumn; column <= COLUMNS; column++) {
      for (double row : new double[] {-3, -2, 13, 14}) {
        hole(column, row);
      }
      for (int row = 0; row < ROWS.length(); row++) {
        if (ROWS.charAt(row) != ' ') {
          hole(column, row);
        }
      }
      if (column == firstColumn || column % 2 == 0) {
        svg.text(x(column), y(-0.95) + 4, 12, "middle", GREY, "" + column);
        svg.text(x(column), y(12) + 4, 12, "middle", GREY, "" + column);
      }
    }
    for (char row : ROWS.replace(" ", "").toCharArray()) {
      svg.text(left + 13, y(row) + 5, 14, "middle", GREY, "" + row);
      svg.text(left + wide - 11, y(row) + 5, 14, "middle", GREY, "" + row);
    }
  }

  private void hole(int column, double row) {
    svg.rect(x(column) - 3.5, y(row) - 3.5, 7, 7, "#d4d1c4", "none", 0);
  }

  private void draw(Part part, boolean behind) {
    if (part instanceof NanoBoard) {
      nano(behind);
    } else if (part instanceof UnoBoard) {
      Uno.draw(svg, this::x);
    } else if (part instanceof Wire wire) {
      wire(wire, behind);
    } else if (part instanceof TwoLegs two) {
      twoLegs(two, behind);
    } else if (part instanceof Photodiode diode) {
      photodiode(diode, behind);
    } else if (part instanceof Release release) {
      release(release, behind);
    }
  }

  private void nano(boolean behind) {
    double left = x(0.35);
    double wide = 15.3 * PITCH;
    double top = y('h') - 12;
    double high = 6 * PITCH + 24;
    if (behind) {
      svg.rect(left - 40, top - 9, wide + 49, high + 18, NEW, "none", 0);
      return;
    }
    svg.rect(left, top, wide, high, "#12506b", BLACK, 1.5);
    svg.rect(left - 32, top + 52, 62, high - 104, "#c9ced2", BLACK, 1.5);
    svg.text(left - 1, top + high / 2 + 5, 13, "middle", BLACK, "USB");
    svg.rect(x(10.3), y(5), 3.4 * PITCH, 2 * PITCH, "#1a1a1a", BLACK, 1);
    svg.text(x(5.4), y(6) + 6, 16, "middle", "#fff", "Nano class board");
    for (int i = 0; i < FAR_SIDE.size(); i++) {
      svg.circle(x(i + 1), y(FAR_ROW), 5, "#e8c45a", BLACK, 0.8);
      svg.circle(x(i + 1), y(NEAR_ROW), 5, "#e8c45a", BLACK, 0.8);
      svg.text(x(i + 1), y(FAR_ROW) + 20, 10, "middle", "#fff", FAR_SIDE.get(i));
      svg.text(x(i + 1), y(NEAR_ROW) - 12, 10, "middle", "#fff", NEAR_SIDE.get(i));
    }
  }

  /** What must have nothing in it. */
  private void empty() {
    int from = FAR_SIDE.indexOf("D6") + 1;
    int to = FAR_SIDE.indexOf("D2") + 1;
    svg.rect(x(from) - 11, y('j') - 9, (to - from) * PITCH + 22, PITCH + 18, "#fff", RED, 1.5);
    svg.text((x(from) + x(to)) / 2, y(0.5) + 5, 13, "middle", RED, "D2 to D6: empty");
  }

  private void wire(Wire wire, boolean behind) {
    double[] points = new double[4 + wire.over.size()];
    boolean fromBoard = isSocket(wire.from);
    points[0] = fromBoard ? Uno.x(this::x) : x(wire.from);
    points[1] = fromBoard ? Uno.y(wire.from) : y(wire.from);
    for (int i = 0; i < wire.over.size(); i += 2) {
      points[2 + i] = x(wire.over.get(i));
      points[3 + i] = y(wire.over.get(i + 1));
    }
    points[points.length - 2] = x(wire.to);
    points[points.length - 1] = y(wire.to);
    if (behind) {
      svg.line(NEW, 18, points);
      return;
    }
    svg.line("#fff", 7, points).line(wire.colour, 4.5, points);
    svg.circle(points[0], points[1], 4.5, wire.colour, "#fff", 1);
    svg.circle(x(wire.to), y(wire.to), 4.5, wire.colour, "#fff", 1);
  }

  /** The names of the holes of a part, over all that is drawn. */
  private void named(Part part) {
    if (part instanceof Wire wire) {
      Stream.of(wire.from, wire.to).filter(hole -> !isSocket(hole)).forEach(this::named);
    } else if (part instanceof TwoLegs two) {
      boolean toTheLeft = x(two.to) < x(two.from);
      named(two.from, !toTheLeft);
      named(two.to, toTheLeft);
    } else if (part instanceof Photodiode diode) {
      Stream.of(diode.cathode, diode.anode).forEach(this::named);
    } else if (part instanceof Release release) {
      Stream.of(release.signal, release.ground).forEach(this::named);
    }
  }

  private void named(String hole) {
    named(hole, LEFT_OF_THE_HOLE.contains(hole));
  }

  private void named(String hole, boolean left) {
    svg.bold(
        x(hole) + (left ? -8 : 8),
        y(hole) + (left ? 5 : hole.charAt(0) == '-' ? -2 : 14),
        13,
        left ? "end" : "start",
        BLACK,
        hole.replace('-', '−'));
  }

  private static boolean isSocket(String place) {
    return Uno.PINS.contains(place);
  }

  private void twoLegs(TwoLegs two, boolean behind) {
    double middle = (x(two.from) + x(two.to)) / 2;
    double at = y(two.from);
    if (behind) {
      svg.line(NEW, 22, x(two.from), at, x(two.to), at);
      return;
    }
    svg.line(GREY, 2.5, x(two.from), at, x(two.to), at);
    if (two.label.contains("F")) {
      svg.circle(middle, at, 11, "#d98a3d", BLACK, 1.2);
      svg.text(middle, at + 4, 11, "middle", BLACK, "102");
      svg.text(middle + 15, at - 4, 12, "start", BLACK, two.label);
    } else {
      svg.rect(middle - 26, at - 8, 52, 16, "#e7d3a8", BLACK, 1.2);
      svg.text(middle, at + 21, 12, "middle", BLACK, two.label);
    }
    for (String hole : List.of(two.from, two.to)) {
      svg.circle(x(hole), y(hole), 4, GREY, "#fff", 1);
    }
  }

  private void photodiode(Photodiode diode, boolean behind) {
    double bodyX = x(34.4);
    double bodyY = y(8.4);
    double[] red = {
      bodyX - 14,
      bodyY + 44,
      bodyX - 14,
      y(11.4),
      x(31.6),
      y(12.4),
      x(27.6),
      y(12.5),
      x(diode.cathode),
      y(diode.cathode)
    };
    double[] plain = {
      bodyX + 14,
      bodyY + 44,
      bodyX + 14,
      y(10.9),
      x(31.4),
      y(11.6),
      x(23),
      y(11.5),
      x(diode.anode),
      y(diode.anode)
    };
    if (behind) {
      svg.line(NEW, 18, red).line(NEW, 18, plain);
      svg.rect(bodyX - 40, bodyY - 40, 80, 92, NEW, "none", 0);
      return;
    }
    svg.line("#fff", 7, plain).line("#8d8d8d", 4.5, plain);
    svg.line("#fff", 7, red).line(RED, 4.5, red);
    svg.rect(bodyX - 28, bodyY - 28, 56, 50, "#eef3f8", BLACK, 1.5);
    svg.rect(bodyX - 16, bodyY - 16, 32, 26, "#3a3f55", BLACK, 1);
    svg.area(
        "#eef3f8",
        BLACK,
        1.5,
        bodyX - 28,
        bodyY + 8,
        bodyX - 14,
        bodyY + 22,
        bodyX - 28,
        bodyY + 22);
    svg.line(GREY, 3, bodyX - 14, bodyY + 22, bodyX - 14, bodyY + 44);
    svg.line(GREY, 3, bodyX + 14, bodyY + 22, bodyX + 14, bodyY + 44);
    svg.bold(bodyX - 20, bodyY + 40, 13, "end", RED, "cathode");
    svg.bold(bodyX + 20, bodyY + 40, 13, "start", BLACK, "anode");
    svg.text(bodyX, bodyY - 54, 13, "middle", BLACK, "photodiode");
    svg.text(bodyX, bodyY - 38, 12, "middle", BLACK, "(in the paper holder)");
    for (String hole : List.of(diode.cathode, diode.anode)) {
      svg.circle(x(hole), y(hole), 4.5, hole.equals(diode.anode) ? "#8d8d8d" : RED, "#fff", 1);
    }
  }

  private void release(Release release, boolean behind) {
    double bodyX = x(33.6);
    double bodyY = y(0.6);
    double[] signal = {bodyX - 30, bodyY, x(30.6), y(0.6), x(release.signal), y(release.signal)};
    double[] ground = {
      bodyX + 20,
      bodyY,
      x(37.2),
      y(1.6),
      x(37.2),
      y(14.6),
      x(31),
      y(14.6),
      x(release.ground),
      y(release.ground)
    };
    if (behind) {
      svg.line(NEW, 18, signal).line(NEW, 18, ground);
      svg.rect(bodyX - 40, bodyY - 32, 90, 64, NEW, "none", 0);
      return;
    }
    svg.line("#fff", 7, ground).line(BLACK, 4.5, ground);
    svg.line("#fff", 7, signal).line(BLUE, 4.5, signal);
    svg.rect(bodyX - 32, bodyY - 24, 74, 48, "#f2f2f2", BLACK, 1.5);
    svg.text(bodyX + 5, bodyY - 3, 13, "middle", BLACK, "release");
    svg.text(bodyX + 5, bodyY + 14, 13, "middle", BLACK, "switch");
    for (String hole : List.of(release.signal, release.ground)) {
      svg.circle(x(hole), y(hole), 4.5, hole.equals(release.signal) ? BLUE : BLACK, "#fff", 1);
    }
  }
}
