package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A disk that is full in the middle of a line, at each of its bytes. */
class WholeLinesTest {
  private static final BenchEvent FIRST = new BenchEvent.Received(1, "E 0001 0 1 8F3C22A0#4623");

  /** Cut short, a line of the first form says another reason, or rejects without one. */
  private static final BenchEvent.Mark TORN =
      new BenchEvent.Mark(2, "reject", Map.of("because", "knocked the bench"), 1);

  private static final BenchEvent.Mark LAST = new BenchEvent.Mark(3, "speed", Map.of("is", "1"), 2);

  @ParameterizedTest
  @EnumSource
  void whatDidNotFitIsNotThereAndSwallowsNothing(SessionForm form) throws IOException {
    String torn = form.line(TORN) + "\n";
    for (int fits = 0; fits < torn.length(); fits++) {
      FullDisk disk = new FullDisk(Integer.MAX_VALUE);
      WholeLines lines = new WholeLines(disk, 0);
      lines.add(form.line(FIRST));
      disk.room(disk.text().length() + fits);
      assertThatThrownBy(() -> lines.add(form.line(TORN))).isInstanceOf(IOException.class);
      disk.room(Integer.MAX_VALUE);
      lines.add(form.line(LAST));
      assertThat(disk.text()).isEqualTo(form.line(FIRST) + "\n" + form.line(LAST) + "\n");
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatCannotBeTakenBackIsNoEvent(SessionForm form) throws IOException {
    String torn = form.line(TORN) + "\n";
    for (int fits = 0; fits < torn.length(); fits++) {
      FullDisk disk = new FullDisk(Integer.MAX_VALUE);
      disk.shortens(false);
      WholeLines lines = new WholeLines(disk, 0);
      lines.add(form.line(FIRST));
      // Room for a byte more each time: it is full again and again.
      for (int more = 0; more < 4; more++) {
        disk.room(Math.max(disk.text().length(), form.line(FIRST).length() + 1 + fits) + more);
        assertThatThrownBy(() -> lines.add(form.line(TORN))).isInstanceOf(IOException.class);
      }
      disk.room(Integer.MAX_VALUE);
      lines.add(form.line(LAST));
      assertThat(events(form, disk.text()))
          .as("%d bytes", fits)
          .containsExactly(written(form, FIRST), written(form, LAST));
    }
  }

  private static BenchEvent written(SessionForm form, BenchEvent event) {
    return form.event(form.line(event)).orElseThrow();
  }

  private static List<BenchEvent> events(SessionForm form, String text) {
    List<BenchEvent> events = new ArrayList<>();
    text.lines().forEach(line -> form.event(line).ifPresent(events::add));
    return events;
  }
}
