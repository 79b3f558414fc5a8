package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.halflight.link.LinkState;
import org.halflight.link.PortSurvey;
import org.halflight.link.Ports;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.words.Words;

/**
 * Looks at ports again and again until a rig is there, or there again. For the thread of one
 * connection, but for {@link #searchAgain}.
 */
final class RigSeeker {
  /** Takes how the search goes. */
  interface News {
    void report(
        LinkState state, String sentence, Optional<Greeting> greeting, Optional<PortReport> ports);
  }

  private final Ports ports;
  private final RigFinder finder;
  private final News news;
  private final Runnable pause;
  private final BooleanSupplier isOpen;
  private final AtomicBoolean lookAfresh = new AtomicBoolean();

  private final PortMemory memory;

  private volatile RigSelector wish;

  /**
   * @param pause waits between two searches
   * @param isOpen whether anybody still wants a rig
   */
  RigSeeker(
      Ports ports,
      RigSelector wish,
      LongSupplier nanos,
      News news,
      Runnable pause,
      BooleanSupplier isOpen) {
    this.ports = ports;
    this.wish = wish;
    this.news = news;
    this.pause = pause;
    this.isOpen = isOpen;
    finder = new RigFinder(ports, nanos);
    memory = new PortMemory(ports);
  }

  /** Looks again at all ports, perhaps for another rig. From any thread. */
  void searchAgain(RigSelector forRig) {
    wish = forRig;
    lookAfresh.set(true);
  }

  /** Any port may have a rig now. */
  void forgetPorts() {
    memory.forget();
  }

  /** A rig, and how to tell of it. */
  record Found(OpenRig rig, LinkState state, String sentence, List<PortOutcome> outcomes) {
    static Found first(OpenRig rig, RigSearch search) {
      String connected = said("rig.connected", rig);
      return new Found(
          rig,
          LinkState.CONNECTED,
          search.skipped().map(others -> connected + " " + others).orElse(connected),
          search.outcomes());
    }

    static Found back(OpenRig rig, Greeting known, List<PortOutcome> outcomes) {
      boolean ranOn =
          rig.greeting().bootCount() == known.bootCount() && rig.greeting().ticks() > known.ticks();
      return new Found(
          rig,
          LinkState.BACK,
          said(ranOn ? "rig.back.ranOn" : "rig.back.restarted", rig),
          outcomes);
    }

    /** The ports that were asked, with nothing more of the system. */
    PortReport report() {
      return new PortReport(
          PortSurvey.bare(outcomes.stream().map(PortOutcome::candidate).toList()),
          outcomes,
          List.of());
    }

    private static String said(String key, OpenRig rig) {
      return Words.say(key, rig.name(), rig.candidate().path());
    }
  }

  /** Looks for a rig until there is one; empty when the connection was closed meanwhile. */
  Optional<Found> findFirst() {
    news.report(LinkState.SEARCHING, lookingFor(), Optional.empty(), Optional.empty());
    List<Object> told = List.of();
    while (isOpen.getAsBoolean()) {
      if (lookAfresh.get()) {
        told = List.of();
        news.report(LinkState.SEARCHING, lookingFor(), Optional.empty(), Optional.empty());
      }
      RigSearch search = search(wish, Optional.empty());
      if (search.rig().isPresent()) {
        return search.rig().map(rig -> Found.first(rig, search));
      }
      List<Object> now = List.of(search.candidates(), search.outcomes());
      if (isOpen.getAsBoolean() && !now.equals(told)) {
        told = now;
        PortReport report = PortReport.of(ports, search);
        news.report(LinkState.SEARCHING, report.sentence(), Optional.empty(), Optional.of(report));
      }
      pause.run();
    }
    return Optional.empty();
  }

  /** Looks at ports, leaving out those that are settled, but not the one where the rig was. */
  private RigSearch search(RigSelector wanted, Optional<String> lastPath) {
    if (lookAfresh.getAndSet(false)) {
      memory.forget();
    }
    return memory.search(finder, wanted, lastPath, isOpen);
  }

  /**
   * Looks for the same rig until it is back; empty when the connection was closed meanwhile.
   *
   * @param nextSequence line counter of the host's next command
   */
  Optional<Found> findBack(OpenRig lost, int nextSequence) {
    Greeting known = lost.greeting();
    // A reset leaves the link whole, and opening the port anew would only reset the board again.
    Optional<OpenRig> answers = finder.askAgain(lost, nextSequence, isOpen);
    RigSelector wanted = RigSelector.again(known, wish.everyPort());
    if (answers.isPresent() && answers.get().greeting().serial().equals(known.serial())) {
      return answers.map(rig -> Found.back(rig, known, List.of()));
    }
    lost.link().close();
    // Nobody watched the ports while the rig was there: any of them may be new.
    memory.forget();
    while (isOpen.getAsBoolean()) {
      if (lookAfresh.get()) {
        wanted = wish;
      }
      RigSearch search = search(wanted, Optional.of(lost.candidate().path()));
      if (search.rig().isPresent()) {
        OpenRig rig = search.rig().get();
        boolean same = RigSelector.again(known, true).choose(List.of(rig)).isPresent();
        return Optional.of(
            same ? Found.back(rig, known, search.outcomes()) : Found.first(rig, search));
      }
      if (isOpen.getAsBoolean() && !search.rigs().isEmpty()) {
        news.report(
            LinkState.LOST,
            search.sentence(),
            Optional.of(known),
            Optional.of(PortReport.of(ports, search)));
      }
      pause.run();
    }
    return Optional.empty();
  }

  private String lookingFor() {
    return wish.serial()
        .map(serial -> Words.say("rig.looking.one", serial))
        .orElseGet(() -> Words.say("rig.looking.any"));
  }
}
