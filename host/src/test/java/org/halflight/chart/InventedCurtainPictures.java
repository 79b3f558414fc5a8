package org.halflight.chart;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Place;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;

/** Pictures of curtains whose figures are invented. */
final class InventedCurtainPictures {
  static final MarkedSpeed TOP = MarkedSpeed.parse("1/1000");
  static final MarkedSpeed X = MarkedSpeed.parse("1/60");
  static final CurtainFrame LYING = new CurtainFrame(36, false, Direction.A_TO_B);
  static final CurtainFrame UPRIGHT = new CurtainFrame(24, true, Direction.A_TO_B);
  private static final List<Place> PLACES = List.of(Place.values());
  private static final String NOTE = "Practice rig: invented shutter, simulated figures.";

  private InventedCurtainPictures() {}

  static Map<String, Picture> all() {
    CurtainTrack found = track(Phase.AS_FOUND, 36, 12.9, 12.4, 1.05, 1e-3);
    CurtainTrack now = track(Phase.ADJUSTING, 36, 12.6, 12.6, 1.02, 1e-3);
    CurtainTrack capped = capped(found);
    Map<String, Picture> all = new LinkedHashMap<>();
    all.put("gate", gate(LYING, List.of(found, now)));
    all.put("gate-back", gate(new CurtainFrame(36, false, Direction.B_TO_A), List.of(found)));
    all.put("gate-capped", gate(LYING, List.of(capped)));
    all.put(
        "gate-upright",
        gate(
            UPRIGHT,
            List.of(
                track(Phase.AS_FOUND, 24, 6.1, 6.4, 0.9, 1e-3),
                track(Phase.AS_LEFT, 24, 6.1, 6.1, 1.0, 1e-3))));
    all.put("wedge", new WedgePicture(LYING, TOP, List.of(found, now), NOTE));
    all.put("wedge-slow", new WedgePicture(LYING, X, List.of(slow()), NOTE));
    all.put("band", new CurtainBand(LYING, X, slow(), OptionalDouble.of(0.0151), NOTE));
    all.put("band-never", new CurtainBand(LYING, TOP, now, OptionalDouble.empty(), NOTE));
    all.put("offsets-latch", offsets(0.2, 0));
    all.put("offsets-speed", offsets(0, 0.06));
    return all;
  }

  private static CurtainTrack slow() {
    return track(Phase.AS_LEFT, 36, 12.9, 12.4, 18.3, 1 / 60.0);
  }

  static GatePicture gate(CurtainFrame frame, List<CurtainTrack> tracks) {
    return new GatePicture(frame, TOP, Tolerance.HALF, tracks, OptionalDouble.of(2.4), NOTE);
  }

  /**
   * Both curtains accelerate alike.
   *
   * @param firstMillis from sensor to sensor
   * @param openMillis at the start
   */
  static CurtainTrack track(
      Phase phase,
      double frame,
      double firstMillis,
      double secondMillis,
      double openMillis,
      double markedSeconds) {
    double[] passed = {0, 0.56, 1};
    return new CurtainTrack(
        phase,
        IntStream.range(0, 3)
            .mapToObj(
                i -> {
                  double opens = passed[i] * firstMillis;
                  double covers = openMillis + passed[i] * secondMillis;
                  double stops = Math.log((covers - opens) / 1e3 / markedSeconds) / Math.log(2);
                  return new CurtainTrack.At(
                      PLACES.get(i),
                      (i - 1) * 0.45 * frame,
                      OptionalDouble.of(opens / 1e3),
                      OptionalDouble.of(covers / 1e3),
                      OptionalDouble.of(stops),
                      stops - 0.06,
                      stops + 0.08,
                      false);
                })
            .toList());
  }

  private static CurtainTrack capped(CurtainTrack track) {
    OptionalDouble none = OptionalDouble.empty();
    CurtainTrack.At end =
        new CurtainTrack.At(
            Place.END, track.at(Place.END).millimetres(), none, none, none, 0, 0, true);
    return new CurtainTrack(
        track.phase(), List.of(track.at(Place.START), track.at(Place.CENTRE), end));
  }

  private static CurtainOffsets offsets(double offsetMillis, double share) {
    return new CurtainOffsets(
        List.of("1/1000", "1/500", "1/250", "1/125", "1/60").stream()
            .map(
                label -> {
                  double marked = 1 / Double.parseDouble(label.substring(2));
                  return new CurtainOffsets.At(
                      MarkedSpeed.parse(label), marked, offsetMillis / 1e3 + share * marked, 6e-5);
                })
            .toList(),
        OptionalDouble.of(offsetMillis / 1e3),
        OptionalDouble.of(share),
        NOTE);
  }
}
