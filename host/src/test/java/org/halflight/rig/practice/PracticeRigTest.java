package org.halflight.rig.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.halflight.rig.practice.Listener.only;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.halflight.fixtures.Seeds;
import org.halflight.link.LinkLostException;
import org.halflight.rig.Crc16;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Answer;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.LightBlock;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.rig.RigMessage.Result;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.BladeStroke;
import org.halflight.shuttermodel.Bounce;
import org.halflight.shuttermodel.Crossing;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.ReleaseTiming;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.SpeedBehaviour;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

class PracticeRigTest {
  private static final long SEED = Seeds.usually(314);
  private static final List<MarkedSpeed> DIAL = InventedShutters.dial();
  private static final MarkedSpeed SECOND = DIAL.get(0);
  private static final MarkedSpeed SIXTIETH = DIAL.get(6);
  private static final MarkedSpeed FASTEST = DIAL.get(9);
  private static final double TICKS_PER_SECOND = 16e6;

  private static PracticeRig sound() {
    return PracticeRig.unpaced(InventedShutters.soundLeaf(DIAL, SEED), SensorSet.INVENTED, SEED);
  }

  private static PracticeRig ideal(LeafShutter shutter) {
    return PracticeRig.unpaced(shutter, SensorSet.IDEAL, SEED);
  }

  private static LeafShutter oneSpeed(SpeedBehaviour behaviour) {
    return new LeafShutter(
        "test",
        new BladeStroke(BladeLaw.AREA_LINEAR, 1, BladeLaw.AREA_LINEAR, 1),
        Map.of(SIXTIETH, behaviour),
        Bounce.NONE,
        ReleaseTiming.INVENTED,
        SEED);
  }

  private static List<EdgeSeen> edgesOf(Channel channel, List<RigMessage> messages) {
    return only(EdgeSeen.class, messages).stream()
        .filter(edge -> edge.channel() == channel)
        .toList();
  }

  private static String framed(String body) {
    return body + '#' + String.format("%04X", Crc16.of(body));
  }

  /** docs/protocol.md: the greeting is line 0000 of a start; beats are at most 2^22 ticks apart. */
  @Test
  void greetsFirstAndThenBeats() {
    PracticeRig rig = sound();
    Listener listener = new Listener(rig);
    rig.rest(3);
    List<RigMessage> heard = listener.receive();
    Greeting greeting = (Greeting) heard.get(0);
    assertThat(greeting)
        .isEqualTo(
            new Greeting(
                0, 1, 16_000_000, "full", 0xFF, "PRACTICE", 1, "power", "practice-1", 0x12C0));
    List<Beat> beats = only(Beat.class, heard);
    assertThat(beats).hasSize(12);
    for (int i = 0; i < beats.size(); i++) {
      assertThat(beats.get(i).ticks()).isEqualTo((i + 1L) << 22);
      assertThat(beats.get(i).levels()).isZero();
    }
    assertThat(heard)
        .extracting(RigMessage::sequence)
        .containsExactlyElementsOf(IntStream.range(0, heard.size()).boxed().toList());
    assertThat(rig.name()).isEqualTo("practice");
  }

