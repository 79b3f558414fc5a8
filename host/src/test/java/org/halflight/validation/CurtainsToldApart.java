package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Exposure;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.validation.StudiedCurtain.Told;
import org.halflight.validation.invented.CurtainFault;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainShot;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.CurtainSigns;
import org.halflight.verdict.CurtainWanted;

/** Whether wedge, drag, late latch and bounce are told apart from the figures of a run. */
final class CurtainsToldApart {
  /** Runs of each fault on the page. */
  private static final int RUNS = 300;

  /** The first runs had a part in choosing the rule. */
  private static final int FIRST_OTHER = 100_000;

  private static final double TARGET = 0.95;

  private CurtainsToldApart() {}

  /** Families of signs that a wrong one would mistake for another. */
  enum Pattern {
    WEDGE("wedge"),
    DRAG("drag"),
    START("start differs"),
    LATCH("latch or slit"),
    BOUNCE("bounce"),
    CAPPED("capped"),
    SLOW("both slow");

    private final String words;

    Pattern(String words) {
      this.words = words;
    }

    static Optional<Pattern> of(CurtainSign.Kind kind) {
      return switch (kind) {
        case WEDGE_END_DARKER, WEDGE_END_BRIGHTER -> Optional.of(WEDGE);
        case FIRST_DRAGS, SECOND_DRAGS -> Optional.of(DRAG);
        case START_DIFFERS -> Optional.of(START);
        case LATCH_LATE, LATCH_EARLY -> Optional.of(LATCH);
        case FIRST_BOUNCES, SECOND_BOUNCES -> Optional.of(BOUNCE);
        case CAPPED_AT_END, CAPPED_AT_START -> Optional.of(CAPPED);
        case BOTH_SLOW, BOTH_QUICK -> Optional.of(SLOW);
        case FIRST_SLOW,
            FIRST_QUICK,
            SECOND_SLOW,
            SECOND_QUICK,
            SLOW_AFTER_REST,
            NO_WINDOW,
            CONTACT_EARLY,
            CONTACT_LATE ->
            Optional.empty();
      };
    }
  }

  /** The one sign that each clean fault ought to bring; empty where it has none of its own. */
  static Optional<CurtainSign.Kind> wanted(CurtainFault fault) {
    return switch (fault) {
      case FIRST_SLOW -> Optional.of(CurtainSign.Kind.WEDGE_END_DARKER);
      case SECOND_SLOW -> Optional.of(CurtainSign.Kind.WEDGE_END_BRIGHTER);
      case LATE_LATCH -> Optional.of(CurtainSign.Kind.LATCH_LATE);
      case SLIT_WRONG -> Optional.of(CurtainSign.Kind.LATCH_EARLY);
      case FIRST_DRAGS -> Optional.of(CurtainSign.Kind.FIRST_DRAGS);
      case SECOND_DRAGS -> Optional.of(CurtainSign.Kind.SECOND_DRAGS);
      case FIRST_BOUNCES -> Optional.of(CurtainSign.Kind.FIRST_BOUNCES);
      case SECOND_BOUNCES -> Optional.of(CurtainSign.Kind.SECOND_BOUNCES);
      case NOTHING, BOTH_SLOW, FIRST_BRAKED_EARLY, SECOND_BRAKED_EARLY, FIRST_STICKS ->
          Optional.empty();
    };
  }

