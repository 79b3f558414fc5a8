package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.halflight.fixtures.Turns;
import org.halflight.link.FakeClock;
import org.halflight.link.FakePorts;
import org.halflight.link.LinkLostException;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;
import org.halflight.link.LinkState;
import org.halflight.link.ScriptedLink;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class RigConnectionTest {
  private final FakeClock clock = new FakeClock();
  private final FakePorts ports = new FakePorts();
  private final Heard heard = new Heard();
  private final RigLines rig = new RigLines("R-0001");
  private final AtomicInteger searches = new AtomicInteger();

  /** What a test does to the world between two searches. */
  private volatile Runnable betweenSearches = () -> {};

  private Optional<RigConnection> connection = Optional.empty();

  @AfterEach
  void close() {
    connection.ifPresent(RigConnection::close);
  }

  @Test
  void tellsEverythingInOrderOnOneThread() {
    String greeting = rig.greeting(99);
    String beat = rig.beat(500);
    String edge = rig.edge(Channel.CENTRE_LOW, true, 700);
    String answer = rig.answer(1);
    ScriptedLink link =
        link("a")
            .expects("h 0000")
            .says(greeting)
            .expects("s 0001")
            .says(beat)
            .says("noise")
            .says(edge)
            .says(answer);
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitText("< " + answer);
    assertThat(heard.all())
        .containsExactly(
            "SEARCHING",
            "CONNECTED",
            "> h 0000",
            "< " + greeting,
            "> s 0001",
            "< " + beat,
            "< noise",
            "< " + edge,
            "< " + answer);
    assertThat(heard.lastChange().sentence()).isEqualTo("The rig R-0001 on a is connected.");
    assertThat(heard.lastChange().greeting().orElseThrow().serial()).isEqualTo("R-0001");
    assertThat(heard.threadCount()).isEqualTo(1);
    connection.orElseThrow().close();
    assertThat(link.isClosed()).isTrue();
    link.assertDone();
  }

  @Test
  void givesTheAnswerToACommand() throws Exception {
    ScriptedLink link = connectedLink("a").expects("t 0002 36 CA").says(rig.answer(2));
    ports.plug("a", link);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);

    CompletableFuture<Result> result =
        connection.orElseThrow().send(new RigCommand.SetThresholds(0x36, 0xCA));

    assertThat(Turns.get(result)).isEqualTo(Result.DONE);
    link.assertDone();
  }

  @Test
  void repeatsALostCommandOnceAndThenSaysSo() {
    ScriptedLink link = connectedLink("a").expects("v 0002");
    beats(link, 1100);
    link.expects("s 0003").says(() -> rig.answer(3)).expects("v 0004");
    beats(link, 1100);
    link.expects("s 0005").says(() -> rig.answer(5));
    ports.plug("a", link);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);

    CompletableFuture<Result> result =
        connection.orElseThrow().send(new RigCommand.AskThresholds());

    assertThatThrownBy(() -> Turns.get(result))
        .isInstanceOf(ExecutionException.class)
        .hasMessageContaining("The rig did not answer a command, though it was sent twice");
    assertThat(heard.states()).doesNotContain(LinkState.LOST);
    link.assertDone();
  }

  /** Half a minute late by the clock, while beats go on: this computer is slow, the rig is not. */
  @Test
  void waitsForALateAnswerAndSendsNothingTwice() throws Exception {
    ScriptedLink link = connectedLink("a").expects("v 0002");
    for (int second = 0; second < 30; second++) {
      beats(link, 1000);
      link.expects(String.format("s %04X", 3 + second));
    }
    link.says(() -> rig.answer(2));
    ports.plug("a", link);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);

    CompletableFuture<Result> result =
        connection.orElseThrow().send(new RigCommand.AskThresholds());

    assertThat(result.get(10, TimeUnit.SECONDS)).isEqualTo(Result.DONE);
    assertThat(heard.all().stream().filter(said -> said.startsWith("> v "))).hasSize(1);
    assertThat(heard.states()).doesNotContain(LinkState.LOST);
    link.assertDone();
  }

  @Test
  void sendsNothingWithoutARig() {
    connect(RigSelector.any());

    CompletableFuture<Result> result = connection.orElseThrow().send(new RigCommand.AskStatus());

    assertThatThrownBy(() -> Turns.get(result))
        .hasCauseInstanceOf(LinkLostException.class)
        .hasMessageContaining("No rig is connected");
  }

  @Test
  void findsTheRigAgainUnderAnotherName() {
    ScriptedLink before = connectedLink("a").says(rig.beat(5000));
    before.then(() -> ports.unplug("a")).breaks();
    ports.plug("a", before);
    ScriptedLink after = link("b").expects("h 0000").says(rig::start).expects("s 0001");
    betweenSearches = () -> plugOnce("b", after);
    connect(RigSelector.any());

    heard.awaitState(LinkState.BACK, 1);
    heard.awaitText("> s 0001");
    assertThat(heard.states())
        .containsExactly(LinkState.SEARCHING, LinkState.CONNECTED, LinkState.LOST, LinkState.BACK);
    assertThat(heard.lastChange().sentence())
        .isEqualTo(
            "The rig R-0001 on b is back; it has restarted. Firings in between were not seen;"
                + " go on firing.");
    assertThat(before.isClosed()).isTrue();
    before.assertDone();
  }

  @Test
  void saysWhatALossMeansAndFailsWhatWaited() {
    ScriptedLink link = connectedLink("a").expects("v 0002").then(() -> ports.unplug("a")).breaks();
    ports.plug("a", link);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);

    CompletableFuture<Result> result =
        connection.orElseThrow().send(new RigCommand.AskThresholds());

    assertThatThrownBy(() -> Turns.get(result)).hasCauseInstanceOf(LinkLostException.class);
    heard.awaitState(LinkState.LOST, 1);
    assertThat(heard.lastChange().sentence())
        .isEqualTo(
            "The rig R-0001 on a no longer answers. What it sent before is kept; a firing under"
                + " way does not count. Check the cable; it goes on by itself when the rig is"
                + " back.");
    assertThat(heard.lastChange().greeting().orElseThrow().serial()).isEqualTo("R-0001");
  }

  @Test
  void letsTheRigGoForAnErrandAndFindsItAgain() {
    ScriptedLink before = connectedLink("a").says(rig.beat(5000));
    ScriptedLink after = link("a").expects("h 0000").says(rig::start).expects("s 0001");
    ports.plug("a", before);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);
    List<Boolean> closedMeanwhile = new CopyOnWriteArrayList<>();

    connection
        .orElseThrow()
        .withoutRig(
            () -> {
              closedMeanwhile.add(before.isClosed());
              ports.plug("a", after);
            });

    heard.awaitState(LinkState.BACK, 1);
    heard.awaitText("> s 0001");
    assertThat(closedMeanwhile).containsExactly(true);
    assertThat(heard.states())
        .containsExactly(LinkState.SEARCHING, LinkState.CONNECTED, LinkState.LOST, LinkState.BACK);
    assertThat(heard.threadCount()).isEqualTo(1);
    after.assertDone();
  }

  @Test
  void doesAnErrandWhereThereIsNoRig() {
    connect(RigSelector.any());
    ScriptedLink link = connectedLink("a");

    connection.orElseThrow().withoutRig(() -> ports.plug("a", link));

    heard.awaitState(LinkState.CONNECTED, 1);
    link.assertDone();
  }

  @Test
  void takesThreeMissedBeatsAsALossAndAsksOverTheSameLinkFirst() {
    ScriptedLink link = connectedLink("a").says(rig.beat(5000)).passes(800);
    // A reset button: silence while the board starts, then its greeting, over the same link.
    link.expects("h 0002")
        .passes(500)
        .expects("h 0003")
        .passes(300)
        .says(rig::start)
        .expects("s 0004");
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitText("> s 0004");
    assertThat(heard.states())
        .containsExactly(LinkState.SEARCHING, LinkState.CONNECTED, LinkState.LOST, LinkState.BACK);
    assertThat(ports.opened()).containsExactly("a");
    link.assertDone();
  }

  @Test
  void doesNotTakeATwoBeatSilenceAsALoss() {
    String last = rig.beat(9_000_000);
    ScriptedLink link = connectedLink("a").passes(700).says(last);
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitText("< " + last);
    assertThat(heard.states()).containsExactly(LinkState.SEARCHING, LinkState.CONNECTED);
  }

  @Test
  void readsWhatCameWhileTheComputerSleptBeforeItCallsThatASilence() {
    String after = rig.beat(9_000_000);
    ScriptedLink link = connectedLink("a").then(() -> clock.passMillis(3_600_000)).passes(100);
    link.says(after);
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitText("< " + after);
    assertThat(heard.states()).containsExactly(LinkState.SEARCHING, LinkState.CONNECTED);
  }

  @Test
  void takesNoiseAloneAsSilence() {
    ScriptedLink link = connectedLink("a");
    for (int i = 0; i < 7; i++) {
      link.passes(100).says("noise");
    }
    link.passes(100).expects("h 0002").then(() -> ports.unplug("a")).breaks();
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitState(LinkState.LOST, 1);
    assertThat(heard.all().stream().filter("< noise"::equals)).hasSize(7);
    link.assertDone();
  }

  @Test
  void waitsForTheSameRigAndNamesTheOtherOne() {
    ScriptedLink before = connectedLink("a").then(() -> ports.unplug("a")).breaks();
    ports.plug("a", before);
    ScriptedLink other = link("b").expects("h 0000").says(new RigLines("R-0002").greeting(5));
    ScriptedLink same = link("c").expects("h 0000").says(rig::start).expects("s 0001");
    betweenSearches =
        () -> {
          plugOnce("b", other);
          if (heard.lastChange().sentence().contains("R-0002")) {
            plugOnce("c", same);
          }
        };
    connect(RigSelector.any());

    heard.awaitState(LinkState.BACK, 1);
    assertThat(heard.states())
        .containsExactly(
            LinkState.SEARCHING,
            LinkState.CONNECTED,
            LinkState.LOST,
            LinkState.LOST,
            LinkState.BACK);
    assertThat(other.isClosed()).isTrue();
    // The other rig was not restarted again and again meanwhile.
    assertThat(ports.opened()).containsExactly("a", "b", "c");
  }

  @Test
  void findsARigWithoutASerialNumberAgainWhenItIsTheOnlyOne() {
    RigLines unnamed = new RigLines("none");
    ScriptedLink before =
        link("a")
            .expects("h 0000")
            .says(unnamed.greeting(5))
            .expects("s 0001")
            .says(unnamed.beat(9));
    before.then(() -> ports.unplug("a")).breaks();
    ScriptedLink named = link("b").expects("h 0000").says(new RigLines("R-0002").greeting(5));
    ScriptedLink after = link("c").expects("h 0000").says(unnamed::start).expects("s 0001");
    ports.plug("a", before);
    betweenSearches =
        () -> {
          plugOnce("b", named);
          plugOnce("c", after);
        };
    connect(RigSelector.any());

    heard.awaitState(LinkState.BACK, 1);
    heard.awaitText("> s 0001");
    assertThat(heard.lastChange().sentence())
        .startsWith("The rig without a serial number on c is back");
  }

  @Test
  void doesNotOpenASettledPortAgainUntilItWasUnplugged() {
    ScriptedLink silent = silentLink("a");
    ports.plug("a", silent);
    ScriptedLink rigLink = connectedLink("a");
    betweenSearches =
        () -> {
          int count = searches.get();
          if (count == 5) {
            ports.unplug("a");
          } else if (count == 7) {
            ports.plug("a", rigLink);
          }
        };
    connect(RigSelector.any());

    heard.awaitState(LinkState.CONNECTED, 1);
    assertThat(ports.opened()).containsExactly("a", "a");
    assertThat(searches.get()).isGreaterThanOrEqualTo(7);
    silent.assertDone();
  }

  /** The same USB chip is in many things. Each has its time, and the rig is found behind all. */
  @Test
  void otherDevicesBlockNothingAndTheOnesPassedOverAreNamed() {
    ScriptedLink babbling = link("babbling").expects("h 0000").sends("ok T:21\r\n").passes(500);
    for (int i = 1; i < 5; i++) {
      babbling.expects("h 000" + i).sends("ok T:21\r\n").passes(500);
    }
    ScriptedLink late = link("late").expects("h 0000").sends("bootloader").passes(500);
    for (int i = 1; i < 4; i++) {
      late.expects("h 000" + i).passes(500);
    }
    late.expects("h 0004").passes(400).sends("\r\n").says(rig::start).expects("s 0005");
    ports.plug("silent", silentLink("silent")).plug("babbling", atOtherSpeeds(babbling, 5));
    ports.plugRefusing("held", new LinkRefusedException(Reason.BUSY, "Held."));
    ports.plug("late", late);
    connect(RigSelector.any());

    heard.awaitState(LinkState.CONNECTED, 1);
    assertThat(heard.lastChange().sentence())
        .isEqualTo(
            "The rig R-0001 on late is connected. Passed over: silent (does not answer), babbling"
                + " (is another device), held (another program has it).");
    assertThat(ports.opened()).containsExactly("silent", "babbling", "held", "late");
    late.assertDone();
  }

  @Test
  void ofTwoRigsTheOneThatIsLeftIsUsed() {
    ports.plug("a", link("a").expects("h 0000").says(new RigLines("R-0002").greeting(5)));
    ports.plug("b", link("b").expects("h 0000").says(rig.greeting(5)), connectedLink("b"));
    betweenSearches =
        () -> {
          int count = searches.get();
          if (count == 2) {
            ports.plug("c", link("c").expects("h 0000").says(new RigLines("R-3").greeting(5)));
          } else if (count == 4) {
            ports.unplug("a");
            ports.unplug("c");
          }
        };
    connect(RigSelector.any());

    heard.awaitState(LinkState.CONNECTED, 1);
    // The third is as much in question as the first two. Neither was restarted again while both
    // were there.
    assertThat(ports.opened()).containsExactly("a", "b", "c", "b");
  }

  @Test
  void looksAtSettledPortsAgainWhenAsked() {
    ports.plug("a", silentLink("a"), connectedLink("a"));
    betweenSearches =
        () -> {
          if (searches.get() == 3) {
            connection.orElseThrow().searchAgain(RigSelector.any());
          }
        };
    connect(RigSelector.any());

    heard.awaitState(LinkState.CONNECTED, 1);
    assertThat(searches.get()).isEqualTo(3);
  }

  @Test
  void takesAWriteThatFailsAsALoss() {
    // The other end is gone for whoever writes, while reads still only find nothing.
    ScriptedLink link = connectedLink("a").refusesWrites();
    ports.plug("a", link);
    connect(RigSelector.any());
    heard.awaitState(LinkState.CONNECTED, 1);
    ports.unplug("a");

    CompletableFuture<Result> result =
        connection.orElseThrow().send(new RigCommand.AskThresholds());

    assertThatThrownBy(() -> Turns.get(result)).hasCauseInstanceOf(LinkLostException.class);
    heard.awaitState(LinkState.LOST, 1);
  }

  @Test
  void letsGoOfThePortWhenTheListenerFails() throws Exception {
    ScriptedLink link = connectedLink("a").says(rig.beat(5));
    ports.plug("a", link);
    RuntimeException full = new IllegalStateException("disk full");
    CompletableFuture<Throwable> uncaught = new CompletableFuture<>();
    RigConnection.Listener failing =
        new RigConnection.Listener() {
          @Override
          public void received(long hostNanos, RigLine line) {
            Thread.currentThread().setUncaughtExceptionHandler((t, e) -> uncaught.complete(e));
            throw full;
          }

          @Override
          public void sent(long hostNanos, String line) {}

          @Override
          public void changed(LinkChange change) {}
        };
    RigConnection failed =
        new RigConnection(ports, RigSelector.any(), failing, clock, Optional.of(n -> {}));
    connection = Optional.of(failed);
    failed.start();

    assertThat(Turns.get(uncaught)).isSameAs(full);
    assertThat(link.isClosed()).isTrue();
  }

  @Test
  void afterAFaultOfTheProgramTheRigIsLookedForAgain() {
    ports.plug("a", connectedLink("a").says(rig.beat(5)));
    AtomicInteger faults = new AtomicInteger();
    RigConnection.Listener failsOnce =
        new RigConnection.Listener() {
          @Override
          public void received(long hostNanos, RigLine line) {
            if (faults.get() == 0) {
              Thread.currentThread()
                  .setUncaughtExceptionHandler((t, e) -> faults.incrementAndGet());
              throw new IllegalStateException("a line that the program does not stand");
            }
            heard.received(hostNanos, line);
          }

          @Override
          public void sent(long hostNanos, String line) {}

          @Override
          public void changed(LinkChange change) {
            heard.changed(change);
          }
        };
    String beat = rig.beat(6);
    ScriptedLink again = connectedLink("a").says(beat);
    RigConnection made =
        new RigConnection(
            ports,
            RigSelector.any(),
            failsOnce,
            clock,
            Optional.of(
                n -> {
                  if (faults.get() > 0) {
                    ports.plug("a", again);
                  }
                }));
    connection = Optional.of(made);
    made.start();

    heard.awaitText("< " + beat);
    assertThat(faults).hasValue(1);
    assertThat(heard.states()).contains(LinkState.LOST);
  }

  @Test
  void closesFromTheListenersThreadToo() {
    String beat = rig.beat(5);
    ScriptedLink link = link("a").expects("h 0000").says(rig.greeting(9)).expects("s 0001");
    link.then(() -> connection.orElseThrow().close()).says(beat);
    ports.plug("a", link);
    connect(RigSelector.any());

    heard.awaitText("< " + beat);
    connection.orElseThrow().close();
    assertThat(link.isClosed()).isTrue();
  }

  @Test
  void startsOnce() {
    connect(RigSelector.any());
    assertThatThrownBy(() -> connection.orElseThrow().start())
        .isInstanceOf(IllegalStateException.class);
  }

  private void connect(RigSelector wish) {
    RigConnection made =
        new RigConnection(ports, wish, heard, clock, Optional.of(this::pauseBetweenSearches));
    connection = Optional.of(made);
    made.start();
  }

  private void pauseBetweenSearches(long nanos) {
    clock.passMillis(TimeUnit.NANOSECONDS.toMillis(nanos));
    searches.incrementAndGet();
    betweenSearches.run();
    Thread.onSpinWait();
  }

  private void plugOnce(String path, ScriptedLink link) {
    if (ports.candidates().stream().noneMatch(candidate -> candidate.path().equals(path))) {
      ports.plug(path, link);
    }
  }

  private ScriptedLink link(String name) {
    return new ScriptedLink(name, clock);
  }

  /** A link to the rig up to the point where it is connected and was asked for its counters. */
  private ScriptedLink connectedLink(String name) {
    return link(name)
        .expects("h 0000")
        .says(rig.greeting(99))
        .expects("s 0001")
        .says(rig.answer(1));
  }

  private ScriptedLink silentLink(String name) {
    ScriptedLink link = link(name);
    for (int i = 0; i < 5; i++) {
      link.expects("h 000" + i).passes(500);
    }
    return atOtherSpeeds(link, 5);
  }

  private static ScriptedLink atOtherSpeeds(ScriptedLink link, int firstSequence) {
    int sequence = firstSequence;
    for (int baudRate : List.of(500_000, 115_200)) {
      link.changesTo(baudRate).expects("h 000" + sequence).passes(500);
      link.expects("h 000" + (sequence + 1)).passes(100);
      sequence += 2;
    }
    return link;
  }

  private void beats(ScriptedLink link, long millis) {
    for (long passed = 0; passed < millis; passed += 200) {
      link.passes(200).says(rig.beat(5000));
    }
  }
}
