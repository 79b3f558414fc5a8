package org.halflight.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.halflight.workflow.RunForm;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What a run is asked to do. */
final class RunOptions {
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
      defaultValue = "" + RunForm.USUAL_FIRINGS,
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

  private final OptionArguments options = new OptionArguments();

  /** Those that results may be judged by afterwards are among the options of the decision. */
  @Spec(Spec.Target.MIXEE)
  void command(CommandSpec command) {
    options.addTo(
        command,
        RunOption.ALL.stream().filter(option -> !DecisionOptions.ITS.contains(option)).toList());
  }

  RunSetup setup() {
    Dial chosen =
        Dial.ofKey(dial)
            .orElseThrow(
                () ->
                    new Trouble(
                        Words.say("run.unknownDial", dial, String.join(", ", Dial.names()))));
    return new RunForm(
            new ShutterUnderTest(
                camera,
                CliWords.constant(ShutterKind.WORDS, shutterKind, "--shutter-kind"),
                chosen.key(),
                Optional.ofNullable(marking)
                    .map(how -> CliWords.constant(Reference.WORDS, how, "--marking"))
                    .orElse(chosen.reference()),
                CameraCustoms.NONE),
            CliWords.constant(Phase.WORDS, phase, "--phase"),
            RunForm.list(order(chosen)),
            firings,
            OptionalDouble.empty(),
            checks.stream().map(UntimedTestNames::check).distinct().toList(),
            options.typed())
        .read();
  }

  private List<MarkedSpeed> order(Dial chosen) {
    if (speeds.equals(List.of(NO_SPEED))) {
      return List.of();
    }
    return speeds.isEmpty() ? chosen.speeds() : speeds.stream().map(s -> speed(chosen, s)).toList();
  }

  private static MarkedSpeed speed(Dial dial, String text) {
    return dial.speed(text)
        .orElseThrow(
            () -> new Trouble(Words.say("run.unknownSpeed", text, RunForm.list(dial.speeds()))));
  }
}
