package org.halflight.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.concurrent.Callable;
import org.halflight.bench.EdgeTrainRun;
import org.halflight.bench.RigWork;
import org.halflight.calibration.EdgeTrain;
import org.halflight.profile.ClockRate;
import org.halflight.signal.Channel;
import org.halflight.stored.StoredWords;
import org.halflight.trouble.Trouble;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CalibrationSentences;
import org.halflight.workflow.RigUpkeep;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The rate of a rig's clock by edges from outside. */
@Command(name = "clock")
final class ClockCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  /** What makes the edges. */
  enum Source {
    PULSE_PER_SECOND,
    GENERATOR,
    MAINS_LAMP;

    /** As they are typed. */
    static final StoredWords<Source> WORDS =
        StoredWords.of(
            Source.class,
            source ->
                switch (source) {
                  case PULSE_PER_SECOND -> "pulse-per-second";
                  case GENERATOR -> "generator";
                  case MAINS_LAMP -> "mains-lamp";
                });
  }

  /** Where they come in. */
  enum Input {
    LIGHT(Channel.CENTRE_LOW),
    CONTACT(Channel.CONTACT),
    CLICK(Channel.CLICK);

    /** As they are typed. */
    static final StoredWords<Input> WORDS =
        StoredWords.of(
            Input.class,
            input ->
                switch (input) {
                  case LIGHT -> "light";
                  case CONTACT -> "contact";
                  case CLICK -> "click";
                });

    private final Channel channel;

    Input(Channel channel) {
      this.channel = channel;
    }
  }

  @Option(names = "--source", paramLabel = "SOURCE", defaultValue = "pulse-per-second")
  private String source;

  @Option(names = "--hertz", paramLabel = "HZ", defaultValue = "1")
  private double hertz;

  @Option(names = "--source-ppm", paramLabel = "PPM")
  private @Nullable Double sourcePpm;

  @Option(names = "--input", paramLabel = "INPUT", defaultValue = "contact")
  private String input;

  @Option(names = "--seconds", paramLabel = "S", defaultValue = "60")
  private double seconds;

  @Option(names = "--keep")
  private boolean keep;

  @Mixin private RigOptions rig = new RigOptions();

  ClockCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    Input on = CliWords.constant(Input.WORDS, input, "--input");
    if (!(hertz > 0) || !(seconds > 0) || (sourcePpm != null && !(sourcePpm >= 0))) {
      throw new Trouble(Words.say("clock.notPositive"));
    }
    EdgeTrain train = train(CliWords.constant(Source.WORDS, source, "--source"));
    terminal.say(Words.say("clock.begin", hertz(train), input, Math.round(seconds)));
    try (RigWork work = rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return 1;
      }
      EdgeTrainRun.Outcome outcome =
          new EdgeTrainRun(work, train, on.channel).run(seconds, new Quarters(terminal));
      if (outcome instanceof EdgeTrainRun.Refused refused) {
        throw new Trouble(CalibrationSentences.refused(refused.refusal()));
      }
      EdgeTrainRun.Heard heard = (EdgeTrainRun.Heard) outcome;
      String serial = work.greeting().orElseThrow().serial();
      terminal.say(Sentences.source(serial));
      report(rate(heard.found(), train), heard.edges(), serial);
      return 0;
    }
  }

  private static String hertz(EdgeTrain train) {
    return new BigDecimal(train.hertz())
        .round(new MathContext(9))
        .stripTrailingZeros()
        .toPlainString();
  }

  private EdgeTrain train(Source of) {
    return switch (of) {
      case PULSE_PER_SECOND -> new EdgeTrain(hertz, ppm(0.1), ClockRate.Source.PULSE_PER_SECOND);
      case GENERATOR -> new EdgeTrain(hertz, ppm(29), ClockRate.Source.GENERATOR);
      case MAINS_LAMP -> EdgeTrain.ofMains(hertz);
    };
  }

  private double ppm(double usual) {
    return sourcePpm == null ? usual : sourcePpm;
  }

  private static ClockRate rate(EdgeTrain.Outcome outcome, EdgeTrain train) {
    if (outcome instanceof EdgeTrain.TooFew few) {
      throw new Trouble(Words.say("clock.tooFew", few.edges(), EdgeTrain.LEAST));
    }
    if (outcome instanceof EdgeTrain.OtherFrequency) {
      throw new Trouble(Words.say("clock.otherFrequency", hertz(train)));
    }
    return ((EdgeTrain.Found) outcome).rate();
  }

  private void report(ClockRate rate, int edges, String serial) {
    Terminal terminal = surroundings.terminal();
    terminal.say(ProfileWords.clock(rate));
    terminal.say(Words.say("clock.edges", edges));
    if (!keep) {
      terminal.say(Words.say("clock.keepHint"));
      return;
    }
    terminal.say(new RigUpkeep(surroundings.folder()).keepClock(serial, rate));
  }
}
