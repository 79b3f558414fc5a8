package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;
import org.halflight.light.Aim;
import org.halflight.words.AimWords;
import org.halflight.words.Words;

/**
 * Three lamps beside the light meter, each with its words: a full disc where all is well, a
 * triangle where something is to be mended, a ring where nothing is known.
 */
final class AimLamps extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  private static final double ROW_MM = 13;
  private static final double SIGN_MM = 8;
  private static final double LETTERS_MM = 3.4;

  private transient Aim aim = Aim.nothing();

  AimLamps(Look look) {
    super(AccessibleRole.LABEL, Words.say("desk.light.lamps"), look);
    setName("lightLamps");
  }

  void show(Optional<Aim> shown) {
    Aim now = shown.orElseGet(Aim::nothing);
    if (!now.equals(aim)) {
      aim = now;
      speak(
          Arrays.stream(Aim.Lamp.values())
              .map(
                  its ->
                      Words.say(
                          "desk.light.meter.spoken", AimWords.name(its), AimWords.lamp(aim, its)))
              .collect(Collectors.joining(" ")));
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(Look.mm(this, 58), Look.mm(this, ROW_MM * Aim.Lamp.values().length));
  }

  @Override
  public Dimension getMinimumSize() {
    return getPreferredSize();
  }

  @Override
  void paint(Graphics2D g) {
    int y = 0;
    for (Aim.Lamp lamp : Aim.Lamp.values()) {
      row(g, y, lamp);
      y += Look.mm(this, ROW_MM);
    }
  }

  private void row(Graphics2D g, int y, Aim.Lamp lamp) {
    int sign = Look.mm(this, SIGN_MM);
    int high = Look.mm(this, ROW_MM);
    int letters = Look.mm(this, LETTERS_MM);
    sign(g, y + (high - sign) / 2, sign, aim.of(lamp));
    int left = sign + Look.mm(this, 3);
    int room = getWidth() - left;
    Font font = ofHeight(g, letters);
    String name = AimWords.name(lamp);
    String words = AimWords.lamp(aim, lamp);
    g.setColor(look().ink());
    drawShape(g, fitted(g, font, name, room), name, left, y + high / 2 - letters / 3);
    g.setColor(look().quietInk());
    drawShape(g, fitted(g, font, words, room), words, left, y + high / 2 + letters + letters / 3);
  }

  private void sign(Graphics2D g, int y, int size, Aim.State state) {
    Color colour =
        switch (state) {
          case GOOD -> look().done();
          case BAD -> look().attention();
          case UNKNOWN -> look().quietInk();
        };
    g.setColor(colour);
    g.setStroke(new BasicStroke(Math.max(2, size / 10)));
    switch (state) {
      case GOOD -> g.fill(new Ellipse2D.Double(1, y, size - 2, size - 2));
      case UNKNOWN -> g.draw(new Ellipse2D.Double(2, y + 1, size - 4, size - 4));
      case BAD -> {
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(size / 2.0, y);
        triangle.lineTo(size, y + size - 1);
        triangle.lineTo(0, y + size - 1);
        triangle.closePath();
        g.fill(triangle);
      }
    }
  }
}
