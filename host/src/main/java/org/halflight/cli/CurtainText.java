package org.halflight.cli;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurtainNote;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainLimits;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainShot;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.CurtainSigns;
import org.halflight.verdict.CurtainSpeed;
import org.halflight.verdict.CurtainWanted;
import org.halflight.verdict.Evenness;
import org.halflight.words.CurtainWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** What the firings of a session say of curtains, for the terminal. */
final class CurtainText {
  /** What has a column beside the marked speed, in order. */
  private static final List<CurtainFigure> COLUMNS =
      List.of(
          CurtainFigure.FIRST_TRAVEL,
          CurtainFigure.SECOND_TRAVEL,
          CurtainFigure.TRAVEL_DIFFERENCE,
          CurtainFigure.START,
          CurtainFigure.CENTRE,
          CurtainFigure.END,
          CurtainFigure.SLIT,
          CurtainFigure.WINDOW);

  private CurtainText() {}

  /** Phase by phase; nothing for blades. */
  static List<String> lines(List<FiringResult> firings, List<RunSetup> setups) {
    List<String> lines = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      Optional<RunSetup> setup =
          setups.stream().filter(its -> its.phase() == phase).reduce((first, second) -> second);
      CurtainRunFigures.of(
              firings.stream().filter(f -> f.phase().equals(Optional.of(phase))).toList())
          .ifPresent(
              run -> {
                lines.add("");
                lines.add(Words.say("results.curtains", Sentences.phase(phase)));
                lines.addAll(table(run));
                lines.addAll(said(run, setup));
              });
    }
    return lines;
  }

  private static List<String> table(CurtainRunFigures run) {
    List<String> heads = new ArrayList<>(List.of(Words.say("table.marked")));
    COLUMNS.forEach(figure -> heads.add(CurtainWords.name(figure)));
    heads.add(CurtainWords.name(CurtainFigure.SLOPE));
    TextTable table = new TextTable(heads.toArray(String[]::new));
    for (CurtainSpeed speed : run.speeds()) {
      List<String> row = new ArrayList<>(List.of(speed.speed().label()));
      COLUMNS.forEach(figure -> row.add(value(run, speed, figure)));
      row.add(evenness(speed));
      table.add(row.toArray(String[]::new));
    }
    return table.lines();
  }

  private static String value(CurtainRunFigures run, CurtainSpeed speed, CurtainFigure figure) {
    OptionalDouble mean = speed.mean(figure);
    // A slit wider than the frame is none.
    boolean isOpen =
        figure == CurtainFigure.SLIT
            && mean.orElse(0) > run.shots().get(0).travel().geometry().frameMillimetres();
    return mean.isPresent() && !isOpen
        ? CurtainWords.value(figure, mean.getAsDouble())
        : Words.say("table.nothing");
  }

  private static String evenness(CurtainSpeed speed) {
    OptionalDouble slope = speed.mean(CurtainFigure.SLOPE);
    OptionalDouble range = speed.mean(CurtainFigure.RANGE);
    if (slope.isEmpty() || range.isEmpty()) {
      return Words.say("table.nothing");
    }
    Evenness evenness =
        Evenness.of(
            slope.getAsDouble(),
            range.getAsDouble(),
            CurtainLimits.slopeStops(speed.wantedSeconds()));
    return CurtainWords.of(evenness, Numbers.plainStops(evenness.stops()));
  }

  /** What stands out, what to do next, and what to know before trusting it. */
  private static List<String> said(CurtainRunFigures run, Optional<RunSetup> setup) {
    List<String> lines = new ArrayList<>();
    run.offset().map(CurtainWords::offset).ifPresent(lines::add);
    List<CurtainSign> signs =
        CurtainSigns.of(run, setup.map(CurtainWanted::of).orElse(CurtainWanted.UNKNOWN));
    signs.forEach(sign -> lines.add(CurtainWords.of(sign)));
    CurtainAdvice.Known known =
        new CurtainAdvice.Known(
            setup
                .map(its -> its.criteria().get(RunOption.ADJUSTERS))
                .orElse(RunOption.ADJUSTERS.usual()),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    lines.add(CurtainWords.next(CurtainAdvice.of(signs, known)));
    Set<CurtainNote> notes = EnumSet.noneOf(CurtainNote.class);
    run.shots().stream().map(CurtainShot::travel).forEach(its -> notes.addAll(its.notes()));
    notes.forEach(note -> lines.add(CurtainWords.note(note)));
    return lines;
  }
}
