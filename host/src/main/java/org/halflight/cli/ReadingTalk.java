package org.halflight.cli;

import java.util.Optional;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightProbe;
import org.halflight.session.LightReading;
import org.halflight.session.SessionEvent;
import org.halflight.trouble.Trouble;
import org.halflight.words.EventSentences;
import org.halflight.words.Words;
import org.halflight.workflow.CameraOperator;

/** Leads the person through readings of the light, one after the other; each may be skipped. */
final class ReadingTalk {
  private final BenchDriver driver;
  private final Terminal terminal;
  private final CameraOperator operator;
  private End end = End.DONE;

  private ReadingTalk(BenchDriver driver, Terminal terminal, CameraOperator operator) {
    this.driver = driver;
    this.terminal = terminal;
    this.operator = operator;
    driver.beginReadings();
  }

  /** How a test came to its end. */
  enum End {
    /** Each reading was taken or skipped. */
    DONE,
    /** The person goes on to something else. */
    LEFT,
    /** The person has given up. */
    STOPPED
  }

  /**
   * Leads through a whole test of the light.
   *
   * @throws Trouble when the rig does not answer
   */
  static End lead(LightPlan plan, BenchDriver driver, Terminal terminal, CameraOperator operator) {
    terminal.say(Words.say(operator.works() ? "reading.practice" : "reading.keys"));
    ReadingTalk talk = new ReadingTalk(driver, terminal, operator);
    try {
      talk.readAll(plan);
    } finally {
      driver.endReadings();
    }
    return talk.end;
  }

  private void readAll(LightPlan plan) {
    for (LightPlan.Step step : plan.steps()) {
      boolean read =
          read(step.asked(), () -> operator.prepare(step), step.what(), step.at(), step.opening())
              .isPresent();
      if (!read && step.needed()) {
        break;
      }
    }
    operator.putBack();
  }

  /**
   * Asks for something and reads the light when it is done.
   *
   * @param asked what the person is to do
   * @param byHand does it where the camera works by itself
   * @return empty when it was skipped or the person has given up
   * @throws Trouble when the rig does not answer
   */
  private Optional<LightReading> read(
      String asked, Runnable byHand, LightReading.What what, String at, boolean opening) {
    while (!isOver() && isDone(asked, byHand)) {
      LightProbe probe = driver.readLight(what, at, opening);
      terminal.say(Words.say("reading.wait"));
      while (probe.step() == LightProbe.Step.READING && !isOver()) {
        step();
        typed().ifPresent(this::onTyped);
      }
      if (probe.step() == LightProbe.Step.DONE) {
        return probe.reading();
      }
      if (probe.step() == LightProbe.Step.NO_ANSWER) {
        throw new Trouble(Words.say("reading.noAnswer"));
      }
      if (!isOver()) {
        terminal.say(Words.say("reading.notStill"));
        if (operator.works()) {
          return Optional.empty();
        }
      }
    }
    return Optional.empty();
  }

  /** Whether the person did what was asked, and did not skip it. */
  private boolean isDone(String asked, Runnable byHand) {
    terminal.say(asked);
    if (operator.works()) {
      byHand.run();
      return true;
    }
    while (!isOver()) {
      step();
      Optional<String> typed = typed();
      typed.ifPresent(this::onTyped);
      if (typed.filter(key -> key.isEmpty() || key.equals("s")).isPresent()) {
        return typed.get().isEmpty();
      }
    }
    return false;
  }

  /** Whether the person wants no more of it. */
  private boolean isOver() {
    return end != End.DONE;
  }

  private void onTyped(String typed) {
    switch (typed) {
      case "q" -> end = End.STOPPED;
      case "n" -> end = End.LEFT;
      case "", "s" -> {
        // Done, or skipped: who asked for a reading sees to it.
      }
      default -> terminal.say(Words.say("reading.keys"));
    }
  }

  private void step() {
    Optional<BenchDriver.Happening> happened = driver.step();
    if (happened.isEmpty()) {
      operator.idle();
    }
    happened.flatMap(BenchDriver.Happening::change).ifPresent(c -> terminal.say(c.sentence()));
    happened.stream()
        .flatMap(each -> each.news().stream())
        .filter(ReadingTalk::isOfTheLight)
        .flatMap(news -> EventSentences.of(news).stream())
        .forEach(terminal::say);
  }

  private static boolean isOfTheLight(SessionEvent news) {
    return news instanceof SessionEvent.LightWasRead
        || news instanceof SessionEvent.FullLightRead
        || news instanceof SessionEvent.PlateauOff
        || news instanceof SessionEvent.Changed;
  }

  private Optional<String> typed() {
    return terminal.typed().map(String::strip);
  }
}
