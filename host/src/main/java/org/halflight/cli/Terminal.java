package org.halflight.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.halflight.words.Words;

/** Lines to the person and lines from them. */
public final class Terminal {
  private final PrintStream out;
  private final InputStream in;
  private final BlockingQueue<Line> typed = new LinkedBlockingQueue<>();
  private String liveLine = "";
  private boolean listening;
  private boolean ended;

  /** What was typed; nothing at the end of all. */
  private record Line(Optional<String> words) {}

  public Terminal(PrintStream out, InputStream in) {
    this.out = out;
    this.in = in;
  }

  /** Says a line. */
  void say(String line) {
    if (!liveLine.isEmpty()) {
      out.println();
      liveLine = "";
    }
    // Words from files and from people must not move the cursor or end the line.
    out.println(line.replaceAll("\\p{Cntrl}", " "));
    out.flush();
  }

  /** Says a line that takes the place of the last one said so. */
  void live(String line) {
    if (line.equals(liveLine)) {
      return;
    }
    int shorter = Math.max(0, liveLine.length() - line.length());
    liveLine = line;
    out.print("\r" + line.replaceAll("\\p{Cntrl}", " ") + " ".repeat(shorter));
    out.flush();
  }

  /** The same way out, for help texts. */
  PrintWriter writer() {
    return new PrintWriter(out, true, Charset.defaultCharset());
  }

  /** Says several lines. */
  void say(Iterable<String> lines) {
    lines.forEach(this::say);
  }

  /** A line that the person has typed, without its end; empty when there is none yet. */
  Optional<String> typed() {
    listen();
    Line line = typed.poll();
    ended |= line != null && line.words().isEmpty();
    return Optional.ofNullable(line).flatMap(Line::words);
  }

  /** Whether nobody can type any more. */
  boolean isOver() {
    return ended;
  }

  private void listen() {
    if (listening) {
      return;
    }
    listening = true;
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader lines =
                  new BufferedReader(new InputStreamReader(in, Charset.defaultCharset()))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                  typed.add(new Line(Optional.of(line.strip())));
                }
              } catch (IOException closed) {
                // A terminal that is gone types nothing more; the run itself goes on.
              } finally {
                typed.add(new Line(Optional.empty()));
              }
            },
            "halflight-terminal");
    reader.setDaemon(true);
    reader.start();
  }

  /** Says that a file was written. */
  void written(Path file) {
    say(Words.say("export.written", file));
  }
}
