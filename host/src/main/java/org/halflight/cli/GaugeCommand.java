package org.halflight.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.halflight.calibration.GaugeReading;
import org.halflight.calibration.GaugeStudy;
import org.halflight.export.CsvTable;
import org.halflight.trouble.Trouble;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A gauge study from a table. */
@Command(name = "gauge")
final class GaugeCommand implements Callable<Integer> {
  private static final double GOOD = 0.1;
  private static final double FAIR = 0.3;

  private final Surroundings surroundings;

  @Parameters(paramLabel = "FILE")
  private Path file;

  GaugeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    GaugeStudy.Outcome outcome = GaugeStudy.of(readings());
    if (outcome instanceof GaugeStudy.TooFew few) {
      throw new Trouble(Words.say("gauge.tooFew", few.parts(), few.operators(), few.trials()));
    }
    if (outcome instanceof GaugeStudy.Unbalanced unbalanced) {
      throw new Trouble(Words.say("gauge.unbalanced", unbalanced.part(), unbalanced.operator()));
    }
    GaugeStudy study = ((GaugeStudy.Studied) outcome).study();
    Terminal terminal = surroundings.terminal();
    terminal.say(
        Words.say(
            "gauge.result",
            sd(study.repeatabilityVariance()),
            sd(study.reproducibilityVariance()),
            sd(study.partVariance())));
    terminal.say(
        Words.say(
            "gauge.share",
            Numbers.percent(study.contribution()),
            Numbers.percent(study.studyVariation()),
            study.distinctCategories()));
    double share = study.studyVariation();
    terminal.say(
        Words.say(share < GOOD ? "gauge.good" : share <= FAIR ? "gauge.fair" : "gauge.bad"));
    return 0;
  }

  private static String sd(double variance) {
    return String.format(Locale.ROOT, "%.4g", Math.sqrt(variance));
  }

  private List<GaugeReading> readings() {
    CsvTable table = CsvTable.read(file);
    List<GaugeReading> readings = new ArrayList<>();
    int part = table.headings().indexOf("part");
    int operator = table.headings().indexOf("operator");
    int value = table.headings().indexOf("value");
    try {
      for (List<String> row : table.rows()) {
        readings.add(
            new GaugeReading(row.get(part), row.get(operator), Double.parseDouble(row.get(value))));
      }
    } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
      throw new Trouble(Words.say("gauge.file", file), e);
    }
    return readings;
  }
}
