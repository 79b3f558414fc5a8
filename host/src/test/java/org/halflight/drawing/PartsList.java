package org.halflight.drawing;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;

/** The parts of each step of growth, from fixtures/rig/parts.csv into the pages. */
public final class PartsList {
  private static final Path CSV = Path.of("fixtures/rig/parts.csv");
  private static final String END = "<!-- end of the parts -->";

  /** What one piece costs, in euros, from memory: least and most. */
  enum Price {
    A(0.05, 1),
    B(1, 5),
    C(5, 25);

    private final double least;
    private final double most;

    Price(double least, double most) {
      this.least = least;
      this.most = most;
    }
  }

  /** A step of growth and the page that lists its parts. */
  enum Step {
    STARTER("building-the-rig.md"),
    LEAF("full-rig.md"),
    CURTAIN("curtain-sensors.md"),
    ISOLATED_FLASH("full-rig.md");

    private final Path page;

    Step(String page) {
      this.page = Path.of("docs", page);
    }

    String label() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** One line of the list. */
  record Part(Step step, String name, int quantity, String substitute, Price price) {}

  private PartsList() {}

  static List<Part> read() throws IOException {
    CSVFormat form = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader in = Files.newBufferedReader(CSV)) {
      return form.parse(in).stream()
          .map(
              row ->
                  new Part(
                      Step.valueOf(row.get("step").toUpperCase(Locale.ROOT).replace('-', '_')),
                      row.get("part"),
                      Integer.parseInt(row.get("quantity")),
                      row.get("substitute"),
                      Price.valueOf(row.get("price"))))
          .toList();
    }
  }

  /** The table of a step with its total by class of price. */
  static List<String> table(Step step) throws IOException {
    List<String> lines =
        new ArrayList<>(List.of("| number | part | or else | price of one |", "|---|---|---|---|"));
    Map<Price, Integer> pieces = new EnumMap<>(Price.class);
    double least = 0;
    double most = 0;
    for (Part part : read()) {
      if (part.step() == step) {
        lines.add(
            String.format(
                Locale.ROOT,
                "| %d | %s | %s | %s |",
                part.quantity(),
                part.name(),
                part.substitute(),
                part.price()));
        pieces.merge(part.price(), part.quantity(), Integer::sum);
        least += part.quantity() * part.price().least;
        most += part.quantity() * part.price().most;
      }
    }
    StringBuilder total = new StringBuilder("In all: ");
    pieces.forEach(
        (price, count) -> total.append(count).append(" of class ").append(price).append(", "));
    lines.add("");
    lines.add(
        total
            + String.format(
                Locale.ROOT, "so %.0f to %.0f euros by the limits of the classes.", least, most));
    return lines;
  }

  static String begin(Step step) {
    return "<!-- parts of " + step.label() + ", written by PartsList -->";
  }

  /** What a page has of a step. */
  static List<String> onThePage(Step step) throws IOException {
    return between(Files.readAllLines(step.page), step);
  }

  private static List<String> between(List<String> page, Step step) {
    int from = page.indexOf(begin(step)) + 1;
    return page.subList(from, from + page.subList(from, page.size()).indexOf(END));
  }

  /** Writes all tables into their pages. */
  public static void main(String[] args) throws IOException {
    for (Step step : Step.values()) {
      List<String> page = new ArrayList<>(Files.readAllLines(step.page));
      List<String> old = between(page, step);
      old.clear();
      old.addAll(table(step));
      Files.writeString(step.page, String.join("\n", page) + "\n");
    }
  }
}