  @Test
  void answersEveryCommandOnceAndInTheOrderOfTheProtocol() {
    Listener listener = new Listener(sound());
    listener.receive();

    int asked = listener.send(new RigCommand.AskGreeting());
    assertThat(withoutBeats(listener.receive()))
        .satisfiesExactly(
            line -> assertThat(((Greeting) line).bootCount()).isEqualTo(1),
            line -> isAnswer(line, asked, Result.DONE));

    int status = listener.send(new RigCommand.AskStatus());
    List<RigMessage> heard = listener.receive();
    int losses = heard.indexOf(only(Losses.class, heard).get(0));
    assertThat(heard.get(losses - 1)).isInstanceOf(Beat.class);
    isAnswer(heard.get(losses + 1), status, Result.DONE);

    int ping = listener.send(new RigCommand.Ping(0xBEEF));
    assertThat(withoutBeats(listener.receive()))
        .satisfiesExactly(
            line -> {
              RigMessage.Echo echo = (RigMessage.Echo) line;
              assertThat(echo.token()).isEqualTo(0xBEEF);
              assertThat(echo.sentTicks() - echo.receivedTicks()).isBetween(1L, 16_000L);
            },
            line -> isAnswer(line, ping, Result.DONE));

    int serial = listener.send(new RigCommand.SetSerial("P-2"));
    assertThat(withoutBeats(listener.receive()))
        .satisfiesExactly(
            line -> assertThat(((Greeting) line).serial()).isEqualTo("P-2"),
            line -> isAnswer(line, serial, Result.DONE));

    int light = listener.send(new RigCommand.MeasureLight(Channel.OUTER_B, 3));
    List<RigMessage> lit = withoutBeats(listener.receive());
    isAnswer(lit.get(0), light, Result.DONE);
    assertThat(lit.subList(1, lit.size()))
        .isNotEmpty()
        .allSatisfy(line -> assertThat(((LightBlock) line).channel()).isEqualTo(Channel.OUTER_B));
  }

  @Test
  void saysWhatIsWrongWithACommandAndCountsWhatIsNone() {
    Listener listener = new Listener(sound());
    listener.receive();
    listener.sendRaw(framed("t 00B1 CA 36"));
    listener.sendRaw(framed("z 00B2 00"));
    listener.sendRaw(framed("E 00B3 0 1 00000000"));
    assertThat(only(Answer.class, listener.receive()))
        .extracting(Answer::commandSequence, Answer::result)
        .containsExactly(tuple(0xB1, Result.BAD_FIELDS), tuple(0xB2, Result.UNKNOWN_COMMAND));
    listener.sendRaw("s 00B4#0000");
    listener.sendRaw("x".repeat(120));
    List<RigMessage> heard = listener.receive();
    assertThat(only(Answer.class, heard)).isEmpty();
    assertThat(only(Losses.class, heard))
        .extracting(Losses::badLines, Losses::longLines)
        .containsExactly(tuple(1, 0), tuple(1, 1));
  }

  /** docs/protocol.md: code c gives (c + 1)/256 of the supply; V carries sums of 64 readings. */
  @Test
  void readsThresholdsBackWithinAStepOfTheConverter() {
    Listener listener = new Listener(sound());
    for (int[] codes : new int[][] {{0x2B, 0xA1}, {0x36, 0xCA}, {0x10, 0xF0}}) {
      listener.send(new RigCommand.SetThresholds(codes[0], codes[1]));
      listener.receive();
      listener.send(new RigCommand.AskThresholds());
      listener.send(new RigCommand.AskThresholds());
      List<RigMessage> heard = listener.receive();
      RigMessage.Thresholds read = only(RigMessage.Thresholds.class, heard).get(0);
      assertThat(read.lowCode()).isEqualTo(codes[0]);
      assertThat(read.highCode()).isEqualTo(codes[1]);
      assertThat(read.lowSum64() / 64.0).isCloseTo((codes[0] + 1) * 4.0, within(1.0));
      assertThat(read.highSum64() / 64.0).isCloseTo((codes[1] + 1) * 4.0, within(1.0));
    }
  }

