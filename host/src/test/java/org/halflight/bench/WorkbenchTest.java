package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkbenchTest {
  private static final BenchEvent.Mark BEGINS = new BenchEvent.Mark(0, Marks.BEGINS, Map.of());

  @TempDir private Path folder;

  @Test
  void goingOnWithASessionChangesNothingThatWasTakenInBefore() {
    Path path = folder.resolve("a.session");
    // The program dies when the closing was seen and its quiet time has not passed.
    Workbench died = Workbench.begin(SessionFile.create(path), () -> 7_000, BEGINS);
    onMessage(
        died, new RigMessage.Greeting(0, 1, 16_000_000, "full", 0x7F, "R-1", 1, "power", "1", 0));
    died.handle(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    onMessage(died, new RigMessage.EdgeSeen(1, Channel.CENTRE_LOW, true, 1_000_000));
    onMessage(died, new RigMessage.EdgeSeen(2, Channel.CENTRE_HIGH, true, 1_016_000));
    onMessage(died, new RigMessage.EdgeSeen(3, Channel.CENTRE_HIGH, false, 1_112_000));
    onMessage(died, new RigMessage.EdgeSeen(4, Channel.CENTRE_LOW, false, 1_128_000));
    assertThat(died.fold().session().results()).isEmpty();
    died.close();

    List<BenchEvent> before = SessionFile.read(path).events();
    List<FiringResult> takenIn = SessionReducer.replay(before).session().results();
    assertThat(takenIn).extracting(FiringResult::outcome).containsExactly(Outcome.TIMED);
    try (Workbench goesOn =
        Workbench.resume(SessionFile.resume(path), () -> 9_000, before, BEGINS)) {
      assertThat(goesOn.fold().session().results()).isEqualTo(takenIn);
      assertThat(goesOn.fold().session().shown()).contains(MarkedSpeed.parse("1/125"));
    }
    assertThat(SessionReducer.replay(SessionFile.read(path).events()).session().results())
        .isEqualTo(takenIn);
  }

  private static void onMessage(Workbench bench, RigMessage message) {
    bench.onEvent(new BenchEvent.Received(bench.now(), LineCodec.format(message)));
  }
}
