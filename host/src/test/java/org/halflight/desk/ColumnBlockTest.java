package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.List;
import org.halflight.desk.view.NextText;
import org.junit.jupiter.api.Test;

class ColumnBlockTest {
  /** A line of 3.5 mm that hardly shrinks, in millimetres. */
  private static final double LEAST = 3;

  @Test
  void aLongWordShrinksAndLeavesTheSmallLinesTheirSize() {
    NextPanel panel = new NextPanel(Look.install(false));
    panel.setSize(Look.mm(panel, 100), Look.mm(panel, 41));
    panel.show(new NextText("PRESS", "Adjusting", "pause and let go", "", 4, 5, "4 of 5", false));
    panel.paint(new BufferedImage(1000, 400, BufferedImage.TYPE_INT_RGB).createGraphics());
    List<PaintedComponent.DrawnText> drawn = panel.drawnTexts();
    assertThat(drawn.get(0).text()).startsWith("PRESS");
    assertThat(drawn.get(0).box().getHeight()).isGreaterThanOrEqualTo(Look.mm(panel, LEAST));
    double bottom = drawn.get(drawn.size() - 1).box().getMaxY();
    assertThat(bottom).isLessThan(panel.getHeight());
  }
}