  /** What stands out in a run. */
  static Set<CurtainSign.Kind> signs(CurtainCase its) {
    List<CurtainShot> shots = new ArrayList<>();
    List<Optional<Exposure>> said = StudiedCurtain.directly(its, Told.ALL);
    for (int i = 0; i < said.size(); i++) {
      CurtainCase.Speed speed = its.shots().get(i).speed();
      Optional<CurtainTravel> travel = said.get(i).flatMap(Exposure::curtains);
      travel.ifPresent(
          each ->
              shots.add(
                  new CurtainShot(
                      MarkedSpeed.parse(speed.label()),
                      speed.seconds(),
                      each,
                      OptionalDouble.empty(),
                      false)));
    }
    return CurtainRunFigures.ofShots(shots)
        .map(run -> CurtainSigns.of(run, CurtainWanted.UNKNOWN))
        .orElse(List.of())
        .stream()
        .map(CurtainSign::kind)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(CurtainSign.Kind.class)));
  }

  /** Runs of a fault that is clearly there, with what stands out in each. */
  static List<Set<CurtainSign.Kind>> runs(CurtainFault fault, int first, int runs) {
    return IntStream.range(first, first + runs)
        .parallel()
        .mapToObj(i -> signs(CurtainCase.clean(fault, i)))
        .toList();
  }

  /** The share that has its own sign, and none of another pattern but what it caps. */
  static double right(CurtainFault fault, List<Set<CurtainSign.Kind>> runs) {
    Set<CurtainSign.Kind> own =
        wanted(fault).map(EnumSet::of).orElse(EnumSet.noneOf(CurtainSign.Kind.class));
    return runs.stream()
            .filter(
                signs ->
                    signs.stream()
                        .filter(
                            kind -> Pattern.of(kind).filter(p -> p != Pattern.CAPPED).isPresent())
                        .collect(Collectors.toSet())
                        .equals(own))
            .count()
        / (double) runs.size();
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("### Wedge, drag, late latch and bounce told apart");
    page.add("");
    page.add(
        String.format(
            Locale.ROOT,
            "%d runs of each fault, in a shutter that is in order otherwise: three firings each at the top speed, two steps slower, at 1/60 and at 1/8. A slow curtain loses 0.35 ms or 3 %% of its travel, a dragging one as much in its last part. A latch is 0.3 ms late, a slit 0.25 ms short. A bounce comes back 7 to 13 %% of the frame. Nobody said what the travel should be. The target for wedge, latch, drag and bounce is 95 %%. *Right*: the sign of the fault, and none of another kind but what is capped by it. The rule was changed after a look at other runs.",
            RUNS));
    page.add("");
    StringBuilder head = new StringBuilder("| fault | right |");
    StringBuilder rule = new StringBuilder("|---|---|");
    for (Pattern pattern : Pattern.values()) {
      head.append(' ').append(pattern.words).append(" |");
      rule.append("---|");
    }
    page.add(head + " nothing |");
    page.add(rule + "---|");
    for (CurtainFault fault : CurtainFault.values()) {
      List<Set<CurtainSign.Kind>> runs = runs(fault, FIRST_OTHER, RUNS);
      boolean isJudged = wanted(fault).isPresent() || fault == CurtainFault.NOTHING;
      double right = right(fault, runs);
      String share = String.format(Locale.ROOT, "%.1f %%", 100 * right);
      StringBuilder line =
          new StringBuilder("| " + fault.words() + " | ")
              .append(!isJudged ? "" : right >= TARGET ? share : "**" + share + "**");
      Map<Pattern, Integer> counts = counts(runs);
      for (Pattern pattern : Pattern.values()) {
        line.append(" | ").append(counts.getOrDefault(pattern, 0));
      }
      long none = runs.stream().filter(Set::isEmpty).count();
      page.add(line + " | " + none + " |");
    }
    page.add("");
    page.add(
        "The columns count the runs in which a pattern was named; one run may name two. Faults without a figure under *right* have no sign of their own. Where nobody gave a figure of the travel, three places do not tell that both curtains are slow. A brake that begins in the outer 5 % is not seen.");
    page.add("");
    return page;
  }

  private static Map<Pattern, Integer> counts(List<Set<CurtainSign.Kind>> runs) {
    Map<Pattern, Integer> counts = new EnumMap<>(Pattern.class);
    for (Set<CurtainSign.Kind> signs : runs) {
      Arrays.stream(Pattern.values())
          .filter(
              p -> signs.stream().anyMatch(kind -> Pattern.of(kind).filter(p::equals).isPresent()))
          .forEach(p -> counts.merge(p, 1, Integer::sum));
    }
    return counts;
  }
}
