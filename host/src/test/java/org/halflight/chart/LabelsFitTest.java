package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jfree.chart.LegendItemCollection;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * No words of a picture lie on each other, are cut off, or are smaller than the small letters, and
 * the key is never higher than the plot: at the sizes of the bench, from the smallest up. All
 * figures are invented.
 */
class LabelsFitTest {
  /** Letters whose boxes share so little touch at most. */
  private static final double TOUCH_PIXELS = 1;

  @ParameterizedTest
  @CsvSource({
    "300, 160, 4",
    "300, 160, 12",
    "360, 220, 9",
    "380, 200, 5",
    "520, 230, 11",
    "560, 300, 12",
    "680, 380, 7",
    "880, 420, 11",
    "1240, 640, 12",
    "330, 700, 6"
  })
  void wordsKeepOffEachOther(int width, int height, int speeds) {
    List<String> faults = new ArrayList<>();
    for (Map.Entry<String, Picture> entry : InventedPictures.all(speeds, 7).entrySet()) {
      faults(entry.getValue(), Theme.LIGHT.withLetterSize(13), width, height)
          .forEach(fault -> faults.add(entry.getKey() + ": " + fault));
    }
    assertThat(faults).isEmpty();
  }

  static List<String> faults(Picture picture, Theme theme, int width, int height) {
    List<DrawnTexts.Drawn> drawn = DrawnTexts.of(picture, theme, width, height);
    DrawnTexts.Drawn plot = drawn.remove(drawn.size() - 1);
    List<String> faults = new ArrayList<>();
    Rectangle2D whole = new Rectangle2D.Double(0, 0, width, height);
    for (int i = 0; i < drawn.size(); i++) {
      DrawnTexts.Drawn one = drawn.get(i);
      if (!whole.contains(one.box())) {
        faults.add("'" + one.text() + "' is cut off");
      }
      if (one.text().endsWith("...")) {
        faults.add("'" + one.text() + "' is shortened");
      }
      if (one.letterSize() < theme.smallLetters().getSize2D() - 0.01) {
        faults.add("'" + one.text() + "' is too small: " + one.letterSize());
      }
      for (DrawnTexts.Drawn other : drawn.subList(i + 1, drawn.size())) {
        Rectangle2D both = one.box().createIntersection(other.box());
        if (both.getWidth() > TOUCH_PIXELS && both.getHeight() > TOUCH_PIXELS) {
          faults.add("'" + one.text() + "' lies on '" + other.text() + "'");
        }
      }
    }
    if (plot.box().getHeight() < height * 0.25) {
      faults.add("the plot is only " + (int) plot.box().getHeight() + " high");
    }
    if (plot.box().getWidth() < width * 0.3) {
      faults.add("the plot is only " + (int) plot.box().getWidth() + " wide");
    }
    LegendItemCollection items = picture.chart(theme).getXYPlot().getLegendItems();
    Set<String> key = new HashSet<>();
    for (int i = 0; i < items.getItemCount(); i++) {
      key.add(items.get(i).getLabel());
    }
    DoubleSummaryStatistics lines =
        drawn.stream()
            // The key is drawn first; some of its words are over the plot again.
            .filter(text -> key.remove(text.text()))
            .filter(text -> text.box().getMaxY() < plot.box().getMinY())
            .mapToDouble(text -> text.box().getMinY())
            .summaryStatistics();
    double high = lines.getMax() - lines.getMin() + theme.letterSize();
    if (lines.getCount() > 0 && high > plot.box().getHeight()) {
      faults.add("the key is higher than the plot: " + (int) high);
    }
    return faults;
  }
}
