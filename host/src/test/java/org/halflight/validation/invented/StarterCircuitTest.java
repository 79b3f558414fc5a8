package org.halflight.validation.invented;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The difference equation against the circuit's own simulation, kept with its deck. */
class StarterCircuitTest {
  private static final Path TABLE = Path.of("fixtures/rig/starter/transients.txt");

  /** The comparator of the deck is late by this. */
  private static final double LATE_SECONDS = 0.5e-6;

  private static final double LIGHT_BEGINS_SECONDS = 1e-3;

  /** The deck's start, which has nothing to do with light, is over by then. */
  private static final double SETTLED_SECONDS = 0.9e-3;

  /** Half a count of the converter, and five ticks. */
  private static final double MOST_VOLTS = 2.5e-3;

  /** While the pin comes back from beyond the supply; such a firing is refused. */
  private static final double AFTER_SATURATION_VOLTS = 20e-3;

  private static final double MOST_SECONDS = 0.3e-6;

  private record Case(Map<String, Double> values, double rises, double falls, List<double[]> rows) {
    boolean goesBeyondTheSupply() {
      return rows.stream().anyMatch(row -> row[0] > SETTLED_SECONDS && row[1] > of("vcc"));
    }

    double of(String name) {
      return values.get(name);
    }
  }

  @Test
  void itIsTheCircuitToHalfACountOfTheConverter() throws Exception {
    List<Case> cases = cases();
    assertThat(cases).hasSize(9);
    for (Case each : cases) {
      StarterCircuit circuit = circuit(each);
      double period = each.of("period");
      double worst = 0;
      double worstHeld = 0;
      double held = Double.NaN;
      long readings = 1;
      for (double[] row : each.rows()) {
        while (readings * period + 2e-6 < row[0]) {
          circuit.goOnTo(readings * period);
          held = circuit.read();
          readings++;
        }
        boolean isOnThePin = row[0] >= readings * period - 1e-9;
        if (isOnThePin || row[0] < SETTLED_SECONDS) {
          continue;
        }
        circuit.goOnTo(row[0]);
        if (row[1] > each.of("vcc")) {
          // Beyond the supply every reading is at the end of the scale, and refused.
          assertThat(circuit.pinVolts()).isGreaterThan(each.of("vcc"));
          continue;
        }
        worst = Math.max(worst, Math.abs(circuit.pinVolts() - row[1]));
        boolean keeps = row[0] - (readings - 1) * period < 13e-6 || each.of("lost") == 0;
        worstHeld = keeps ? Math.max(worstHeld, Math.abs(held - row[2])) : worstHeld;
      }
      circuit.goOnTo(7e-3);
      List<StarterCircuit.Passing> passings = circuit.passings();
      // With all charge lost the kick of a reading takes the pin over the level once more.
      assertThat(passings.size()).as("%s", each.values()).isEven().isBetween(2, 4);
      double most = each.goesBeyondTheSupply() ? AFTER_SATURATION_VOLTS : MOST_VOLTS;
      assertThat(worst).as("pin, %s", each.values()).isLessThan(most);
      assertThat(worstHeld).as("held, %s", each.values()).isLessThan(most);
      assertThat(passings.get(0).seconds() + LATE_SECONDS)
          .isCloseTo(each.rises(), within(MOST_SECONDS));
      assertThat(passings.get(passings.size() - 1).seconds() + LATE_SECONDS)
          .isCloseTo(each.falls(), within(MOST_SECONDS));
    }
  }

  private static StarterCircuit circuit(Case each) {
    Light light =
        Light.plain(
            Hole.EVEN_AREA,
            Motion.EVEN,
            Motion.EVEN,
            each.of("rise"),
            each.of("open"),
            each.of("fall"),
            0);
    return new StarterCircuit(
        new StarterCircuit.Parts(each.of("r"), 1e-9, 50e-9 + 2e-9, each.of("lost"), each.of("vcc")),
        each.of("vbg") - each.of("vos"),
        0,
        t ->
            each.of("ifull") * light.seen(t - LIGHT_BEGINS_SECONDS)
                + each.of("room") * (1 + each.of("ripple") * Math.sin(2 * Math.PI * 100 * t)),
        0);
  }

  private static List<Case> cases() throws Exception {
    List<Case> cases = new ArrayList<>();
    for (String line : Files.readAllLines(TABLE)) {
      String[] words = line.trim().split("\\s+", -1);
      if (words[0].equals("r")) {
        Map<String, Double> values = new HashMap<>();
        for (int i = 0; i + 1 < words.length; i += 2) {
          values.put(words[i], number(words[i + 1]));
        }
        cases.add(new Case(values, 0, 0, new ArrayList<>()));
      } else if (words[0].equals("edges")) {
        Case last = cases.remove(cases.size() - 1);
        cases.add(new Case(last.values(), number(words[1]), number(words[2]), last.rows()));
      } else if (words.length == 3) {
        cases
            .get(cases.size() - 1)
            .rows()
            .add(new double[] {number(words[0]), number(words[1]), number(words[2])});
      }
    }
    return cases;
  }

  /** As the simulator writes numbers: 47k, 85u. */
  private static double number(String text) {
    String letters = "umk";
    int place = letters.indexOf(text.charAt(text.length() - 1));
    return place < 0
        ? Double.parseDouble(text)
        : Double.parseDouble(text.substring(0, text.length() - 1))
            * new double[] {1e-6, 1e-3, 1e3}[place];
  }
}
