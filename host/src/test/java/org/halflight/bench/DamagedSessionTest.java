package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTests;
import org.halflight.fixtures.Seed;
import org.halflight.record.SessionStart;
import org.halflight.session.Phase;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is in a session file: it is read as it was written, or it is counted as damage. */
@Tag("long")
class DamagedSessionTest {
  /** Files of each form; a fixed number, so that the work is the same on every machine. */
  private static final int FILES = 600;

  private static final String[] ABSURD = {
    "",
    "0",
    "-1",
    "NaN",
    "Infinity",
    "-Infinity",
    "1e999",
    "1e-320",
    "-0.0",
    "2147483647",
    "-2147483648",
    "2147483648",
    "9223372036854775807",
    "-9223372036854775808",
    "99999999999999999999",
    "1/0",
    "1/999999",
    "999999",
    "1/60,1/60,1/60",
    "%00",
    "%",
    "+999999999-12-31T23:59:59.999999999-18:00",
    "-999999999-01-01T00:00+18:00",
    "B",
    "LEAK",
    "STOPS,LEAK",
    "as-left",
    "on-its-way",
    "R-1/1/16000000",
    "R-1/9223372036854775807/-1",
    "a".repeat(5_000)
  };

  @TempDir private Path folder;
  private List<String> lines = List.of();

