package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import javax.swing.SwingUtilities;
import org.halflight.chart.DataTable;
import org.halflight.chart.Picture;
import org.halflight.chart.Theme;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CategoryPlot;
import org.junit.jupiter.api.Test;

class PictureCanvasTest {
  private final Deque<Runnable> drawing = new ArrayDeque<>();
  private long second;

  @Test
  void aPictureThatCannotBeDrawnKeepsNoOtherFromTheScreen() throws Exception {
    PictureCanvas[] canvas = new PictureCanvas[1];
    SwingUtilities.invokeAndWait(
        () -> {
          canvas[0] =
              new PictureCanvas(
                  "a picture",
                  new Look(false, Theme.LIGHT),
                  drawing::add,
                  () -> second++ * 1_000_000_000L);
          canvas[0].setSize(200, 100);
          canvas[0].show(
              new PictureOf(
                  () -> {
                    throw new IllegalStateException("an odd thing");
                  }));
        });
    // Whoever watches the drawing thread hears of it.
    assertThatThrownBy(() -> drawing.remove().run()).hasMessage("an odd thing");
    SwingUtilities.invokeAndWait(() -> assertThat(canvas[0].isUpToDate()).isTrue());
    SwingUtilities.invokeAndWait(
        () -> canvas[0].show(new PictureOf(() -> new JFreeChart(new CategoryPlot()))));
    drawing.remove().run();
    SwingUtilities.invokeAndWait(() -> assertThat(canvas[0].isUpToDate()).isTrue());
    assertThat(drawing).isEmpty();
  }

  /** Nobody waits for a picture that has no place on the bench. */
  @Test
  void aPictureWithoutRoomIsAsUpToDateAsItGets() throws Exception {
    SwingUtilities.invokeAndWait(
        () -> {
          PictureCanvas canvas =
              new PictureCanvas(
                  "a picture", new Look(false, Theme.LIGHT), drawing::add, () -> second++);
          canvas.setSize(0, 100);
          canvas.show(new PictureOf(() -> new JFreeChart(new CategoryPlot())));
          assertThat(canvas.isUpToDate()).isTrue();
          assertThat(drawing).isEmpty();
          canvas.setSize(200, 100);
          assertThat(canvas.isUpToDate()).isFalse();
        });
  }

  @Test
  void thePictureThatComesBackIsDrawnAgain() throws Exception {
    PictureCanvas[] canvas = new PictureCanvas[1];
    Picture picture = new PictureOf(() -> new JFreeChart(new CategoryPlot()));
    SwingUtilities.invokeAndWait(
        () -> {
          canvas[0] =
              new PictureCanvas(
                  "a picture",
                  new Look(false, Theme.LIGHT),
                  drawing::add,
                  () -> second++ * 1_000_000_000L);
          canvas[0].setSize(200, 100);
          canvas[0].show(picture);
        });
    drawing.remove().run();
    SwingUtilities.invokeAndWait(
        () -> {
          canvas[0].show(null);
          canvas[0].show(picture);
          assertThat(drawing).hasSize(1);
        });
  }

  private record PictureOf(java.util.function.Supplier<JFreeChart> chart) implements Picture {
    @Override
    public JFreeChart chart(Theme theme) {
      return chart.get();
    }

    @Override
    public DataTable table() {
      return new DataTable("", List.of(), List.of(), "");
    }
  }
}
