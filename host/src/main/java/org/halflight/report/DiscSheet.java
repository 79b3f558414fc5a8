package org.halflight.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.halflight.calibration.PrintedDisc;
import org.halflight.files.OutFile;
import org.halflight.words.Words;

/**
 * A disc with slots of several angles to print and cut out. The edges of the slots are straight
 * lines through the centre, so that every point of the light is uncovered for the same part of a
 * turn.
 */
public final class DiscSheet {
  private static final double OUTER = 85;
  private static final double SLOT_OUTER = 78;
  private static final double SLOT_INNER = 48;
  private static final double HOLE = 2.5;

  /** Of the middle, from the upper edge of the paper. */
  private static final double DOWN = 22 + OUTER;

  private DiscSheet() {}

  /** Writes the sheet. */
  public static void write(Paper paper, OutFile to) {
    to.write(bytes(paper));
  }

  /** The sheet as the bytes of a PDF file. */
  public static byte[] bytes(Paper paper) {
    return CutSheet.bytes(paper, Words.say("disc.title"), DiscSheet::draw);
  }

  private static void draw(CutSheet sheet) throws IOException {
    double x = sheet.width() / 2;
    sheet.circle(x, DOWN, OUTER).circle(x, DOWN, HOLE);
    sheet.line(x - 2 * HOLE, DOWN, x + 2 * HOLE, DOWN);
    sheet.line(x, DOWN - 2 * HOLE, x, DOWN + 2 * HOLE);
    List<Double> slots = PrintedDisc.SLOT_DEGREES;
    double gap = (360 - slots.stream().mapToDouble(Double::doubleValue).sum()) / slots.size();
    double at = 0;
    for (double slot : slots) {
      sheet.slot(x, DOWN, SLOT_INNER, SLOT_OUTER, at, at + slot);
      double middle = Math.toRadians(at + slot / 2);
      sheet.centred(
          8,
          x + (SLOT_INNER - 11) * Math.cos(middle),
          DOWN - (SLOT_INNER - 11) * Math.sin(middle) + 1,
          Words.say("disc.slot", String.format(Locale.ROOT, "%.1f", slot)));
      at += slot + gap;
    }
    double y = DOWN + OUTER + 12;
    sheet.bar(x, y);
    y += 8;
    for (String key : List.of("disc.print", "disc.use", "disc.caution")) {
      y = sheet.paragraph(9, 22, y, sheet.width() - 44, Words.say(key));
    }
  }
}