  @Test
  void thresholdsAreNotReadWhileTheConverterIsOnTheLight() {
    Listener listener = new Listener(sound());
    int light = listener.send(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 1000));
    int read = listener.send(new RigCommand.AskThresholds());
    int stop = listener.send(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 0));
    int again = listener.send(new RigCommand.AskThresholds());
    List<RigMessage> heard = listener.receive();
    assertThat(only(Answer.class, heard))
        .extracting(Answer::commandSequence, Answer::result)
        .containsExactly(
            tuple(light, Result.DONE),
            tuple(read, Result.BUSY),
            tuple(stop, Result.DONE),
            tuple(again, Result.DONE));
    assertThat(only(LightBlock.class, heard)).hasSizeLessThan(250);
  }

  @Test
  void lowEdgesAreTheCrossingsOfTheCurveToTheTick() {
    LeafShutter shutter = InventedShutters.dirtySlowTrain(DIAL, SEED);
    PracticeRig rig = ideal(shutter);
    Listener listener = new Listener(rig);
    int compared = 0;
    for (MarkedSpeed speed : DIAL) {
      rig.chooseSpeed(speed);
      for (int i = 0; i < 3; i++) {
        PracticeFiring firing = rig.fire().orElseThrow();
        if (!(firing.model() instanceof ModelFiring.Timed timed)) {
          rig.holdOpen(false);
          listener.receive();
          continue;
        }
        List<RigMessage> heard = listener.receive();
        for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH, Channel.OUTER_A)) {
          List<EdgeSeen> seen = edgesOf(channel, heard);
          List<Crossing> exact = exactCrossings(timed.curve(), channel);
          assertThat(seen).hasSameSizeAs(exact);
          for (int k = 0; k < seen.size(); k++) {
            double late =
                Integer.toUnsignedLong(seen.get(k).low32())
                    - firing.firstLightTicks()
                    - exact.get(k).seconds() * TICKS_PER_SECOND;
            assertThat(seen.get(k).high()).isEqualTo(exact.get(k).rising());
            assertThat(late).isBetween(-1e-4, channel == Channel.CENTRE_LOW ? 1.0 : 5.0);
            compared++;
          }
        }
      }
    }
    assertThat(compared).isGreaterThan(100);
  }

  private static List<Crossing> exactCrossings(LightCurve curve, Channel channel) {
    double threshold =
        SensorSet.threshold(
            channel, FrontEnd.thresholdMillivolts(0x2B), FrontEnd.thresholdMillivolts(0xA1));
    return SensorSet.IDEAL.of(channel).crossings(LightPath.of(curve), 0, threshold);
  }

  @Test
  void releaseClickAndContactComeWithTheLight() {
    PracticeRig rig = ideal(InventedShutters.soundLeaf(DIAL, SEED));
    Listener listener = new Listener(rig);
    rig.chooseSpeed(SIXTIETH);
    PracticeFiring firing = rig.fire().orElseThrow();
    ModelFiring.Timed timed = (ModelFiring.Timed) firing.model();
    List<RigMessage> heard = listener.receive();
    double pressed = millisAfterLight(edgesOf(Channel.RELEASE, heard).get(0), firing);
    assertThat(pressed).isBetween(-62.0, -58.0);
    assertThat(millisAfterLight(edgesOf(Channel.CLICK, heard).get(0), firing))
        .isBetween(-7.0, -4.0);
    List<EdgeSeen> contact = edgesOf(Channel.CONTACT, heard);
    assertThat(contact).extracting(EdgeSeen::high).containsExactly(true, false);
    assertThat(millisAfterLight(contact.get(0), firing))
        .isCloseTo(timed.openSeconds() * 1e3 + 0.1, within(1e-3));
    assertThat(millisAfterLight(contact.get(1), firing))
        .isCloseTo(timed.closingSeconds() * 1e3, within(1e-3));
    assertThat(only(Beat.class, heard).get(only(Beat.class, heard).size() - 1).levels()).isZero();
  }

  private static double millisAfterLight(EdgeSeen edge, PracticeFiring firing) {
    return (Integer.toUnsignedLong(edge.low32()) - firing.firstLightTicks())
        / TICKS_PER_SECOND
        * 1e3;
  }

  @Test
  void bStaysOpenAsLongAsItIsHeldAndTheLightIsThere() {
    PracticeRig rig = sound();
    Listener listener = new Listener(rig);
    rig.holdOpen(true);
    listener.receive();
    assertThat(rig.fire()).isEqualTo(Optional.empty());
    rig.rest(4);
    listener.send(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 50));
    List<RigMessage> open = listener.receive();
    int lightMask = 0x0F;
    assertThat(only(Beat.class, open))
        .allSatisfy(beat -> assertThat(beat.levels() & lightMask).isEqualTo(lightMask));
    List<LightBlock> blocks = only(LightBlock.class, open);
    assertThat(blocks).hasSize(50);
    double full = 4000.0 / 5000 * 1024 * 16;
    assertThat(blocks)
        .allSatisfy(
            block -> {
              assertThat((double) block.sum16()).isCloseTo(full, within(0.005 * full));
              assertThat(block.least()).isLessThanOrEqualTo(block.most());
              assertThat(block.sum16()).isBetween(16 * block.least(), 16 * block.most());
            });
    rig.holdOpen(false);
    List<RigMessage> closed = listener.receive();
    assertThat(edgesOf(Channel.CENTRE_LOW, closed))
        .singleElement()
        .satisfies(edge -> assertThat(edge.high()).isFalse());
    List<EdgeSeen> whole = edgesOf(Channel.CENTRE_LOW, listener.messages());
    assertThat(whole).hasSize(2);
    assertThat((whole.get(1).low32() - whole.get(0).low32()) / TICKS_PER_SECOND)
        .isBetween(5.0, 8.0);
    rig.rest(0.5);
    List<Beat> beats = only(Beat.class, listener.receive());
    assertThat(beats).allSatisfy(beat -> assertThat(beat.levels()).isZero());
  }

  @Test
  void aHungShutterStaysOpenUntilItIsClosedByHand() {
    PracticeRig rig = ideal(oneSpeed(SpeedBehaviour.of(0, 0).withChances(1, 0)));
    Listener listener = new Listener(rig);
    assertThat(rig.fire().orElseThrow().model()).isInstanceOf(ModelFiring.StuckOpen.class);
    List<RigMessage> heard = listener.receive();
    assertThat(edgesOf(Channel.CENTRE_LOW, heard)).hasSize(1);
    assertThat(rig.fire()).isEmpty();
    assertThat(edgesOf(Channel.CENTRE_LOW, listener.receive())).isEmpty();
    rig.holdOpen(false);
    assertThat(edgesOf(Channel.CENTRE_LOW, listener.receive()))
        .extracting(EdgeSeen::high)
        .containsExactly(false);
  }

  @Test
  void aShutterThatDoesNotOpenGivesNoLight() {
    PracticeRig rig = ideal(oneSpeed(SpeedBehaviour.of(0, 0).withChances(0, 1)));
    Listener listener = new Listener(rig);
    assertThat(rig.fire().orElseThrow().model()).isInstanceOf(ModelFiring.DidNotOpen.class);
    List<EdgeSeen> edges = only(EdgeSeen.class, listener.receive());
    assertThat(edges).isNotEmpty().allMatch(edge -> !edge.channel().isLight());
  }

  @Test
  void thresholdsSweptThroughSteadyLightMakeEdges() {
    PracticeRig rig = ideal(oneSpeed(SpeedBehaviour.of(0, 0)));
    Listener listener = new Listener(rig);
    rig.holdOpen(true);
    listener.receive();
    // 4000 mV is between the codes CB (3984 mV) and CC (4004 mV).
    List<Boolean> afterwards = new ArrayList<>();
    for (int high : new int[] {0xCA, 0xCB, 0xCC, 0xCB}) {
      listener.send(new RigCommand.SetThresholds(0x36, high));
      edgesOf(Channel.CENTRE_HIGH, listener.receive()).forEach(edge -> afterwards.add(edge.high()));
    }
    assertThat(afterwards).containsExactly(false, true);
  }

  @Test
  void lightIsMeasuredThroughAFiringWhenBothAreAskedForTogether() {
    PracticeRig rig = sound();
    Listener listener = new Listener(rig);
    rig.chooseSpeed(SECOND);
    rig.together(
        () -> {
          listener.send(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 1500));
          rig.fire();
        });
    List<LightBlock> blocks = only(LightBlock.class, listener.receive());
    double full = 4000.0 / 5000 * 1024 * 16;
    assertThat(blocks.get(0).sum16()).isLessThan((int) (0.02 * full));
    // 250000 baud carries 781 lines of 32 bytes a second, so about a fifth is left out.
    assertThat(blocks).filteredOn(block -> block.sum16() > 0.98 * full).hasSizeBetween(700, 850);
    assertThat(blocks.get(blocks.size() - 1).sum16()).isLessThan((int) (0.02 * full));
    assertThat(blocks).extracting(LightBlock::index).isSorted();
  }

  @Test
  void aPulledCableLosesTheLinkAndPluggingInStartsTheBoardAnew() {
    PracticeRig rig = sound();
    Listener listener = new Listener(rig);
    listener.receive();
    rig.pullCableIn(0.1);
    rig.chooseSpeed(SECOND);
    rig.fire();
    assertThatThrownBy(listener::receive)
        .isInstanceOf(LinkLostException.class)
        .hasMessageContaining("cable");
    assertThat(edgesOf(Channel.CENTRE_LOW, listener.messages()))
        .extracting(EdgeSeen::high)
        .containsExactly(true);
    assertThatThrownBy(() -> rig.write(new byte[] {'\n'})).isInstanceOf(LinkLostException.class);

    PracticeRig again = rig.plugIn();
    Listener after = new Listener(again);
    List<RigMessage> heard = after.receive();
    Greeting greeting = (Greeting) heard.get(0);
    assertThat(greeting.sequence()).isZero();
    assertThat(greeting.bootCount()).isEqualTo(2);
    assertThat(greeting.ticks()).isEqualTo(0x12C0);
    assertThat(only(EdgeSeen.class, heard)).isEmpty();
    assertThatThrownBy(() -> rig.read(new byte[8])).isInstanceOf(LinkLostException.class);
    again.fire();
    assertThat(edgesOf(Channel.CENTRE_LOW, after.receive())).hasSize(2);
    again.pullCable();
    assertThatThrownBy(() -> again.read(new byte[8])).isInstanceOf(LinkLostException.class);
  }

  @Test
  void aClosedLinkIsLostWhileTheBenchStays() {
    PracticeRig rig = sound();
    rig.close();
    rig.close();
    assertThatThrownBy(() -> rig.read(new byte[8])).isInstanceOf(LinkLostException.class);
    List<RigMessage> heard = new Listener(rig.plugIn()).receive();
    assertThat(((Greeting) heard.get(0)).bootCount()).isEqualTo(2);
  }

  @Test
  void restsBeforeAFiringCountAndTheFirstFiringAfterwardsIsNoted() {
    PracticeRig rig = sound();
    rig.fire();
    rig.fire();
    rig.rest(PracticeCamera.REST_SECONDS);
    rig.fire();
    rig.chooseSpeed(SIXTIETH);
    rig.fire();
    assertThat(rig.firings())
        .extracting(
            PracticeFiring::speed,
            firing -> firing.turn().number(),
            firing -> firing.turn().sinceRest(),
            firing -> firing.turn().atThisSpeed())
        .containsExactly(
            tuple(FASTEST, 1L, 1, 1),
            tuple(FASTEST, 2L, 2, 2),
            tuple(FASTEST, 3L, 1, 1),
            tuple(SIXTIETH, 4L, 2, 1));
    rig.setShutter(oneSpeed(SpeedBehaviour.of(0, 0)));
    assertThat(rig.speed()).isEqualTo(SIXTIETH);
    assertThatThrownBy(() -> rig.chooseSpeed(FASTEST)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> rig.rest(-1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void pacedTimeFollowsItsClock() {
    long[] nanos = {5_000_000_000L};
    PracticeRig rig =
        PracticeRig.paced(
            InventedShutters.soundLeaf(DIAL, SEED), SensorSet.IDEAL, SEED, () -> nanos[0]);
    Listener listener = new Listener(rig);
    assertThat(listener.receive()).isEmpty();
    nanos[0] += 10_000_000;
    assertThat(listener.receive()).hasSize(1).hasOnlyElementsOfType(Greeting.class);
    rig.chooseSpeed(SIXTIETH);
    PracticeFiring firing = rig.fire().orElseThrow();
    assertThat(firing.firstLightTicks() / 16e6).isBetween(0.06, 0.08);
    assertThat(only(EdgeSeen.class, listener.receive())).hasSizeLessThan(2);
    nanos[0] += 200_000_000;
    assertThat(edgesOf(Channel.CENTRE_LOW, listener.receive())).hasSize(2);
    nanos[0] += 800_000_000;
    List<Beat> beats = only(Beat.class, listener.receive());
    assertThat(beats).hasSize(3);
    assertThat(beats).allSatisfy(beat -> assertThat(beat.ticks()).isLessThanOrEqualTo(16_160_000));
    rig.rest(PracticeCamera.REST_SECONDS);
    assertThat(rig.fire().orElseThrow().turn().sinceRest()).isEqualTo(1);
  }

  @Test
  void withAClockTheSelfTimerRunsByIt() {
    long[] nanos = {0};
    PracticeRig rig =
        PracticeRig.paced(
            InventedShutters.soundLeaf(DIAL, SEED), SensorSet.IDEAL, SEED, () -> nanos[0]);
    Listener listener = new Listener(rig);
    rig.chooseSpeed(SIXTIETH);
    PracticeFiring firing = rig.fireBySelfTimer().orElseThrow();
    nanos[0] += 9_500_000_000L;
    List<RigMessage> running = listener.receive();
    assertThat(edgesOf(Channel.RELEASE, running)).hasSize(2);
    assertThat(edgesOf(Channel.CENTRE_LOW, running)).isEmpty();
    nanos[0] += 1_000_000_000L;
    assertThat(edgesOf(Channel.CENTRE_LOW, listener.receive())).hasSize(2);
    assertThat((firing.firstLightTicks() - firing.pressTicks()) / 16e6).isCloseTo(10, within(0.25));
  }

  /** What the model says, the edges say: both levels' widths give the truth back. */
  @Test
  void edgesOfASoundFiringGiveItsEffectiveTimeBack() {
    PracticeRig rig = ideal(oneSpeed(SpeedBehaviour.of(0.25, 0.05)));
    Listener listener = new Listener(rig);
    FrontEnd sensor = SensorSet.IDEAL.centre();
    for (int i = 0; i < 5; i++) {
      ModelFiring.Timed timed = (ModelFiring.Timed) rig.fire().orElseThrow().model();
      List<EdgeSeen> low = edgesOf(Channel.CENTRE_LOW, listener.receive());
      double width = (low.get(1).low32() - low.get(0).low32()) / TICKS_PER_SECOND;
      // Area linear, 1 ms each way: W(q) = t_e + (T_open + T_close)(1/2 - q).
      double effective = width - 2e-3 * (0.5 - sensor.levelOf(0x2B));
      assertThat(effective).isCloseTo(timed.effectiveSeconds(), within(2 / TICKS_PER_SECOND));
    }
  }

  /** The rig goes the same way from light to edges as the model does alone. */
  @Test
  void linesTellTheEdgesOfTheModel() {
    PracticeRig rig = ideal(oneSpeed(SpeedBehaviour.of(0, 0)));
    Listener listener = new Listener(rig);
    PracticeFiring firing = rig.fire().orElseThrow();
    LightCurve curve = ((ModelFiring.Timed) firing.model()).curve();
    List<Edge> model = SensorSet.IDEAL.edges(curve, firing.firstLightTicks(), 0x2B, 0xA1, SEED);
    List<EdgeSeen> heard =
        only(EdgeSeen.class, listener.receive()).stream()
            .filter(edge -> edge.channel().isLight())
            .toList();
    assertThat(heard).hasSameSizeAs(model);
    for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.OUTER_A, Channel.OUTER_B)) {
      assertThat(edgesOf(channel, List.copyOf(heard)))
          .extracting(EdgeSeen::high)
          .containsExactlyElementsOf(
              model.stream().filter(edge -> edge.channel() == channel).map(Edge::high).toList());
    }
  }

  private static List<RigMessage> withoutBeats(List<RigMessage> messages) {
    return messages.stream().filter(message -> !(message instanceof Beat)).toList();
  }

  private static void isAnswer(RigMessage line, int commandSequence, Result result) {
    Answer answer = (Answer) line;
    assertThat(answer.commandSequence()).isEqualTo(commandSequence);
    assertThat(answer.result()).isEqualTo(result);
  }
}
