package org.halflight.rig.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.halflight.link.Link;
import org.halflight.rig.LineCodec;
import org.halflight.rig.LineReader;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;

/** Reads a link to its end for now, and insists that every line is a good one. */
final class Listener {
  private final Link link;
  private final LineReader reader = new LineReader();
  private final StringBuilder text = new StringBuilder();
  private final List<RigMessage> messages = new ArrayList<>();
  private int commandSequence = 0x00A0;

  Listener(Link link) {
    this.link = link;
  }

  /** Reads until nothing more comes; the messages that came since the last call. */
  List<RigMessage> receive() {
    List<RigMessage> heard = new ArrayList<>();
    byte[] buffer = new byte[64];
    int count;
    while ((count = link.read(buffer)) > 0) {
      text.append(new String(buffer, 0, count, StandardCharsets.US_ASCII));
      for (String line : reader.accept(buffer, count)) {
        ParsedLine parsed = LineCodec.parse(line);
        assertThat(parsed).as(line).isInstanceOf(ParsedLine.Message.class);
        heard.add(((ParsedLine.Message) parsed).message());
        messages.add(((ParsedLine.Message) parsed).message());
      }
    }
    return heard;
  }

  /** Sends a command and receives what comes; returns its line counter. */
  int send(RigCommand command) {
    commandSequence++;
    sendRaw(LineCodec.format(commandSequence, command));
    return commandSequence;
  }

  void sendRaw(String line) {
    link.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  /** Everything heard so far, as it came; also of a call that ended with a lost link. */
  String text() {
    return text.toString();
  }

  List<RigMessage> messages() {
    return messages;
  }

  static <T extends RigMessage> List<T> only(Class<T> kind, List<RigMessage> messages) {
    return messages.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
