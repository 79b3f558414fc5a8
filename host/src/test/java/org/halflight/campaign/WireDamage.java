package org.halflight.campaign;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * Damages the lines of a board on their way, in bursts of 1 to 20 lines: dropped, repeated, cut,
 * out of order, with flipped bits, with junk between.
 *
 * <p>A damaged line whose check fits by chance is drawn again: that is what {@link Alterations} are
 * about.
 */
final class WireDamage {
  /** Longest line that the host keeps (docs/protocol.md: 96 bytes with the line end). */
  private static final int KEPT_CHARACTERS = 96;

  private static final int BURST_MOST = 20;

  /** The last beats come whole: where a file ends in silence, nobody can tell what was lost. */
  private static final int SPARED_AT_THE_END = 4;

  /** What is done to the lines of a burst. */
  private enum Way {
    DROP,
    REPEAT,
    CUT,
    SHUFFLE,
    FLIP,
    JUNK,
    EVERYTHING
  }

  /**
   * Lines as they arrived.
   *
   * @param lines what the host keeps of them
   * @param touched the places of the lines of the board that did not come as they were sent
   * @param drawnAgain damaged lines whose check had fitted by chance
   */
  record Arrived(List<InventedSession.Line> lines, BitSet touched, long drawnAgain) {}

  private final Random random;
  private final List<InventedSession.Line> sent;
  private final BitSet spared;
  private final List<InventedSession.Line> arrived = new ArrayList<>();
  private final BitSet touched = new BitSet();
  private String unfinished = "";
  private long drawnAgain;

  private WireDamage(Random random, InventedSession session) {
    this.random = random;
    sent = session.lines();
    spared = session.spared();
  }

  /**
   * Damages about this share of the lines.
   *
   * @param share 0 to 0.05
   */
  static Arrived of(Random random, InventedSession session, double share) {
    WireDamage damage = new WireDamage(random, session);
    damage.send(share / ((1 + BURST_MOST) / 2.0));
    return new Arrived(damage.arrived, damage.touched, damage.drawnAgain);
  }

  private void send(double burstChance) {
    int at = 0;
    while (at < sent.size()) {
      int end = Math.min(untouchable(at), at + 1 + random.nextInt(BURST_MOST));
      if (end > at && random.nextDouble() < burstChance) {
        burst(at, end);
        at = end;
      } else {
        whole(at++);
      }
    }
  }

  /** The next line that is spared; what is joined to the one before it would spoil it too. */
  private int untouchable(int from) {
    int next = spared.nextSetBit(from);
    return (next < 0 ? sent.size() - SPARED_AT_THE_END : next) - 1;
  }

  private void whole(int place) {
    String text = sent.get(place).text();
    if (!unfinished.isEmpty()) {
      touched.set(place);
      text = unfinished + text;
      unfinished = "";
      if (Crc.fits(text)) {
        drawnAgain++;
        return;
      }
    }
    arrive(text, place);
  }

  private void arrive(String text, int place) {
    InventedSession.Line line = sent.get(place);
    if (!text.isEmpty()) {
      arrived.add(line.with(kept(text)));
    }
  }

  private void burst(int from, int to) {
    touched.set(from, to);
    Set<String> own = new HashSet<>();
    sent.subList(from, to).forEach(line -> own.add(line.text()));
    while (true) {
      String before = unfinished;
      List<String> pieces = new ArrayList<>(List.of((before + bytes(from, to)).split("\n", -1)));
      String rest = pieces.remove(pieces.size() - 1);
      if (pieces.stream().map(WireDamage::kept).noneMatch(p -> Crc.fits(p) && !own.contains(p))) {
        for (int i = 0; i < pieces.size(); i++) {
          arrive(pieces.get(i), Math.min(to - 1, from + i));
        }
        unfinished = rest;
        return;
      }
      drawnAgain++;
    }
  }

  /** What the wire brings in the place of some lines; their line ends are in it. */
  private String bytes(int from, int to) {
    Way[] ways = Way.values();
    Way way = ways[random.nextInt(ways.length)];
    List<String> lines =
        new ArrayList<>(sent.subList(from, to).stream().map(InventedSession.Line::text).toList());
    StringBuilder bytes = new StringBuilder();
    if (way == Way.SHUFFLE) {
      java.util.Collections.shuffle(lines, random);
    }
    int times = way == Way.REPEAT ? 2 + random.nextInt(2) : 1;
    for (int time = 0; time < times; time++) {
      for (String line : lines) {
        bytes.append(
            one(way == Way.EVERYTHING ? ways[random.nextInt(ways.length - 1)] : way, line + '\n'));
      }
    }
    return bytes.toString();
  }

  private String one(Way way, String line) {
    return switch (way) {
      case DROP -> "";
      case REPEAT, SHUFFLE, EVERYTHING -> line;
      case CUT -> cut(line);
      case FLIP -> flipped(line);
      case JUNK -> random.nextBoolean() ? junk() : junk() + line;
    };
  }

  private String cut(String line) {
    int at = random.nextInt(line.length());
    return switch (random.nextInt(3)) {
      case 0 -> line.substring(0, at);
      case 1 -> line.substring(0, at) + '\n';
      default -> line.substring(at);
    };
  }

  private String flipped(String line) {
    StringBuilder out = new StringBuilder(line);
    int bits = 1 + random.nextInt(3);
    for (int i = 0; i < bits; i++) {
      int at = random.nextInt(out.length());
      out.setCharAt(at, (char) (out.charAt(at) ^ 1 << random.nextInt(8)));
    }
    return out.toString();
  }

  private String junk() {
    StringBuilder out = new StringBuilder();
    int length = random.nextInt(random.nextInt(10) == 0 ? 400 : 60);
    String among = "0123456789ABCDEF EBHLCD#";
    boolean likeLines = random.nextBoolean();
    for (int i = 0; i < length; i++) {
      out.append(
          likeLines ? among.charAt(random.nextInt(among.length())) : (char) random.nextInt(256));
    }
    return out.append(random.nextBoolean() ? "\n" : "").toString();
  }

  /** As docs/file-formats.md has it: nothing unprintable, nothing too long. */
  private static String kept(String line) {
    String whole = line.endsWith("\r") ? line.substring(0, line.length() - 1) : line;
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < Math.min(KEPT_CHARACTERS, whole.length()); i++) {
      char c = whole.charAt(i);
      out.append(c >= ' ' && c < 0x7F ? c : '?');
    }
    return out.toString();
  }
}
