package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.halflight.link.serial.SerialPorts;
import org.halflight.words.ForbiddenWords;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/** Plain words in what {@code --help} says: of each command, option and argument. */
class HelpWordsTest {
  private final ForbiddenWords forbidden = new ForbiddenWords("help");
  private final List<String> found = new ArrayList<>();
  private int looked;

  @Test
  void helpHasNoForbiddenWord() {
    Surroundings surroundings =
        new Surroundings(
            new Terminal(
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                new ByteArrayInputStream(new byte[0])),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.EPOCH,
            Path.of("target"),
            "test");
    look(Halflight.model(surroundings));
    assertThat(found).isEmpty();
    assertThat(forbidden.needless()).isEmpty();
    assertThat(looked).isGreaterThan(150);
  }

  private void look(CommandLine command) {
    CommandSpec spec = command.getCommandSpec();
    String place = "help " + spec.qualifiedName();
    look(place, spec.usageMessage().description());
    look(place, spec.usageMessage().footer());
    for (ArgSpec each : spec.args()) {
      look(place, each.description());
    }
    command.getSubcommands().values().forEach(this::look);
  }

  private void look(String place, String... lines) {
    looked++;
    found.addAll(forbidden.in(place, String.join(" ", lines)));
  }
}
