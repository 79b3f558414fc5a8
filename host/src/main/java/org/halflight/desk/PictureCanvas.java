package org.halflight.desk;

import java.awt.Graphics2D;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.DoubleConsumer;
import java.util.function.LongSupplier;
import javax.accessibility.AccessibleRole;
import javax.swing.Timer;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.chart.Theme;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * A picture on the screen, drawn on another thread and at most twenty times a second, so that the
 * window stays quick however many firings it shows.
 */
final class PictureCanvas extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  private static final long LEAST_NANOS = 50_000_000;
  private static final int LEAST_PIXELS = 40;

  /** A wish for a picture: everything that its pixels depend on. */
  private record Wish(Picture picture, Theme theme, int width, int height, double scale) {}

  private final transient Executor drawing;
  private final transient LongSupplier nanos;
  private final Timer later;
  private transient @Nullable Picture picture;
  private transient PictureImage.@Nullable Drawn drawn;
  private transient @Nullable Wish shown;
  private transient @Nullable Wish underWay;
  private long lastNanos;
  private double markedFrom = Double.NaN;
  private double markedTo = Double.NaN;
  private transient DoubleConsumer onChoice = place -> {};

  /**
   * @param name what the picture is called aloud
   * @param drawing where pictures are drawn, one after the other
   * @param nanos a clock that never runs back
   */
  PictureCanvas(String name, Look look, Executor drawing, LongSupplier nanos) {
    super(AccessibleRole.CANVAS, name, look);
    this.drawing = drawing;
    this.nanos = nanos;
    later = new Timer(0, event -> draw());
    later.setRepeats(false);
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            draw();
          }
        });
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            choose(event.getX());
          }
        });
  }

  /** Shows a picture as soon as it is drawn; null for none. */
  void show(@Nullable Picture another) {
    if (another != picture) {
      picture = another;
      draw();
    }
  }

  /** The picture that was asked for last. */
  Optional<Picture> picture() {
    return Optional.ofNullable(picture);
  }

  /** Marks a part of the plot, from 0 at its left to 1 at its right; not a number for none. */
  void mark(double from, double to) {
    markedFrom = from;
    markedTo = to;
    repaint();
  }

  /** Hears where in the plot somebody has clicked, from 0 to 1. */
  void onChoice(DoubleConsumer hearer) {
    onChoice = hearer;
  }

  /** Whether the picture that was asked for last is the one on the screen. */
  boolean isUpToDate() {
    return underWay == null && (picture == null || hasNoRoom() || wish(picture).equals(shown));
  }

  @Override
  public void look(Look another) {
    super.look(another);
    draw();
  }

  /** Whether it is too small for any picture, such as one that the bench has no place for. */
  private boolean hasNoRoom() {
    return getWidth() < LEAST_PIXELS || getHeight() < LEAST_PIXELS;
  }

  private Wish wish(Picture of) {
    double scale =
        getGraphicsConfiguration() == null
            ? 1
            : getGraphicsConfiguration().getDefaultTransform().getScaleX();
    return new Wish(of, look().theme(), getWidth(), getHeight(), scale);
  }

  private void draw() {
    if (picture == null) {
      drawn = null;
      // The same picture may come back: it is drawn again then.
      shown = null;
    }
    if (picture == null || hasNoRoom()) {
      repaint();
      return;
    }
    Wish wish = wish(picture);
    if (underWay != null || wish.equals(shown)) {
      return;
    }
    long since = nanos.getAsLong() - lastNanos;
    if (shown != null && since < LEAST_NANOS) {
      later.setInitialDelay((int) ((LEAST_NANOS - since) / 1_000_000) + 1);
      later.start();
      return;
    }
    underWay = wish;
    LatestWork.there(
        drawing,
        () ->
            PictureImage.drawn(
                wish.picture(), wish.theme(), wish.width(), wish.height(), wish.scale()),
        image -> arrived(wish, image));
  }

  private void arrived(Wish wish, PictureImage.@Nullable Drawn image) {
    underWay = null;
    shown = wish;
    drawn = image;
    lastNanos = nanos.getAsLong();
    repaint();
    draw();
  }

  private void choose(int x) {
    if (drawn != null && x >= drawn.plot().getMinX() && x <= drawn.plot().getMaxX()) {
      onChoice.accept((x - drawn.plot().getMinX()) / drawn.plot().getWidth());
    }
  }

  @Override
  void paint(Graphics2D g) {
    g.setColor(look().ground());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (drawn == null || picture == null || shown == null) {
      if (picture != null && shown != null) {
        g.setColor(look().quietInk());
        g.drawString(Words.say("desk.picture.failed"), Look.px(12), g.getFontMetrics().getHeight());
      }
      return;
    }
    g.drawImage(drawn.image(), 0, 0, shown.width(), shown.height(), null);
    if (!Double.isNaN(markedFrom)) {
      Rectangle2D plot = drawn.plot();
      double left = plot.getMinX() + markedFrom * plot.getWidth();
      double width = (markedTo - markedFrom) * plot.getWidth();
      g.setColor(look().ink());
      // A foot under the chosen speed: nothing on top of the firings.
      g.fill(
          new RoundRectangle2D.Double(
              left + width * 0.12, plot.getMaxY() + 1, width * 0.76, Look.px(5), 5, 5));
    }
  }
}
