package org.halflight.report;

import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** The sheet that a page is printed on, upright. */
public enum Paper {
  /** 210 by 297 mm (ISO 216). */
  A4(PDRectangle.A4),
  /** 8.5 by 11 inches. */
  LETTER(PDRectangle.LETTER);

  private final PDRectangle box;

  Paper(PDRectangle box) {
    this.box = box;
  }

  PDRectangle box() {
    return box;
  }
}
