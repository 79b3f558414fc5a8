package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.rig.RigEvent.CurveSeen;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.junit.jupiter.api.Test;

/** Light curves, reference pulses and trip points, from their lines to events. */
class LightCurveLinesTest {
  private static final long SECOND = 16_000_000;
  private static final long BEAT = 1L << 22;

  private final RigLines rig = new RigLines();
  private final RigStream stream = new RigStream();
  private final List<RigEvent> events = new ArrayList<>();

  @Test
  void headsWithoutEndTakeNoMemoryWithoutEnd() {
    // 400 kB of heads, each of which promises more values than any curve has.
    for (int i = 0; i < 10_000; i++) {
      receive(
          rig.message(
              new RigMessage.CurvePart(
                  0,
                  Channel.CENTRE_LOW,
                  i & 0xFF,
                  Kind.OPENING,
                  1000 * i,
                  256,
                  0xFFFF,
                  i % 2 == 0,
                  false,
                  false)));
      receive(
          rig.message(
              new RigMessage.CurvePart(
                  0,
                  Channel.CENTRE_LOW,
                  i & 0xFF,
                  Kind.CLOSING,
                  1000 * i + 500,
                  256,
                  0xFFF,
                  true,
                  false,
                  false)));
    }
    receive(rig.beat(SECOND));
    long values =
        curves().stream()
            .flatMap(curve -> curve.parts().stream())
            .mapToLong(part -> part.values().size())
            .sum();
    assertThat(values).isLessThan(100_000);
    assertThat(stream.curvesDropped()).isGreaterThan(0);
  }

