package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.rig.RigEvent.EdgeAt;
import org.halflight.rig.RigEvent.EdgesCounted;
import org.halflight.rig.RigEvent.EdgesLost;
import org.halflight.rig.RigEvent.Ignored;
import org.halflight.rig.RigEvent.LinesLost;
import org.halflight.rig.RigEvent.Restarted;
import org.halflight.rig.RigEvent.TimeAt;
import org.halflight.rig.RigEvent.Why;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.junit.jupiter.api.Test;

class RigStreamTest {
  private static final long SECOND = 16_000_000;
  private static final long BEAT = 1L << 22;

  private final RigLines rig = new RigLines();
  private final RigStream stream = new RigStream();

  @Test
  void widensEdgesByTheGreeting() {
    assertThat(accept(rig.start())).hasSize(1).first().isInstanceOf(Greeting.class);
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, SECOND)))
        .containsExactly(edgeAt(Channel.CENTRE_LOW, true, SECOND));
  }

  @Test
  void widensEdgesOverTheWrapOfTheirLowHalf() {
    long beforeWrap = (1L << 32) - 1000;
    accept(rig.greeting(beforeWrap));

    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, beforeWrap + 10)))
        .containsExactly(edgeAt(Channel.CENTRE_LOW, true, beforeWrap + 10));
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, false, beforeWrap + 5000)))
        .containsExactly(edgeAt(Channel.CENTRE_LOW, false, beforeWrap + 5000));
    assertThat(accept(rig.beat(beforeWrap + BEAT)))
        .containsExactly(new TimeAt(beforeWrap + BEAT, 0, 0x1234));
    // An edge from just before the beat, as it may come behind its line.
    assertThat(accept(rig.edge(Channel.CONTACT, true, beforeWrap + BEAT - 900)))
        .contains(edgeAt(Channel.CONTACT, true, beforeWrap + BEAT - 900));
  }

  @Test
  void holdsEdgesUntilAWholeTickCountPlacesThem() {
    long now = 5 * (1L << 32) + 77;
    assertThat(accept(rig.edge(Channel.RELEASE, true, now - 3000))).isEmpty();
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, now - 2000))).isEmpty();
    assertThat(accept(rig.beat(now, Channel.RELEASE, Channel.CENTRE_LOW)))
        .containsExactly(
            edgeAt(Channel.RELEASE, true, now - 3000),
            edgeAt(Channel.CENTRE_LOW, true, now - 2000),
            new TimeAt(now, 0b1000001, 0x1234));
  }

  @Test
  void countsLinesThatAreMissingAndWaitsForTheNextWholeTicks() {
    accept(rig.start());
    rig.lose(3);
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, SECOND)))
        .containsExactly(new LinesLost(3));
    assertThat(accept(rig.beat(SECOND + 500, Channel.CENTRE_LOW)))
        .containsExactly(
            edgeAt(Channel.CENTRE_LOW, true, SECOND), new TimeAt(SECOND + 500, 1, 0x1234));
    assertThat(stream.statistics().missing()).isEqualTo(3);
  }

  @Test
  void placesEdgesBehindALongGapByTheNextBeat() {
    // 600 missing lines can be 157 s of beats: more than half the range of the low ticks.
    accept(rig.start());
    rig.lose(600);
    long late = 150 * SECOND;
    accept(rig.edge(Channel.CENTRE_LOW, true, late));

    assertThat(accept(rig.beat(late + 1000, Channel.CENTRE_LOW)))
        .contains(edgeAt(Channel.CENTRE_LOW, true, late));
  }

  @Test
  void toldAGapByTheLineAfterADamagedOne() {
    accept(rig.start());
    String damaged = rig.edge(Channel.CENTRE_LOW, true, SECOND).replace('1', '3');

    assertThat(accept(damaged)).containsExactly(new Ignored(Why.CRC, damaged));
    assertThat(accept(rig.beat(BEAT)))
        .containsExactly(new LinesLost(1), new TimeAt(BEAT, 0, 0x1234));
    assertThat(stream.statistics().badCrc()).isEqualTo(1);
    assertThat(stream.statistics().missing()).isEqualTo(1);
  }

  @Test
  void doesNotDoubleAnEdgeWhoseLineComesTwice() {
    accept(rig.start());
    String opening = rig.edge(Channel.CENTRE_LOW, true, BEAT - 99);
    String closing = rig.edge(Channel.CENTRE_LOW, false, BEAT - 90);
    accept(opening);
    assertThat(accept(opening)).containsExactly(new Ignored(Why.REPEATED, opening));
    accept(closing);
    assertThat(accept(opening)).containsExactly(new Ignored(Why.REPEATED, opening));
    assertThat(accept(closing)).containsExactly(new Ignored(Why.REPEATED, closing));
    assertThat(accept(rig.beat(BEAT))).containsExactly(new TimeAt(BEAT, 0, 0x1234));
    assertThat(stream.statistics().repeated()).isEqualTo(3);
    assertThat(stream.statistics().missing()).isZero();
  }

  @Test
  void followsTheLineCounterOverItsWrap() {
    rig.setNextSequence(0xFFFF);
    accept(rig.beat(BEAT));

    assertThat(accept(rig.beat(2 * BEAT))).containsExactly(new TimeAt(2 * BEAT, 0, 0x1234));
    assertThat(stream.statistics().missing()).isZero();
  }

  @Test
  void noticesARestartInTheMiddleOfAFiring() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.edge(Channel.CENTRE_LOW, true, BEAT + 5));

    List<RigEvent> events = accept(rig.start());

    assertThat(events).hasSize(2);
    assertThat(events.get(0)).isEqualTo(new Restarted());
    assertThat(((Greeting) events.get(1)).bootCount()).isEqualTo(9);
    // The levels of before count no longer: the light fell to dark while nobody looked.
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, SECOND)))
        .containsExactly(edgeAt(Channel.CENTRE_LOW, true, SECOND));
  }

  @Test
  void noticesARestartWhoseGreetingIsMissing() {
    accept(rig.start());
    accept(rig.beat(40 * BEAT));
    rig.setNextSequence(0);
    rig.lose(1);

    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, 5000))).containsExactly(new LinesLost(1));
    assertThat(accept(rig.beat(BEAT, Channel.CENTRE_LOW)))
        .containsExactly(
            new Restarted(),
            new LinesLost(1),
            edgeAt(Channel.CENTRE_LOW, true, 5000),
            new TimeAt(BEAT, 1, 0x1234));
    assertThat(stream.statistics().missing()).isEqualTo(1);
    // Asked for its greeting, the rig tells a new boot count: that start is known already.
    assertThat(accept(rig.greeting(BEAT + 5))).hasSize(1);
  }

  @Test
  void whatIsMissingBeforeAStartThatShowsLateIsMissingBehindItToo() {
    accept(rig.start());
    accept(rig.beat(40 * BEAT));
    rig.lose(5);
    accept(rig.losses(0, 0));
    rig.setNextSequence(3);
    accept(rig.edge(Channel.CENTRE_LOW, true, 5000));
    rig.lose(2);
    accept(rig.edge(Channel.CENTRE_LOW, false, 9000));

    // The five are of the start before: the counter went back behind them, to the third line.
    assertThat(accept(rig.beat(BEAT)))
        .containsExactly(
            new Restarted(),
            new LinesLost(3),
            edgeAt(Channel.CENTRE_LOW, true, 5000),
            new LinesLost(2),
            edgeAt(Channel.CENTRE_LOW, false, 9000),
            new TimeAt(BEAT, 0, 0x1234));
  }

  @Test
  void aStartThatShowsAfterTheLinkWasLostIsALoss() {
    accept(rig.start());
    accept(rig.beat(40 * BEAT));
    stream.linkLost();

    assertThat(accept(rig.beat(BEAT)))
        .containsExactly(new Restarted(), new LinesLost(1), new TimeAt(BEAT, 0, 0x1234));
  }

  @Test
  void aLineOfAnotherStartIsNoRepeat() {
    accept(rig.start());
    accept(rig.losses(0, 0));
    accept(rig.beat(BEAT));
    accept(rig.start());
    String same = rig.losses(0, 0);

    assertThat(accept(same)).isEmpty();
    assertThat(accept(rig.beat(BEAT + 7))).containsExactly(new TimeAt(BEAT + 7, 0, 0x1234));
    assertThat(accept(same)).containsExactly(new Ignored(Why.REPEATED, same));
    assertThat(stream.statistics().missing()).isZero();
  }

  @Test
  void aLineOfAnotherStartIsNoRepeatThoughItsGreetingIsMissing() {
    accept(rig.start());
    rig.lose(1);
    accept(rig.beat(40 * BEAT));
    accept(rig.losses(0, 0));
    rig.setNextSequence(1);
    String first = rig.beat(BEAT);
    accept(first);
    rig.setNextSequence(3);
    String same = rig.losses(0, 0);

    assertThat(accept(same)).containsExactly(new LinesLost(1), new RigEvent.EdgesCounted(false));
    // What came since the start is known still.
    assertThat(accept(first)).containsExactly(new Ignored(Why.REPEATED, first));
  }

  @Test
  void aLineOfAnotherStartIsNoRepeatThoughOnlyALaterGreetingCame() {
    accept(rig.start());
    accept(rig.beat(40 * BEAT));
    accept(rig.losses(0, 0));
    accept(rig.beat(41 * BEAT));
    rig.setNextSequence(1);
    accept(rig.greeting(BEAT));
    String same = rig.losses(0, 0);

    assertThat(accept(same)).doesNotContain(new Ignored(Why.REPEATED, same));
    assertThat(accept(rig.beat(2 * BEAT))).containsExactly(new TimeAt(2 * BEAT, 0, 0x1234));
  }

  @Test
  void leavesOutAGreetingWithAnotherStartNumberWhereNoStartCanBe() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.beat(2 * BEAT));
    String altered = otherStart(rig.greeting(2 * BEAT + 100));

    assertThat(accept(altered))
        .containsExactly(
            new Ignored(Why.IMPOSSIBLE, altered),
            new RigEvent.Contradicted(OptionalLong.of(BEAT - 320_000)));
    assertThat(stream.statistics().badFields()).isEqualTo(1);
    assertThat(accept(rig.beat(3 * BEAT))).containsExactly(new TimeAt(3 * BEAT, 0, 0x1234));
    // The start number that is known stays so.
    assertThat(accept(rig.greeting(3 * BEAT + 100)))
        .hasSize(1)
        .first()
        .isInstanceOf(Greeting.class);
  }

  @Test
  void believesAnotherStartNumberWhereAStartMayHide() {
    accept(rig.start());
    rig.lose(1);
    accept(rig.beat(BEAT));
    // The greeting of a start may have been the line that is missing.
    assertThat(accept(otherStart(rig.greeting(BEAT + 100)))).contains(new Restarted());

    stream.linkLost();
    assertThat(accept(rig.greeting(BEAT + 900))).contains(new Restarted());
  }

  private static String otherStart(String greeting) {
    String body = greeting.substring(0, greeting.indexOf('#')).replace("00000008", "0B000008");
    return body + "#" + String.format("%04X", Crc16.of(body));
  }

  @Test
  void leavesOutEdgesThatARestartOvertakes() {
    // What lay in a driver's buffer from before the port was opened, then the start it caused.
    String old = rig.edge(Channel.CENTRE_LOW, true, 77);
    assertThat(accept(old)).isEmpty();

    List<RigEvent> events = accept(rig.start());

    assertThat(events.get(0)).isEqualTo(new Ignored(Why.EDGE_WITHOUT_TIME, old));
    assertThat(events.get(1)).isInstanceOf(Greeting.class);
    assertThat(events).hasSize(2);
  }

  @Test
  void takesAGreetingThatWasAskedForAsNoRestart() {
    accept(rig.start());
    accept(rig.beat(BEAT));

    assertThat(accept(rig.greeting(BEAT + 100))).hasSize(1).first().isInstanceOf(Greeting.class);
  }

  @Test
  void takesAGreetingStampedJustBeforeABeatAsNoRestart() {
    accept(rig.start());
    accept(rig.beat(BEAT));

    assertThat(accept(rig.greeting(BEAT - 300))).hasSize(1).first().isInstanceOf(Greeting.class);
  }

  @Test
  void noticesTwoStartsOfARigWhoseBootCountIsDamaged() {
    String start =
        LineCodec.format(
            new RigMessage.Greeting(
                0, 1, 16_000_000, "full", 0x7F, "damaged", 0, "watchdog", "1.0.0", 0x12C0));
    accept(start);
    rig.setNextSequence(1);
    accept(rig.beat(BEAT));

    assertThat(accept(start)).first().isEqualTo(new Restarted());
  }

  @Test
  void goesOnBeyondTheWrapOfTheWire() {
    long end = (1L << 48) - 100;
    accept(rig.greeting(end));

    assertThat(accept(rig.beat((end + BEAT) & ((1L << 48) - 1))))
        .containsExactly(new TimeAt(end + BEAT, 0, 0x1234));
    assertThat(accept(rig.edge(Channel.CLICK, true, end + BEAT + 40)))
        .containsExactly(edgeAt(Channel.CLICK, true, end + BEAT + 40));
  }

  @Test
  void tellsOfLossesOnlyWhenTheyGrow() {
    accept(rig.start());
    assertThat(accept(rig.losses(0, 0))).isEmpty();
    assertThat(accept(rig.losses(2, 0))).hasSize(1).first().isInstanceOf(EdgesLost.class);
    assertThat(accept(rig.losses(2, 0))).isEmpty();
    assertThat(accept(rig.losses(2, 1))).hasSize(1);
    assertThat(stream.statistics().rigLosses().orElseThrow().floods()).isEqualTo(1);
  }

  @Test
  void takesOldLossesOfARigThatRanBeforeAsOld() {
    rig.setNextSequence(500);
    accept(rig.greeting(400 * SECOND));
    assertThat(accept(rig.losses(2, 3))).isEmpty();
    assertThat(accept(rig.losses(3, 3))).hasSize(1);
  }

  @Test
  void tellsOfLossesOfUnknownAgeWhenEdgesCameBefore() {
    rig.setNextSequence(500);
    accept(rig.greeting(400 * SECOND));
    accept(rig.edge(Channel.CENTRE_LOW, true, 400 * SECOND + 1));

    assertThat(accept(rig.losses(2, 3))).hasSize(1);
  }

  @Test
  void tellsOfEveryReportOfACounterThatHasStopped() {
    accept(rig.start());
    accept(rig.losses(0xFFFF, 0));

    assertThat(accept(rig.losses(0xFFFF, 0))).hasSize(1);
  }

  @Test
  void passesOnAnswersEchoesThresholdsAndLight() {
    accept(rig.start());
    RigMessage.Thresholds thresholds = new RigMessage.Thresholds(2, 0x2B, 0xA1, 5, 6);
    RigMessage.LightBlock block = new RigMessage.LightBlock(4, Channel.OUTER_A, 1, 160, 9, 11);

    assertThat(accept(rig.answer(0xA7)))
        .containsExactly(new RigMessage.Answer(1, 0xA7, RigMessage.Result.DONE));
    assertThat(accept(rig.message(thresholds))).containsExactly(thresholds);
    assertThat(accept(rig.message(new RigMessage.Echo(0, 0xBEEF, SECOND, SECOND + 3))))
        .containsExactly(new RigEvent.Echoed(0xBEEF, SECOND, SECOND + 3));
    assertThat(accept(rig.message(block))).containsExactly(block);
  }

  @Test
  void skipsKindsOfANewerRigWithoutCallingThemLost() {
    accept(rig.start());
    String unknown = rig.unknown();

    assertThat(accept(unknown)).containsExactly(new Ignored(Why.UNKNOWN_KIND, unknown));
    assertThat(accept(rig.beat(BEAT))).containsExactly(new TimeAt(BEAT, 0, 0x1234));
    assertThat(stream.statistics().unknown()).isEqualTo(1);
  }

  @Test
  void forgetsLevelsAndTimeWhenTheLinkIsLost() {
    accept(rig.start());
    accept(rig.edge(Channel.CENTRE_LOW, true, 1000));
    assertThat(stream.linkLost()).isEmpty();
    // 200 s later, with few lines in between by chance of the counter.
    long later = 200 * SECOND;
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, later))).isEmpty();
    assertThat(accept(rig.greeting(later + 10)))
        .first()
        .isEqualTo(edgeAt(Channel.CENTRE_LOW, true, later));
  }

  @Test
  void countsWhatCameOverTheLink() {
    String long96 = "x".repeat(96);
    String start = rig.start();
    String wrongFields = "E 0001 0 2 8F3C22A0#F7EC";
    String command = "h 0001#9E55";
    for (String line : List.of(start, "noise", "", wrongFields, long96, command)) {
      accept(line);
    }
    accept(rig.beat(BEAT));

    assertThat(stream.statistics())
        .isEqualTo(
            new LinkStatistics(
                7,
                start.length() + 5 + 24 + 96 + 11 + rig.beat(BEAT).length() + 7,
                2,
                0,
                1,
                1,
                1,
                0,
                0,
                OptionalLong.of(BEAT),
                Optional.empty()));
    assertThat(stream.statistics().bad()).isEqualTo(4);
  }

  @Test
  void givesTheSameEventsForTheSameLines(@Seed long seed) {
    Random random = new Random(seed);
    List<String> lines = new ArrayList<>();
    long ticks = 0;
    for (int i = 0; i < 3000; i++) {
      ticks += random.nextInt(400_000);
      Channel channel = Channel.ofCode(random.nextInt(7)).orElseThrow();
      switch (random.nextInt(12)) {
        case 0 -> lines.add(rig.beat(ticks, channel));
        case 1 -> rig.lose(random.nextInt(5));
        case 2 -> lines.add("noise " + random.nextInt());
        case 3 -> lines.add(lines.isEmpty() ? "" : lines.get(lines.size() - 1));
        case 4 -> {
          if (random.nextInt(20) == 0) {
            lines.add(rig.start());
            ticks = RigLines.START_TICKS;
          }
        }
        default -> lines.add(rig.edge(channel, random.nextBoolean(), ticks));
      }
    }
    RigStream again = new RigStream();
    List<RigEvent> first = new ArrayList<>();
    List<RigEvent> second = new ArrayList<>();
    for (String line : lines) {
      first.addAll(accept(line));
      second.addAll(again.accept(RigLine.of(line)));
    }

    assertThat(second).as("seed %d", seed).isEqualTo(first);
    assertThat(again.statistics()).as("seed %d", seed).isEqualTo(stream.statistics());
    assertThat(first.stream().filter(EdgeAt.class::isInstance).count())
        .as("seed %d", seed)
        .isGreaterThan(1000);
  }

  @Test
  void tellsLossesInTheirPlaceAmongEdgesThatWait() {
    accept(rig.start());
    rig.lose(1);
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, true, SECOND)))
        .containsExactly(new LinesLost(1));
    rig.lose(2);
    assertThat(accept(rig.edge(Channel.CENTRE_LOW, false, SECOND + 900))).isEmpty();
    assertThat(accept(rig.beat(SECOND + 1000)))
        .containsExactly(
            edgeAt(Channel.CENTRE_LOW, true, SECOND),
            new LinesLost(2),
            edgeAt(Channel.CENTRE_LOW, false, SECOND + 900),
            new TimeAt(SECOND + 1000, 0, 0x1234));
  }

  @Test
  void saysWhetherEdgesWereAmongTheMissingLines() {
    accept(rig.start());
    accept(rig.edge(Channel.CENTRE_LOW, true, BEAT - 900));
    rig.lose(3);
    accept(rig.edge(Channel.CENTRE_LOW, false, BEAT - 500));
    accept(rig.beat(BEAT));
    assertThat(accept(rig.edgesSent(2))).containsExactly(new EdgesCounted(true));
    assertThat(accept(rig.edgesSent(2))).isEmpty();

    rig.lose(1);
    accept(rig.beat(2 * BEAT));
    assertThat(accept(rig.edgesSent(3))).containsExactly(new EdgesCounted(false));

    rig.lose(1);
    accept(rig.beat(3 * BEAT));
    assertThat(accept(rig.edgesSent(3))).containsExactly(new EdgesCounted(true));
  }

  @Test
  void ofARigThatRanBeforeNobodyKnowsWhatItHadSent() {
    rig.setNextSequence(40);
    accept(rig.beat(BEAT));
    rig.lose(1);
    accept(rig.beat(2 * BEAT));
    assertThat(accept(rig.edgesSent(8))).containsExactly(new EdgesCounted(false));
  }

  @Test
  void anOldEdgeThatComesAgainStandsForNoLostOne() {
    accept(rig.start());
    accept(rig.edgesSent(0));
    String old = rig.edge(Channel.CENTRE_LOW, true, BEAT - 900);
    accept(old);
    for (int beat = 1; beat <= 20; beat++) {
      accept(rig.beat(beat * BEAT));
    }
    accept(old);
    rig.lose(1);
    accept(rig.beat(21 * BEAT));
    assertThat(accept(rig.edgesSent(2))).containsExactly(new EdgesCounted(false));
  }

  @Test
  void edgesThatAreLeftOutGoMissingBehindTheCount() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    rig.lose(1);
    String edge = rig.edge(Channel.CENTRE_LOW, true, BEAT + 900);
    accept(edge);
    accept(rig.edgesSent(1));
    assertThat(stream.linkLost())
        .containsExactly(new EdgesCounted(true), new Ignored(Why.EDGE_WITHOUT_TIME, edge));
    accept(rig.beat(3 * BEAT));
    assertThat(accept(rig.edgesSent(1))).containsExactly(new EdgesCounted(false));
  }

  @Test
  void aDamagedLineThatNothingFollowsIsALoss() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.edge(Channel.CENTRE_LOW, true, BEAT + 5).replace('E', 'X'));

    assertThat(stream.linkLost()).containsExactly(new LinesLost(1));
    assertThat(stream.linkLost()).isEmpty();
  }

  @Test
  void leavesOutAnEdgeThatRunsBackOnItsChannel() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.beat(2 * BEAT));
    accept(rig.edge(Channel.CENTRE_LOW, true, 2 * BEAT + 900));
    String back = rig.edge(Channel.CENTRE_LOW, false, 2 * BEAT + 900 - 65);

    assertThat(accept(back))
        .containsExactly(
            new Ignored(Why.IMPOSSIBLE, back),
            new RigEvent.Contradicted(OptionalLong.of(BEAT - 320_000)));
    assertThat(stream.statistics().badFields()).isEqualTo(1);
  }

  @Test
  void leavesOutAnEdgeFurtherBackThanLinesComeOutOfOrder() {
    accept(rig.start());
    accept(rig.edge(Channel.CENTRE_LOW, true, 2_000_000));
    String back = rig.edge(Channel.CONTACT, true, 2_000_000 - 320_001);

    assertThat(accept(back)).contains(new Ignored(Why.IMPOSSIBLE, back));
    assertThat(accept(rig.edge(Channel.CONTACT, true, 2_000_000 - 320_000)))
        .containsExactly(edgeAt(Channel.CONTACT, true, 2_000_000 - 320_000));
  }

  @Test
  void anEdgeBeyondTheBeatThatFollowsItIsAContradiction() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.edge(Channel.CENTRE_LOW, true, 3 * BEAT));

    assertThat(accept(rig.beat(2 * BEAT, Channel.CENTRE_LOW)))
        .startsWith(new RigEvent.Contradicted(OptionalLong.of(4800 - 320_000)))
        .contains(new TimeAt(2 * BEAT, 1, 0x1234));
  }

  @Test
  void aBeatThatRunsBackThoughNoLineIsMissingIsAContradiction() {
    accept(rig.start());
    accept(rig.beat(BEAT));
    accept(rig.beat(2 * BEAT));

    assertThat(accept(rig.beat(BEAT + 5)))
        .containsSubsequence(
            new RigEvent.Contradicted(OptionalLong.of(BEAT - 320_000)),
            new Restarted(),
            new TimeAt(BEAT + 5, 0, 0x1234));
  }

  @Test
  void leavesOutAnEdgeThatComesBeforeItCanHaveHappened() {
    accept(rig.start());
    long now = 0;
    for (int i = 1; i <= 12; i++) {
      now = i * BEAT;
      accept(rig.beat(now), nanos(now));
    }
    String early = rig.edge(Channel.CENTRE_LOW, true, now + 1_600_000);
    assertThat(accept(early, nanos(now + 16_000))).contains(new Ignored(Why.IMPOSSIBLE, early));
    // Lateness says nothing.
    assertThat(accept(rig.edge(Channel.CENTRE_HIGH, true, now + 99), nanos(now + SECOND)))
        .containsExactly(edgeAt(Channel.CENTRE_HIGH, true, now + 99));
  }

  @Test
  void aRigWhoseTimeRunsByItselfIsNeverEarly() {
    accept(rig.start());
    for (int i = 1; i <= 100; i++) {
      long at = i * BEAT;
      // Practice goes on as it is read, and stands while the person thinks.
      long host = i * 2_000L + i / 30 * 60_000_000_000L;
      accept(rig.beat(at), host);
      assertThat(accept(rig.edge(Channel.CLICK, i % 2 == 0, at + 3_000_000), host + 9))
          .hasSize(1)
          .first()
          .isInstanceOf(EdgeAt.class);
    }
  }

  @Test
  void aRateThatNoBoardHasIsADamagedLine() {
    for (long rate : new long[] {1, 15_900_000, 16_777_216, 0xFFFFFFFFL}) {
      String line =
          rig.start().replace("00F42400", String.format("%08X", rate)).replaceAll("#.*", "");
      String greeting = line + "#" + String.format("%04X", Crc16.of(line));
      assertThat(accept(greeting)).containsExactly(new Ignored(Why.FIELDS, greeting));
    }
  }

  private static long nanos(long ticks) {
    return ticks * 125 / 2;
  }

  @Test
  void neverThrowsOnNoiseBetweenLines(@Seed long seed) {
    RandomLines random = new RandomLines(seed);
    for (int i = 0; i < 20_000; i++) {
      assertThat(accept(LineCodec.format(random.message()))).as("seed %d", seed).isNotNull();
    }
    assertThat(stream.statistics().lines()).isEqualTo(20_000);
  }

  private static EdgeAt edgeAt(Channel channel, boolean high, long ticks) {
    return new EdgeAt(new Edge(channel, high, ticks));
  }

  private List<RigEvent> accept(String line) {
    return stream.accept(RigLine.of(line));
  }

  private List<RigEvent> accept(String line, long hostNanos) {
    return stream.accept(RigLine.of(line), hostNanos);
  }
}
