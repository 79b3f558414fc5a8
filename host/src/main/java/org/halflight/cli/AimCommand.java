package org.halflight.cli;

import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.halflight.bench.AimMeter;
import org.halflight.bench.RigWork;
import org.halflight.light.Aim;
import org.halflight.light.Needle;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.words.AimWords;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/**
 * The light meter outside of any session: the next thing to do whenever that is another, and one
 * live line of bars below it. Enter ends it.
 */
@Command(name = "aim")
final class AimCommand implements Callable<Integer> {
  /** With the volts of the outer sensors behind it, a line of 79 letters is enough. */
  private static final int LETTERS = 32;

  private final Surroundings surroundings;

  @Mixin private RigOptions rig = new RigOptions();
  private String said = "";

  AimCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    try (RigWork work = rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return 1;
      }
      terminal.say(Words.say("aim.begins"));
      work.meanwhile(
          () -> {
            if (terminal.typed().isPresent() || terminal.isOver()) {
              work.stop();
            }
          });
      AimMeter meter = new AimMeter(work.greeting().orElseThrow().board());
      work.aim(meter, this::show);
      terminal.say(Words.say("aim.ended"));
      return 0;
    }
  }

  private void show(Aim aim) {
    if (aim.centre().isEmpty()) {
      return;
    }
    String now = AimWords.move(aim);
    if (!now.equals(said)) {
      said = now;
      surroundings.terminal().say(now);
    }
    surroundings
        .terminal()
        .live(aim.needles().stream().map(AimCommand::bar).collect(Collectors.joining("  ")));
  }

  /** Dots, wanted band and end of the scale as signs; the needle is a bar across them. */
  private static String bar(Needle needle) {
    String name = AimWords.sensor(needle.sensor());
    String volts = AimWords.volts(needle.counts());
    if (needle.sensor() != Channel.CENTRE_LOW) {
      return Words.say("aim.outer", name, volts);
    }
    StringBuilder bar = new StringBuilder();
    for (int i = 0; i < LETTERS; i++) {
      double counts = (i + 0.5) * BoardTraits.FULL_SCALE_COUNTS / LETTERS;
      bar.append(counts > Aim.WANTED_TO_COUNTS ? '!' : counts > Aim.WANTED_FROM_COUNTS ? '=' : '.');
    }
    int at = (int) (needle.counts() * LETTERS / (BoardTraits.FULL_SCALE_COUNTS + 1.0));
    bar.setCharAt(at, '|');
    return Words.say("aim.bar", name, bar, volts);
  }
}
