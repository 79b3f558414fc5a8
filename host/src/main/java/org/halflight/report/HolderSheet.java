package org.halflight.report;

import java.io.IOException;
import java.util.List;
import org.halflight.files.OutFile;
import org.halflight.words.Words;

/**
 * A holder of card for the photodiode of the starter rig, for two widths of film, and a card with a
 * window for the white plastic. Each holder is folded once: its front is the mask, its back holds
 * the diode.
 */
public final class HolderSheet {
  /** Of film 135 and 120, less half a millimetre that the card needs between the rails. */
  private static final double SMALL_FILM = 34.5;

  private static final double LARGE_FILM = 61;

  private static final double TOP = 22;
  private static final double SIDE = 18;
  private static final double GAP = 12;

  /**
   * Wider than the 2.7 mm of the diode's own square across its corners, so that no light is lost.
   */
  private static final double MASK_RADIUS = 2;

  private static final double ROUND_DIODE_RADIUS = 2.5;

  /** The body of a BPW34 class diode, with some air (from memory). */
  private static final double DIODE_WIDE = 5.6;

  private static final double DIODE_HIGH = 4.6;

  private static final double CARD_WIDE = 66;
  private static final double CARD_HIGH = 66;
  private static final double FOOT = 22;

  /** The spot of the table of lamps and resistors. */
  private static final double WINDOW_RADIUS = 15;

  private HolderSheet() {}

  /** Writes the sheet. */
  public static void write(Paper paper, OutFile to) {
    to.write(bytes(paper));
  }

  /** The sheet as the bytes of a PDF file. */
  public static byte[] bytes(Paper paper) {
    return CutSheet.bytes(paper, Words.say("holder.title"), HolderSheet::draw);
  }

  private static void draw(CutSheet sheet) throws IOException {
    holder(sheet, SIDE, 90, LARGE_FILM, 56, 56, Words.say("holder.large"));
    double right = SIDE + 90 + GAP;
    holder(sheet, right, 64, SMALL_FILM, 36, 24, Words.say("holder.small"));
    double y = TOP + 2 * SMALL_FILM + 8;
    for (String key : List.of("holder.lines", "holder.fold")) {
      y = sheet.paragraph(8, right, y, 64, Words.say(key));
    }
    double below = TOP + 2 * LARGE_FILM + 8;
    windowCard(sheet, SIDE, below);
    double words = SIDE + CARD_WIDE + 8;
    double wide = sheet.width() - SIDE - words;
    sheet.bar(words + CutSheet.BAR_MM / 2, below + 3);
    y = sheet.paragraph(9, words, below + 9, wide, Words.say("holder.print"));
    bench(sheet, words, y + 4);
    y += 38;
    for (String key : List.of("holder.bench", "holder.caution", "holder.untried")) {
      y = sheet.paragraph(8, words, y, wide, Words.say(key));
    }
  }

  /** Front and back of a holder, joined along the fold. */
  private static void holder(
      CutSheet sheet,
      double x,
      double wide,
      double film,
      double frameWide,
      double frameHigh,
      String words)
      throws IOException {
    double middle = x + wide / 2;
    double front = TOP + film / 2;
    double back = TOP + film + film / 2;
    sheet.rectangle(x, TOP, wide, 2 * film);
    sheet.fold(x, TOP + film, x + wide, TOP + film);
    double left = middle - frameWide / 2;
    double upper = front - frameHigh / 2;
    sheet.guide(
        left,
        upper,
        left + frameWide,
        upper,
        left + frameWide,
        upper + frameHigh,
        left,
        upper + frameHigh,
        left,
        upper);
    sheet.circle(middle, front, MASK_RADIUS);
    sheet.centred(7, middle, front - 5, words);
    sheet.centred(7, middle, front + 7, Words.say("holder.front"));
    sheet.rectangle(middle - DIODE_WIDE / 2, back - DIODE_HIGH / 2, DIODE_WIDE, DIODE_HIGH);
    sheet.circle(middle, back, ROUND_DIODE_RADIUS);
    sheet.centred(7, middle, back - 5, Words.say("holder.back"));
    sheet.centred(7, middle, back + 7, Words.say("holder.diode"));
    for (double each : new double[] {front, back}) {
      for (double side = -1; side <= 1; side += 2) {
        sheet.guide(middle + side * (wide / 2 - 6), each, middle + side * wide / 2, each);
        sheet.guide(middle, each + side * (film / 2 - 3), middle, each + side * film / 2);
      }
    }
  }

  /** A card with a window for the white plastic, on a foot. */
  private static void windowCard(CutSheet sheet, double x, double y) throws IOException {
    double middle = x + CARD_WIDE / 2;
    sheet.rectangle(x, y, CARD_WIDE, CARD_HIGH + FOOT);
    sheet.fold(x, y + CARD_HIGH, x + CARD_WIDE, y + CARD_HIGH);
    sheet.circle(middle, y + CARD_HIGH / 2, WINDOW_RADIUS);
    sheet.centred(7, middle, y + CARD_HIGH / 2 - 1, Words.say("holder.window"));
    sheet.centred(7, middle, y + CARD_HIGH / 2 + 3, Words.say("holder.plastic"));
    sheet.centred(7, middle, y + CARD_HIGH + FOOT / 2, Words.say("holder.foot"));
  }

  /** From the side and not to scale: torch, window, camera, holder. */
  private static void bench(CutSheet sheet, double x, double y) throws IOException {
    double axis = y + 13;
    sheet.line(x + 2, axis - 3, x + 16, axis - 3, x + 16, axis - 5, x + 22, axis - 6);
    sheet.line(x + 2, axis + 3, x + 16, axis + 3, x + 16, axis + 5, x + 22, axis + 6);
    sheet.line(x + 2, axis - 3, x + 2, axis + 3).line(x + 22, axis - 6, x + 22, axis + 6);
    sheet.fold(x + 24, axis - 3, x + 44, axis - 7).fold(x + 24, axis + 3, x + 44, axis + 7);
    sheet.rectangle(x + 45, axis - 12, 1, 24);
    sheet.rectangle(x + 50, axis - 7, 10, 14).rectangle(x + 60, axis - 11, 24, 22);
    sheet.line(x + 56, axis - 7, x + 56, axis + 7);
    sheet.rectangle(x + 82, axis - 9, 1.2, 18);
    sheet.line(x + 84.4, axis, x + 92, axis + 3, x + 96, axis + 11);
    sheet.centred(7, x + 12, axis + 10, Words.say("holder.bench.torch"));
    sheet.centred(7, x + 45, axis - 13.5, Words.say("holder.bench.window"));
    sheet.centred(7, x + 55, axis + 15, Words.say("holder.bench.lens"));
    sheet.centred(7, x + 73, axis - 4, Words.say("holder.bench.camera"));
    sheet.centred(7, x + 86, axis - 13.5, Words.say("holder.bench.holder"));
  }
}
