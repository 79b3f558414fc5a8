package org.halflight.validation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * Which resistor the starter rig takes, from lamp and stop. Computed, not measured. Writes
 * fixtures/rig/starter/light_table.csv and the table of docs/building-the-rig.md.
 *
 * <p>Behind a lens that is set to far away the diode in the middle of the film gate gets {@code E =
 * pi L T / (4 N^2)} of a luminance {@code L} that fills the lens (the camera equation). White
 * plastic that a torch lights has {@code L = flux * part passed / (pi * area)}, as if it sent light
 * evenly every way. A small lamp in front of a bare shutter gives {@code E = I / d^2}.
 */
final class StarterLightTable {
  static final Path CSV = Path.of("fixtures/rig/starter/light_table.csv");
  static final Path PAGE = Path.of("docs/building-the-rig.md");
  static final String BEGIN = "<!-- light table, written by StarterLightTable -->";
  static final String END = "<!-- end of the light table -->";

  /** Of a common lens. */
  private static final double LENS_PASSES = 0.9;

  /**
   * 7.5 mm2, 0.38 A/W in the middle of the visible, and white light of 320 lm/W: all from memory.
   * The 80 nA/lx of data sheets are for an incandescent lamp, whose infrared the diode sees too.
   */
  static final double AMPS_PER_LUX = 7.5e-6 * 0.38 / 320;

  /** Half of a torch's light through white plastic, on a spot of 30 mm. */
  private static final double PLASTIC_PASSES = 0.5;

  private static final double SPOT_SQUARE_METRES = Math.PI * 0.015 * 0.015;

  /** A lantern sends its light every way. */
  private static final double SPHERE = 4 * Math.PI;

  private static final int[] KILOHMS = {22, 47, 100};
  private static final double LEAST_VOLTS = 2;

  /** Below this the bandgap of some chips is above half of full light. */
  private static final double WEAK_BELOW_VOLTS = 2.4;

  private static final double MOST_VOLTS = 4.3;
  private static final double[] STOPS = {1.4, 2, 2.8, 4, 5.6, 8};

  /** A lamp with what the diode gets behind a stop, in lux; or by itself, at stop 0. */
  private record Lamp(String words, double candelasPerSquareMetre, double luxWithoutLens) {
    double lux(double stop) {
      return stop == 0
          ? luxWithoutLens
          : Math.PI * candelasPerSquareMetre * LENS_PASSES / (4 * stop * stop);
    }
  }

  private static final List<Lamp> LAMPS =
      List.of(
          torch(300),
          torch(1000),
          new Lamp("white LED panel, 10 000 cd/m²", 10_000, 0),
          new Lamp("white LED panel, 25 000 cd/m²", 25_000, 0),
          lantern(10),
          lantern(15),
          lantern(20));

  private StarterLightTable() {}

  private static Lamp torch(double lumens) {
    return new Lamp(
        String.format(Locale.ROOT, "torch of %.0f lm on white plastic, spot of 30 mm", lumens),
        lumens * PLASTIC_PASSES / (Math.PI * SPOT_SQUARE_METRES),
        0);
  }

  private static Lamp lantern(int centimetres) {
    return new Lamp(
        "battery lantern of 1000 lm, " + centimetres + " cm away, shutter without lens",
        0,
        1000 / SPHERE / (centimetres * centimetres * 1e-4));
  }

  /** The largest resistor that keeps full light below its limit; empty where none gives enough. */
  static OptionalInt kilohms(double amps) {
    return Arrays.stream(KILOHMS)
        .filter(kilohms -> amps * kilohms * 1e3 <= MOST_VOLTS)
        .max()
        .stream()
        .filter(kilohms -> amps * kilohms * 1e3 >= LEAST_VOLTS)
        .findFirst();
  }

  private static String answer(double amps) {
    OptionalInt kilohms = kilohms(amps);
    if (kilohms.isEmpty()) {
      return amps * KILOHMS[0] * 1e3 > MOST_VOLTS ? "too bright" : "too dark";
    }
    double volts = amps * kilohms.getAsInt() * 1e3;
    String weak = volts < WEAK_BELOW_VOLTS ? ", weak" : "";
    return String.format(Locale.ROOT, "%d k, %.1f V%s", kilohms.getAsInt(), volts, weak);
  }

  /** The table as a file. */
  static List<String> csv() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "# computed, not measured, by StarterLightTable: 8.9 nA/lx of white LED light, from memory");
    lines.add("lamp,f_number,lux,microamps,resistor_kilohms,full_volts");
    for (Lamp lamp : LAMPS) {
      for (double stop : lamp.luxWithoutLens() > 0 ? new double[] {0} : STOPS) {
        double amps = lamp.lux(stop) * AMPS_PER_LUX;
        OptionalInt kilohms = kilohms(amps);
        lines.add(
            String.format(
                Locale.ROOT,
                "\"%s\",%s,%.0f,%.1f,%s,%s",
                lamp.words(),
                stop == 0 ? "" : String.format(Locale.ROOT, "%.1f", stop),
                lamp.lux(stop),
                amps * 1e6,
                kilohms.isPresent() ? kilohms.getAsInt() : "",
                kilohms.isPresent()
                    ? String.format(Locale.ROOT, "%.2f", amps * kilohms.getAsInt() * 1e3)
                    : ""));
      }
    }
    return lines;
  }

  /** The table as the page has it. */
  static List<String> table() {
    List<String> lines = new ArrayList<>();
    StringBuilder head = new StringBuilder("| lamp |");
    StringBuilder rule = new StringBuilder("|---|");
    for (double stop : STOPS) {
      head.append(" f/").append(stop == (int) stop ? "" + (int) stop : "" + stop).append(" |");
      rule.append("---|");
    }
    lines.add(head.toString());
    lines.add(rule.toString());
    for (Lamp lamp : LAMPS) {
      if (lamp.luxWithoutLens() == 0) {
        StringBuilder row = new StringBuilder("| " + lamp.words() + " |");
        for (double stop : STOPS) {
          row.append(" ").append(answer(lamp.lux(stop) * AMPS_PER_LUX)).append(" |");
        }
        lines.add(row.toString());
      }
    }
    lines.add("");
    lines.add("| lamp without a lens | resistor |");
    lines.add("|---|---|");
    for (Lamp lamp : LAMPS) {
      if (lamp.luxWithoutLens() > 0) {
        lines.add("| " + lamp.words() + " | " + answer(lamp.lux(0) * AMPS_PER_LUX) + " |");
      }
    }
    return lines;
  }

  /** What stands between the marks of the page. */
  static List<String> onThePage() throws IOException {
    List<String> page = Files.readAllLines(PAGE);
    return page.subList(page.indexOf(BEGIN) + 1, page.indexOf(END));
  }

  /** Writes both. */
  public static void main(String[] args) throws IOException {
    Files.writeString(CSV, String.join("\n", csv()) + "\n");
    List<String> page = new ArrayList<>(Files.readAllLines(PAGE));
    int from = page.indexOf(BEGIN) + 1;
    page.subList(from, page.indexOf(END)).clear();
    page.addAll(from, table());
    Files.writeString(PAGE, String.join("\n", page) + "\n");
  }
}
