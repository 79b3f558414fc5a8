package org.halflight.desk;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics2D;
import javax.accessibility.AccessibleRole;
import org.halflight.desk.view.NextText;
import org.halflight.words.Words;

/**
 * A bar along the edge of the window, to be seen from the corner of the eye: it fills with good
 * firings, and stands full and steady when a speed is done, until the next firing.
 */
final class EdgeBar extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  private int good;
  private int wanted;
  private boolean done;

  EdgeBar(Look look) {
    super(AccessibleRole.PROGRESS_BAR, Words.say("desk.edge.name"), look);
    setName("edgeBar");
  }

  /**
   * @param speedDone whether a speed has just got its last firing
   */
  void show(NextText next, boolean speedDone) {
    good = next.good();
    wanted = next.wanted();
    done = speedDone || next.done();
    speak(done ? Words.say("desk.edge.done") : next.count());
    repaint();
  }

  boolean isDone() {
    return done;
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(Look.px(16), Look.px(100));
  }

  @Override
  public Dimension getMinimumSize() {
    return getPreferredSize();
  }

  @Override
  void paint(Graphics2D g) {
    int width = getWidth();
    int height = getHeight();
    g.setColor(look().shade());
    g.fillRect(0, 0, width, height);
    if (done) {
      g.setColor(look().done());
      g.fillRect(0, 0, width, height);
    } else if (wanted > 0) {
      Color full = look().done();
      for (int i = 0; i < wanted; i++) {
        // From the bottom up, as a vessel fills.
        int bottom = height - i * height / wanted;
        int top = height - (i + 1) * height / wanted;
        g.setColor(i < good ? full : look().line());
        g.fillRect(i < good ? 0 : width / 2 - 1, top + 2, i < good ? width : 2, bottom - top - 4);
      }
    }
  }
}
