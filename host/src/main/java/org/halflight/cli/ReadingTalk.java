package org.halflight.cli;

import java.util.Optional;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightProbe;
import org.halflight.session.LightReading;
import org.halflight.session.SessionNews;
import org.halflight.trouble.Trouble;
import org.halflight.words.NewsSentences;
import org.halflight.words.Words;

/** Leads the person through readings of the light, one after the other; each may be skipped. */
final class ReadingTalk {
  private final BenchDriver driver;
  private final Terminal terminal;
  private final LightHand hand;
  private boolean stopped;

  ReadingTalk(BenchDriver driver, Terminal terminal, LightHand hand) {
    this.driver = driver;
    this.terminal = terminal;
    this.hand = hand;
    driver.beginReadings();
  }

  /** Whether the person has given up. */
  boolean isStopped() {
    return stopped;
  }

  /** All is read, or the person has given up. */
  void end() {
    driver.endReadings();
  }

  /**
   * Asks for something and reads the light when it is done.
   *
   * @param asked what the person is to do
   * @param byHand does it where the camera works by itself
   * @return empty when it was skipped or the person has given up
   * @throws Trouble when the rig does not answer
   */
  Optional<LightReading> read(
      String asked, Runnable byHand, LightReading.What what, String at, boolean opening) {
    while (!stopped && isDone(asked, byHand)) {
      LightProbe probe = driver.readLight(what, at, opening);
      terminal.say(Words.say("reading.wait"));
      while (probe.step() == LightProbe.Step.READING && !stopped) {
        step();
        typed().ifPresent(typed -> stopped |= typed.equals("q"));
      }
      if (probe.step() == LightProbe.Step.DONE) {
        return probe.reading();
      }
      if (probe.step() == LightProbe.Step.NO_ANSWER) {
        throw new Trouble(Words.say("reading.noAnswer"));
      }
      if (!stopped) {
        terminal.say(Words.say("reading.notStill"));
        if (hand.works()) {
          return Optional.empty();
        }
      }
    }
    return Optional.empty();
  }

  /** Whether the person did what was asked, and did not skip it. */
  private boolean isDone(String asked, Runnable byHand) {
    terminal.say(asked);
    if (hand.works()) {
      byHand.run();
      return true;
    }
    while (!stopped) {
      step();
      Optional<String> typed = typed();
      if (typed.isPresent()) {
        stopped |= typed.get().equals("q");
        return !stopped && !typed.get().equals("s");
      }
    }
    return false;
  }

  private void step() {
    Optional<BenchDriver.Happening> happened = driver.step();
    if (happened.isEmpty()) {
      hand.idle();
    }
    happened.flatMap(BenchDriver.Happening::change).ifPresent(c -> terminal.say(c.sentence()));
    happened.stream()
        .flatMap(each -> each.news().stream())
        .filter(news -> news instanceof SessionNews.LightWasRead)
        .flatMap(news -> NewsSentences.of(news).stream())
        .forEach(terminal::say);
  }

  private Optional<String> typed() {
    return terminal.typed().map(String::strip);
  }
}
