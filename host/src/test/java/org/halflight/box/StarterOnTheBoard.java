package org.halflight.box;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/**
 * The starter rig's own firmware in the simulator, with a lag of 47 us, noise and a bandgap, before
 * any light. Simulated.
 */
public final class StarterOnTheBoard {
  private static final List<String> SCENARIO =
      List.of(
          "light centre 50 4000",
          "lag centre 47",
          "noise centre 2 7",
          "bandgap 1100",
          BenchInABox.NAMED);

  private StarterOnTheBoard() {}

  /**
   * What the program says of firings.
   *
   * @param folder an empty one
   * @return the effective time of each, in seconds; empty where it says none
   */
  public static List<OptionalDouble> seconds(Path folder, String speed, List<LightCurve> lights)
      throws Exception {
    List<OptionalDouble> seconds = new ArrayList<>();
    try (BenchInABox box = BenchInABox.startStarter(folder, SCENARIO);
        BoxBench bench =
            new BoxBench(box, folder.resolve("starter.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.handle(
          new SessionInput.RunBegins(
              new RunSetup(
                  "",
                  Phase.ADJUSTING,
                  Dial.CUSTOM,
                  List.of(MarkedSpeed.parse(speed)),
                  Reference.EXACT,
                  99)));
      for (int i = 0; i < lights.size(); i++) {
        box.curve("l" + i, lights.get(i));
        seconds.add(bench.fire("l" + i).effectiveSeconds());
      }
    }
    return seconds;
  }
}
