package org.halflight.report;

import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.halflight.stored.StoredWords;

/** The sheet that a page is printed on, upright. */
public enum Paper {
  /** 210 by 297 mm (ISO 216). */
  A4(210 / 25.4f * 72, 297 / 25.4f * 72),
  /** 8.5 by 11 inches. */
  LETTER(8.5f * 72, 11 * 72);

  /** As they are typed. */
  public static final StoredWords<Paper> WORDS =
      StoredWords.of(
          Paper.class,
          paper ->
              switch (paper) {
                case A4 -> "a4";
                case LETTER -> "letter";
              });

  private final float widthPoints;
  private final float heightPoints;

  Paper(float widthPoints, float heightPoints) {
    this.widthPoints = widthPoints;
    this.heightPoints = heightPoints;
  }

  PDRectangle box() {
    return new PDRectangle(widthPoints, heightPoints);
  }
}