  @BeforeEach
  void write() throws IOException {
    Path path = folder.resolve("whole.session");
    try (WrittenBench at = new WrittenBench(path)) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_FOUND, 2)));
      for (SessionInput input : MarksTest.inputs().toList()) {
        at.fire(1 / 30.0);
        at.handle(input);
        at.bench().reject("slipped");
        at.bench().undo();
      }
      at.bench().undo();
      at.bench().redo();
      at.startAgain();
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 1)));
      at.fire(1 / 60.0);
      at.press();
    }
    lines = Files.readAllLines(path);
  }

  @Test
  void aChangedByteIsFoundInEveryLineOfTheSecondForm() {
    int changes = 0;
    for (String line : lines.subList(1, lines.size())) {
      Optional<BenchEvent> whole = SessionForm.SECOND.event(line);
      assertThat(whole).isPresent();
      for (int at = 0; at < line.length(); at++) {
        for (int bit = 0; bit < 8; bit++) {
          char other = (char) (line.charAt(at) ^ 1 << bit);
          String changed = line.substring(0, at) + other + line.substring(at + 1);
          assertThat(SessionForm.SECOND.event(changed)).as(changed).isEmpty();
          changes++;
        }
        assertThat(SessionForm.SECOND.event(line.substring(0, at))).isEmpty();
        assertThat(SessionForm.SECOND.event(line.substring(at)))
            .isEqualTo(at == 0 ? whole : Optional.empty());
      }
    }
    System.out.println("DamagedSessionTest: " + changes + " changed bits, none silent");
    assertThat(changes).isGreaterThan(10_000);
  }

  @Test
  void aChangedByteOfTheFileIsDamageOrNothing(@Seed long seed) throws IOException {
    byte[] whole = text(lines).getBytes(StandardCharsets.ISO_8859_1);
    List<BenchEvent> events = read(whole).orElseThrow().events();
    Random random = new Random(seed);
    for (int i = 0; i < FILES; i++) {
      byte[] changed = whole.clone();
      int at = random.nextInt(random.nextInt(4) == 0 ? 30 : whole.length);
      changed[at] =
          (byte)
              (random.nextInt(4) == 0 ? "\r\n \0".charAt(random.nextInt(4)) : random.nextInt(256));
      Optional<SessionFile.Contents> contents = read(changed);
      boolean silent =
          contents.isPresent()
              && contents.get().damagedLines() == 0
              && !contents.get().events().equals(events);
      assertThat(silent).as("byte %d became %d", at, changed[at]).isFalse();
    }
  }

  @Test
  void whateverTheLinesSayNothingButTroubleComesOfIt(@Seed long seed) throws IOException {
    Random random = new Random(seed);
    int damaged = 0;
    for (int i = 0; i < FILES; i++) {
      for (SessionForm form : SessionForm.values()) {
        List<String> bodies = new ArrayList<>(bodies());
        for (int n = 1 + random.nextInt(6); n > 0; n--) {
          mutate(bodies, random);
        }
        Optional<SessionFile.Contents> contents =
            read(text(dressed(form, bodies)).getBytes(StandardCharsets.ISO_8859_1));
        if (contents.isPresent()) {
          damaged += use(contents.get());
        }
      }
    }
    System.out.println("DamagedSessionTest: " + damaged + " lines and marks counted as damage");
    assertThat(damaged).isPositive();
  }

  private static int use(SessionFile.Contents contents) {
    List<BenchEvent> events = contents.events();
    SessionReducer fold = SessionReducer.replay(events);
    Session session = fold.session();
    session.standing();
    session.results().forEach(Sentences::firing);
    ExtraTests.of(Evidence.of(session), session.runs());
    session.runs().forEach(run -> run.markings().speeds());
    ProfiledEvents.without(EffectiveEvents.of(events));
    ProfiledEvents.with(events, ProfileSource.NONE);
    if (!events.isEmpty()) {
      assertThat(SessionStart.of(events.get(0), "").beganAt().map(Instant::toEpochMilli))
          .isNotNull();
    }
    return contents.damagedLines() + fold.damagedMarks();
  }

  private static void mutate(List<String> bodies, Random random) {
    int at = random.nextInt(bodies.size());
    String line = bodies.get(at);
    boolean mark = line.startsWith("M ");
    switch (random.nextInt(mark ? 9 : 5)) {
      case 0 -> bodies.add(random.nextInt(bodies.size()), line);
      case 1 -> bodies.remove(at);
      case 2 -> bodies.set(at, bytes(line, random));
      case 3 -> {
        String[] words = line.split(" ", -1);
        words[1] = ABSURD[random.nextInt(ABSURD.length)];
        bodies.set(at, String.join(" ", words));
      }
      case 4 -> bodies.add(random.nextInt(bodies.size()), bodies.remove(at));
      default -> {
        String[] words = line.split(" ", -1);
        int which = random.nextInt(words.length);
        int equals = words[which].indexOf('=');
        words[which] =
            words[which].substring(0, equals + 1) + ABSURD[random.nextInt(ABSURD.length)];
        bodies.set(at, String.join(" ", words));
      }
    }
  }

  private static String bytes(String line, Random random) {
    if (line.isEmpty()) {
      return line;
    }
    int at = random.nextInt(line.length());
    char c = (char) random.nextInt(256);
    return line.substring(0, at) + (c == '\n' || c == '\r' ? ' ' : c) + line.substring(at + 1);
  }

  /** The lines without numbers and checksums. */
  private List<String> bodies() {
    List<String> bodies = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      bodies.add(EventLine.format(SessionForm.SECOND.event(line).orElseThrow()));
    }
    return bodies;
  }

  /** The lines as a file of a form has them: with fitting numbers and checksums. */
  private static List<String> dressed(SessionForm form, List<String> bodies) {
    List<String> dressed = new ArrayList<>(List.of(form.heading()));
    int number = 0;
    for (String body : bodies) {
      if (form == SessionForm.FIRST) {
        dressed.add(body);
        continue;
      }
      String numbered = body.startsWith("M ") ? "M " + ++number + body.substring(1) : body;
      java.util.zip.CRC32 crc = new java.util.zip.CRC32();
      crc.update(numbered.getBytes(StandardCharsets.ISO_8859_1));
      dressed.add(numbered + String.format(Locale.ROOT, " %08X", crc.getValue()));
    }
    return dressed;
  }

  private static String text(List<String> lines) {
    return String.join("\n", lines) + "\n";
  }

  /** What is read of a file; empty where that is trouble. */
  private Optional<SessionFile.Contents> read(byte[] bytes) throws IOException {
    Path path = Files.write(folder.resolve("mutated.session"), bytes);
    try {
      return Optional.of(SessionFile.read(path));
    } catch (Trouble trouble) {
      return Optional.empty();
    }
  }
}
