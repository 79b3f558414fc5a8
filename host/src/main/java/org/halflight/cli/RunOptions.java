package org.halflight.cli;

import java.util.List;
import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.LinkageLimits;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.StopsAsked;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import picocli.CommandLine.Option;

/** What a run is asked to do. */
final class RunOptions {
  private static final int MOST_FIRINGS = 100;
  private static final String NO_SPEED = "none";

  @Option(
      names = "--dial",
      paramLabel = "DIAL",
      defaultValue = "leaf",
      description =
          "The marked speeds: leaf, curtain, older-leaf, older-leaf-300, older-leaf-400,"
              + " simple-older, or a list such as 1,1/2,1/5. Default: leaf.")
  private String dial;

  @Option(
      names = "--speeds",
      paramLabel = "LIST",
      split = ",",
      description =
          "Fire only these speeds of the dial, in this order; none for checks alone. Default: all,"
              + " slow to fast.")
  private List<String> speeds = List.of();

  @Option(
      names = "--firings",
      paramLabel = "N",
      defaultValue = "5",
      description =
          "Good firings wanted of each speed: 3 for a look, 5, 7 or 10 for a verdict, or any other"
              + " number. Default: 5.")
  private int firings;

  @Option(
      names = "--checks",
      paramLabel = "LIST",
      split = ",",
      description =
          "Try these after the speeds: B, T, self-timer, wind (wind and release timing), alone"
              + " (released with the film advance already free), leak (leak test), stops (stop"
              + " check). Default: none.")
  private List<String> checks = List.of();

  @Option(
      names = "--stops",
      paramLabel = "LIST",
      split = ",",
      defaultValue = "2.8,4,5.6,8,11,16",
      description = "The marked stops for the stop check. Default: 2.8,4,5.6,8,11,16.")
  private List<String> stops;

  @Option(
      names = "--stop-tolerance",
      paramLabel = "STOPS",
      defaultValue = "",
      description =
          "How far a stop may be off its marking, such as 1/2 or 0.25; kept with the run. Default: a"
              + " third of a stop (trade custom).")
  private String stopTolerance;

  @Option(
      names = "--linkage",
      paramLabel = "FROM..TO",
      defaultValue = "",
      description =
          "How long before the blades the film advance is to free, in milliseconds, such as 0..3 or"
              + " -0.5..2; kept with the run. Default: 0..3 (our choice).")
  private String linkage;

  @Option(
      names = "--contact",
      description =
          "The flash contact is wired and is to be measured at every speed. Never connect a flash"
              + " unit at the same time: old ones carry 220 V and more.")
  private boolean contact;

  @Option(
      names = "--phase",
      paramLabel = "PHASE",
      defaultValue = "as-found",
      description = "as-found, adjusting or as-left. Default: as-found.")
  private String phase;

  @Option(
      names = "--marking",
      paramLabel = "HOW",
      description =
          "How markings are read: exact (1/60 means 1/64 s) or literal. Default: what the dial"
              + " suggests.")
  private String marking;

  @Option(
      names = "--shutter-kind",
      paramLabel = "KIND",
      defaultValue = "unknown",
      description =
          "How the shutter is built: leaf, leaf-behind-lens, curtain-long-side, curtain-short-side,"
              + " rotary or other. Default: unknown; the dial tells whether it is a curtain.")
  private String shutterKind;

  @Option(
      names = "--camera",
      paramLabel = "LABEL",
      defaultValue = "",
      description = "Your label for the camera.")
  private String camera;

  RunSetup setup() {
    Dial chosen = dial();
    if (firings < 1 || firings > MOST_FIRINGS) {
      throw new Trouble(Words.say("run.badFirings", firings, MOST_FIRINGS));
    }
    List<UntimedTest> asked = checks.stream().map(UntimedTestNames::check).distinct().toList();
    List<MarkedSpeed> order = order(chosen);
    if (order.isEmpty() && asked.isEmpty()) {
      throw new Trouble(Words.say("run.nothingToDo"));
    }
    return new RunSetup(
        new ShutterUnderTest(
            camera,
            CliWords.constant(ShutterKind.WORDS, shutterKind, "--shutter-kind"),
            chosen.key(),
            Optional.ofNullable(marking)
                .map(how -> CliWords.constant(Reference.WORDS, how, "--marking"))
                .orElse(chosen.reference()),
            CameraCustoms.NONE),
        CliWords.constant(Phase.WORDS, phase, "--phase"),
        new RunPlan(order, firings, asked),
        RunConditions.NONE,
        new AcceptanceCriteria(
            AcceptanceCriteria.USUAL.tolerances(),
            AcceptanceCriteria.USUAL.measurand(),
            AcceptanceCriteria.USUAL.untilDecided(),
            new StopsAsked(
                LightPlan.numbers(stops).stream().map(FNumber::engraved).toList(),
                StopsAsked.tolerance(stopTolerance)
                    .orElseThrow(
                        () -> new Trouble(Words.say("stops.badTolerance", stopTolerance)))),
            LinkageLimits.find(linkage)
                .orElseThrow(() -> new Trouble(Words.say("linkage.badLimits", linkage))),
            contact));
  }

  private List<MarkedSpeed> order(Dial chosen) {
    if (speeds.equals(List.of(NO_SPEED))) {
      return List.of();
    }
    return speeds.isEmpty() ? chosen.speeds() : speeds.stream().map(s -> speed(chosen, s)).toList();
  }

  private Dial dial() {
    return Dial.ofKey(dial)
        .orElseThrow(
            () -> new Trouble(Words.say("run.unknownDial", dial, String.join(", ", Dial.names()))));
  }

  private static MarkedSpeed speed(Dial dial, String text) {
    return dial.speed(text.strip())
        .orElseThrow(
            () ->
                new Trouble(
                    Words.say(
                        "run.unknownSpeed",
                        text,
                        String.join(
                            ", ", dial.speeds().stream().map(MarkedSpeed::label).toList()))));
  }
}