  @Test
  void aShortOpeningIsOnePart() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 3, true)));
    receive(values(5, 0, "0880F0"));

    assertThat(curves())
        .containsExactly(
            new SampledLight(
                List.of(new Part(Kind.OPENING, SECOND, 256, List.of(8, 128, 240), false)), false));
  }

  @Test
  void windowsHaveTwoDigitsAndThePlateauHasFour() {
    long closing = SECOND + 900_000;
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 34, false)));
    receive(values(5, 0, "01".repeat(32)));
    receive(values(5, 32, "0203"));
    receive(rig.message(head(5, Kind.PLATEAU, SECOND + 34 * 256, 1 << 16, 2, false)));
    receive(values(5, 0, "3FF00123"));
    receive(rig.message(head(5, Kind.CLOSING, closing, 256, 1, true)));
    receive(values(5, 0, "07"));

    SampledLight light = curves().get(0);
    assertThat(light.cutOff()).isFalse();
    assertThat(light.parts())
        .extracting(Part::kind)
        .containsExactly(Kind.OPENING, Kind.PLATEAU, Kind.CLOSING);
    assertThat(light.parts().get(0).values()).hasSize(34).endsWith(1, 2, 3);
    assertThat(light.parts().get(1).values()).containsExactly(0x3FF0, 0x123);
    assertThat(light.parts().get(2).firstTicks()).isEqualTo(closing);
  }

  @Test
  void aLostLineOfValuesLeavesHolesAndNothingElse() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 66, true)));
    receive(values(5, 0, "01".repeat(32)));
    rig.lose(1);
    receive(values(5, 64, "0203"));
    receive(rig.beat(SECOND + BEAT));

    List<Integer> values = curves().get(0).parts().get(0).values();
    assertThat(values.subList(32, 64)).containsOnly(-1);
    assertThat(values.subList(64, 66)).containsExactly(2, 3);
  }

  @Test
  void theLostLastLineIsNotWaitedForWithoutEnd() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 33, true)));
    receive(values(5, 0, "01".repeat(32)));
    for (int i = 1; i <= 3; i++) {
      receive(rig.beat(SECOND + i * BEAT));
    }

    assertThat(curves().get(0).parts().get(0).values()).hasSize(33).endsWith(1, -1);
    assertThat(curves().get(0).cutOff()).isFalse();
  }

  @Test
  void aCurveWhoseLastPartIsLostIsCutOff() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 1, false)));
    receive(values(5, 0, "01"));
    rig.lose(2);
    receive(rig.message(head(6, Kind.OPENING, 2 * SECOND, 256, 1, true)));
    receive(values(6, 0, "02"));
    receive(rig.beat(2 * SECOND + BEAT));

    assertThat(curves()).extracting(SampledLight::cutOff).containsExactly(true, false);
    assertThat(stream.curvesDropped()).isZero();
  }

  /** Values behind a lost head look like those of the part before; they are not taken for them. */
  @Test
  void valuesBehindALostHeadAreNotGuessedInto() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 96, false)));
    receive(values(5, 0, "01".repeat(32)));
    // The rest of the window, the head of the plateau, and its first two lines.
    rig.lose(5);
    receive(values(5, 32, "3FF0".repeat(16)));
    receive(rig.message(head(5, Kind.CLOSING, SECOND + 900_000, 256, 1, true)));
    receive(values(5, 0, "07"));
    receive(rig.beat(SECOND + BEAT));

    SampledLight light = curves().get(0);
    assertThat(light.parts()).extracting(Part::kind).containsExactly(Kind.OPENING, Kind.CLOSING);
    assertThat(light.parts().get(0).values().subList(32, 96)).containsOnly(-1);
    assertThat(light.parts().get(1).gapBefore()).isTrue();
  }

  @Test
  void aCurveWithoutItsBeginningIsDroppedAndCounted() {
    receive(rig.start());
    rig.lose(3);
    receive(rig.message(head(5, Kind.CLOSING, SECOND, 256, 1, true)));
    receive(values(5, 0, "07"));
    for (int i = 1; i <= 4; i++) {
      receive(rig.beat(SECOND + i * BEAT));
    }

    assertThat(curves()).isEmpty();
    assertThat(stream.curvesDropped()).isEqualTo(1);
  }

  @Test
  void valuesOutOfOrderDropTheirCurve() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 64, true)));
    receive(values(5, 32, "01".repeat(32)));
    receive(values(5, 0, "01".repeat(32)));

    assertThat(stream.curvesDropped() + curves().size()).isEqualTo(1);
    assertThat(curves())
        .allSatisfy(c -> assertThat(c.parts().get(0).values().get(0)).isEqualTo(-1));
  }

  @Test
  void aPartBeforeTheOneThatCameDropsItsCurve() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 1, false)));
    receive(values(5, 0, "01"));
    receive(rig.message(head(5, Kind.CLOSING, SECOND - 5000, 256, 1, true)));
    receive(values(5, 0, "01"));

    assertThat(curves()).isEmpty();
    assertThat(stream.curvesDropped()).isEqualTo(1);
  }

  /** T held for minutes: the opening lies more than half the range of the low ticks back. */
  @Test
  void aLongOpeningIsPlacedInThePast() {
    long now = 200 * SECOND;
    receive(rig.greeting(now));
    receive(rig.message(head(5, Kind.OPENING, now - 199 * SECOND, 256, 1, true)));
    receive(values(5, 0, "01"));

    assertThat(curves().get(0).parts().get(0).firstTicks()).isEqualTo(SECOND);
  }

  @Test
  void aCurveBehindAGapWaitsForWholeTicks() {
    receive(rig.start());
    rig.lose(1);
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 1, true)));
    receive(values(5, 0, "01"));
    assertThat(curves()).isEmpty();
    receive(rig.beat(SECOND + BEAT));
    assertThat(curves()).hasSize(1);
  }

  @Test
  void aRestartLeavesOutTheCurveUnderWay() {
    receive(rig.start());
    receive(rig.message(head(5, Kind.OPENING, SECOND, 256, 1, false)));
    receive(values(5, 0, "01"));
    receive(rig.start());
    receive(rig.message(head(0, Kind.OPENING, SECOND, 256, 1, true)));
    receive(values(0, 0, "02"));

    assertThat(curves()).hasSize(1);
    assertThat(stream.curvesDropped()).isEqualTo(1);
  }

  @Test
  void widensPulsesAndPassesTripPointsOn() {
    long wrap = 1L << 32;
    receive(rig.greeting(wrap + 5000));
    receive(
        rig.message(
            new RigMessage.PulseMade(
                0, 3, ReferenceDrive.SQUARE, (int) (wrap - 600), (int) (wrap + 1000))));
    receive("W 0018 0 1 02B7 2B78 3210#834D");

    assertThat(events)
        .contains(
            new RigEvent.PulseMade(3, ReferenceDrive.SQUARE, wrap - 600, wrap + 1000),
            new RigMessage.TripPoint(0x18, Channel.CENTRE_LOW, true, 0x2B7, 0x2B78, 0x3210));
  }

  /** Whatever is lost, each value that is told is the one that was sampled at its tick. */
  @Test
  void whateverLinesAreLostNoValueStandsWhereItWasNotSampled(@Seed long seed) {
    Random random = new Random(seed);
    receive(rig.start());
    for (int curve = 0; curve < 400; curve++) {
      long at = (curve + 1) * SECOND;
      for (String line : coded(curve & 0xFF, at, random)) {
        if (random.nextInt(6) == 0) {
          continue;
        }
        receive(line);
      }
      receive(rig.beat(at + SECOND / 2));
    }
    int told = 0;
    for (SampledLight light : curves()) {
      for (Part part : light.parts()) {
        for (int i = 0; i < part.values().size(); i++) {
          int value = part.values().get(i);
          if (value >= 0) {
            told++;
            assertThat(value)
                .as("seed %d", seed)
                .isEqualTo(sampled(part.kind(), part.firstTicks() + i * part.periodTicks()));
          }
        }
      }
    }
    assertThat(told).as("seed %d", seed).isGreaterThan(10_000);
  }

  private List<String> coded(int curve, long at, Random random) {
    List<String> lines = new ArrayList<>();
    long ticks = at;
    for (Kind kind : Kind.values()) {
      int count = 1 + random.nextInt(150);
      int period = kind.isOfMeans() ? 4096 : 256;
      int each = kind.isOfMeans() ? 16 : 32;
      lines.add(rig.message(head(curve, kind, ticks, period, count, kind == Kind.TAIL)));
      for (int from = 0; from < count; from += each) {
        StringBuilder digits = new StringBuilder();
        for (int i = from; i < Math.min(count, from + each); i++) {
          int value = sampled(kind, ticks + (long) i * period);
          digits.append(String.format(kind.isOfMeans() ? "%04X" : "%02X", value));
        }
        lines.add(values(curve, from, digits.toString()));
      }
      ticks += (long) count * period;
    }
    return lines;
  }

  /** A value that tells its tick. */
  private static int sampled(Kind kind, long ticks) {
    int mixed = (int) ((ticks / 256 * 0x9E37_79B1L) >>> 16);
    return kind.isOfMeans() ? mixed & 0x1FFF : mixed & 0xFF;
  }

  private void receive(String line) {
    events.addAll(stream.accept(RigLine.of(line)));
  }

  private String values(int curve, int index, String digits) {
    return rig.message(new RigMessage.CurveValues(0, curve, index, digits));
  }

  @Test
  void aCurveOfAnOuterSensorSaysSo() {
    receive(rig.start());
    receive(rig.message(head(Channel.OUTER_B, 7, Kind.OPENING, SECOND, 256, 2, true)));
    receive(values(7, 0, "0102"));
    assertThat(curves())
        .singleElement()
        .extracting(SampledLight::sensor)
        .isEqualTo(Channel.OUTER_B);
  }

  @Test
  void partsOfTwoSensorsAreNoCurve() {
    receive(rig.start());
    receive(rig.message(head(Channel.OUTER_B, 7, Kind.OPENING, SECOND, 256, 2, false)));
    receive(values(7, 0, "0102"));
    receive(rig.message(head(Channel.OUTER_A, 7, Kind.CLOSING, SECOND + 9000, 256, 2, true)));
    receive(values(7, 0, "0102"));
    assertThat(curves()).isEmpty();
    assertThat(stream.curvesDropped()).isEqualTo(1);
  }

  private static RigMessage head(
      int curve, Kind kind, long ticks, int period, int count, boolean last) {
    return head(Channel.CENTRE_LOW, curve, kind, ticks, period, count, last);
  }

  private static RigMessage head(
      Channel sensor, int curve, Kind kind, long ticks, int period, int count, boolean last) {
    return new RigMessage.CurvePart(
        0, sensor, curve, kind, (int) ticks, period, count, last, false, false);
  }

  private List<SampledLight> curves() {
    return events.stream()
        .filter(CurveSeen.class::isInstance)
        .map(event -> ((CurveSeen) event).light())
        .toList();
  }
}
