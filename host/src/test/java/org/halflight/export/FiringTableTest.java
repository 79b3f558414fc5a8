package org.halflight.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FiringTableTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private final Session session = new Session();

  @Test
  void saysWhatWasMovedHowLateTheLightCameAndWhatWasChecked() {
    session.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented camera",
                Phase.AS_LEFT,
                "leaf",
                List.of(MarkedSpeed.parse("1/500")),
                Reference.EXACT,
                1,
                UntimedTest.B)));
    edge(Channel.RELEASE, true, 1);
    edge(Channel.RELEASE, false, 1.05);
    open(4, 4.004);
    session.handle(
        new SessionInput.FiringsMoved(
            List.of(session.results().get(0).key()), MarkedSpeed.parse("1/250")));
    session.handle(new SessionInput.UntimedTestChosen(UntimedTest.B));
    open(6, 7);
    CsvTable table = FiringTable.of(session.results());
    assertThat(column(table, "marked_speed")).containsExactly("1/250", "B");
    assertThat(column(table, "moved_from")).containsExactly("1/500", "");
    assertThat(column(table, "reference_ms")).containsExactly("3.906250", "");
    assertThat(column(table, "outcome")).containsExactly("timed", "opens-holds-closes");
    assertThat(column(table, "release_delay_ms")).containsExactly("3000.000000", "");
    assertThat(column(table, "remarks").get(0)).contains("self-timer");
    assertThat(column(table, "counted")).containsExactly("yes", "no");
  }

  @ParameterizedTest
  @EnumSource(Outcome.class)
  void everyOutcomeIsDocumented(Outcome outcome) throws IOException {
    String docs = Files.readString(Path.of("docs", "file-formats.md"));
    assertThat(docs)
        .contains("`" + outcome.name().toLowerCase(Locale.ROOT).replace('_', '-') + "`");
  }

  @Test
  void everyColumnIsDocumented() throws IOException {
    String docs = Files.readString(Path.of("docs", "file-formats.md"));
    for (String heading : FiringTable.of(List.of()).headings()) {
      String documented = heading.replaceAll("(area|radius)_linear(_ms)?$", "...$2");
      assertThat(docs).contains("`" + documented);
    }
  }

  private void open(double from, double to) {
    edge(Channel.CENTRE_LOW, true, from);
    edge(Channel.CENTRE_HIGH, true, from + 0.0002);
    edge(Channel.CENTRE_HIGH, false, to - 0.0002);
    edge(Channel.CENTRE_LOW, false, to);
    session.handle(new SessionInput.BeatAt(RATE.ticks(to + 0.5), 0));
  }

  private void edge(Channel channel, boolean high, double seconds) {
    session.handle(new SessionInput.EdgeAt(new Edge(channel, high, RATE.ticks(seconds))));
  }

  private static List<String> column(CsvTable table, String heading) {
    int at = table.headings().indexOf(heading);
    return table.rows().stream().map(row -> row.get(at)).toList();
  }
}
