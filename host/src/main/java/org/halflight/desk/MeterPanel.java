package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;
import org.halflight.light.Aim;
import org.halflight.light.Needle;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.words.AimWords;
import org.halflight.words.Words;

/**
 * The light meter across the window, to be read from two metres: dark end, wanted band, clipping
 * end, the needle of now and the last second as its shadow; below it the same for each outer
 * sensor.
 */
final class MeterPanel extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  private static final double FULL = BoardTraits.FULL_SCALE_COUNTS;

  /** Millimetres at the bench. */
  private static final double CENTRE_MM = 20;

  private static final double OUTER_MM = 9;
  private static final double GAP_MM = 2;
  private static final double LABEL_MM = 4;
  private static final double NAMES_MM = 30;

  private transient Aim aim = Aim.nothing();
  private final NavigableSet<Channel> outers = new TreeSet<>();

  MeterPanel(Look look) {
    super(AccessibleRole.PROGRESS_BAR, Words.say("desk.light.meter"), look);
    setName("lightMeter");
  }

  /** Shows where the needles are; nothing where nobody knows. */
  void show(Optional<Aim> shown) {
    Aim now = shown.orElseGet(Aim::nothing);
    if (!now.equals(aim)) {
      aim = now;
      // Only while the light is aimed are they read; their rows stay.
      now.needles().stream()
          .map(Needle::sensor)
          .filter(sensor -> sensor != Channel.CENTRE_LOW)
          .forEach(outers::add);
      speak(
          aim.needles().stream()
              .map(
                  its ->
                      Words.say(
                          "desk.light.meter.spoken",
                          AimWords.sensor(its.sensor()),
                          AimWords.needle(its)))
              .collect(Collectors.joining(" ")));
      revalidate();
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    double high = 2 * GAP_MM + LABEL_MM + CENTRE_MM + outers.size() * (GAP_MM + OUTER_MM);
    return new Dimension(Look.mm(this, 180), Look.mm(this, high));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(Look.mm(this, 120), getPreferredSize().height);
  }

  @Override
  void paint(Graphics2D g) {
    int label = Look.mm(this, LABEL_MM);
    int y = zoneNames(g, label);
    y += Look.mm(this, GAP_MM);
    row(g, y, Look.mm(this, CENTRE_MM), Channel.CENTRE_LOW);
    y += Look.mm(this, CENTRE_MM);
    for (Channel outer : outers) {
      y += Look.mm(this, GAP_MM);
      row(g, y, Look.mm(this, OUTER_MM), outer);
      y += Look.mm(this, OUTER_MM);
    }
  }

  /** The names of the three zones above the scale; where it ends. */
  private int zoneNames(Graphics2D g, int high) {
    Font font = ofHeight(g, Math.round(high * 0.75f));
    g.setColor(look().ink());
    name(g, font, high, "aim.zone.dark", 0, Aim.LEAST_LIGHT_COUNTS);
    name(g, font, high, "aim.zone.wanted", Aim.WANTED_FROM_COUNTS, Aim.WANTED_TO_COUNTS);
    String clips = Words.say("aim.zone.clips");
    Font fitted = fitted(g, font, clips, getWidth() - x(Aim.WANTED_TO_COUNTS));
    drawShape(g, fitted, clips, getWidth() - width(g, fitted, clips), high);
    return high;
  }

  private void name(Graphics2D g, Font font, int base, String key, double from, double to) {
    String text = Words.say(key);
    int room = x(to) - x(from);
    Font fitted = fitted(g, font, text, room);
    drawShape(g, fitted, text, x(from) + (room - width(g, fitted, text)) / 2, base);
  }

  private void row(Graphics2D g, int y, int high, Channel sensor) {
    Look look = look();
    int left = x(0);
    g.setColor(look.shade());
    g.fillRect(left, y, getWidth() - left, high);
    g.setColor(look.line());
    g.fillRect(left, y, x(Aim.LEAST_LIGHT_COUNTS) - left, high);
    zone(g, y, high, Aim.WANTED_FROM_COUNTS, Aim.WANTED_TO_COUNTS, look.done());
    zone(g, y, high, Aim.SATURATED_COUNTS, FULL, look.attention());
    g.setColor(look.line());
    g.drawRect(left, y, getWidth() - left - 1, high - 1);
    Optional<Needle> needle = aim.needle(sensor);
    needle.ifPresent(its -> needle(g, y, high, its));
    names(g, y, high, sensor, needle);
  }

  private void zone(Graphics2D g, int y, int high, double from, double to, Color colour) {
    g.setColor(new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 70));
    g.fillRect(x(from), y, x(to) - x(from), high);
    g.setColor(colour);
    g.setStroke(new BasicStroke(Math.max(2, Look.px(2))));
    g.drawRect(x(from), y, x(to) - x(from) - 1, high - 1);
  }

  private void needle(Graphics2D g, int y, int high, Needle its) {
    Look look = look();
    Color ink = look.ink();
    g.setColor(new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 80));
    int from = x(its.least());
    g.fillRect(from, y + high / 6, Math.max(1, x(its.most()) - from), high - high / 3);
    g.setColor(ink);
    int thick = Look.mm(this, 1.6);
    g.fillRect(Math.min(getWidth() - thick, x(its.counts()) - thick / 2), y, thick, high);
  }

  /** Name and words of a needle at the left of its row. */
  private void names(Graphics2D g, int y, int high, Channel sensor, Optional<Needle> needle) {
    int room = x(0) - Look.mm(this, GAP_MM);
    int letters = Math.min(Look.mm(this, LABEL_MM), high / 3);
    Font font = ofHeight(g, letters);
    String name = AimWords.sensor(sensor);
    String words = needle.map(AimWords::needle).orElseGet(() -> Words.say("aim.needle.none"));
    g.setColor(look().ink());
    drawShape(g, fitted(g, font, name, room), name, 0, y + high / 2 - letters / 4);
    g.setColor(look().quietInk());
    drawShape(g, fitted(g, font, words, room), words, 0, y + high / 2 + letters + letters / 4);
  }

  private int x(double counts) {
    int left = Look.mm(this, NAMES_MM);
    return left + (int) Math.round((getWidth() - left) * Math.min(1, counts / FULL));
  }
}
