package org.halflight.cli;

import java.util.Arrays;
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
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What a run is asked to do. */
final class RunOptions {
  private static final String NO_SPEED = "none";
  private static final String USUAL_PHASE = "as-found";

  @Option(names = "--dial", paramLabel = "DIAL", defaultValue = "leaf")
  private String dial;

  @Option(names = "--speeds", paramLabel = "LIST", split = ",")
  private List<String> speeds = List.of();

  @Option(names = "--firings", paramLabel = "N", defaultValue = "" + RunForm.USUAL_FIRINGS)
  private int firings;

  @Option(names = "--checks", paramLabel = "LIST", split = ",")
  private List<String> checks = List.of();

  @Option(names = "--phase", paramLabel = "PHASE", defaultValue = USUAL_PHASE)
  private String phase;

  @Option(names = "--marking", paramLabel = "HOW")
  private @Nullable String marking;

  @Option(names = "--shutter-kind", paramLabel = "KIND", defaultValue = "unknown")
  private String shutterKind;

  @Option(names = "--camera", paramLabel = "LABEL", defaultValue = "")
  private String camera;

  private final OptionArguments options = new OptionArguments();

  /** Those that results may be judged by afterwards are among the options of the decision. */
  @Spec(Spec.Target.MIXEE)
  void command(CommandSpec command) {
    options.addTo(
        command,
        RunOption.ALL.stream()
            .filter(option -> option.isOffered() && !DecisionOptions.ITS.contains(option))
            .toList());
  }

  RunSetup setup() {
    return setup(CliWords.constant(Phase.WORDS, phase, "--phase"), speeds);
  }

  /**
   * Two speeds that are adjusted at once.
   *
   * @param typed with a comma between
   */
  RunSetup setupOfTwo(String typed) {
    if (options.typed().containsKey(RunOption.QUICK) || !phase.equals(USUAL_PHASE)) {
      throw new Trouble(Words.say("run.twoPhase"));
    }
    RunSetup setup = setup(Phase.ADJUSTING, Arrays.asList(typed.split(",", -1)));
    if (setup.order().size() != 2) {
      throw new Trouble(Words.say("run.twoSpeeds"));
    }
    return setup;
  }

  private RunSetup setup(Phase phase, List<String> speeds) {
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
            phase,
            RunForm.list(order(chosen, speeds)),
            firings,
            OptionalDouble.empty(),
            checks.stream().map(UntimedTestNames::check).distinct().toList(),
            options.typed())
        .read();
  }

  private static List<MarkedSpeed> order(Dial chosen, List<String> speeds) {
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
