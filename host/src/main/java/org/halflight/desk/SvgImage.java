package org.halflight.desk;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import java.util.Scanner;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * A drawing of the guide as an image, since a text pane cannot show SVG. It knows what the guide's
 * drawings are made of: rectangles, circles, lines, areas, paths and text.
 */
final class SvgImage {
  private static final Pattern STEP = Pattern.compile("[MLCh]|-?[0-9.]+");
  private static final Pattern TURNED =
      Pattern.compile("translate\\(([-0-9.]+) ([-0-9.]+)\\) rotate\\(([-0-9.]+)\\)");
  private static final Map<String, Integer> NUMBERS_OF_A_STEP =
      Map.of("M", 2, "L", 2, "C", 6, "h", 1);

  private final Graphics2D graphics;
  private final Element root;

  private SvgImage(Graphics2D graphics, Element root) {
    this.graphics = graphics;
    this.root = root;
  }

  /**
   * Draws a drawing.
   *
   * @param width of the image in pixels
   * @throws IOException when it cannot be read
   * @throws IllegalArgumentException when something of it is not known
   */
  static BufferedImage of(byte[] drawing, int width) throws IOException {
    Element root = root(drawing);
    double scale = width / number(root, "width", 0);
    int height = (int) Math.ceil(number(root, "height", 0) * scale);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      graphics.setColor(Color.WHITE);
      graphics.fillRect(0, 0, width, height);
      graphics.scale(scale, scale);
      new SvgImage(graphics, root).draw();
    } finally {
      graphics.dispose();
    }
    return image;
  }

  private static Element root(byte[] drawing) throws IOException {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      return factory
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(drawing))
          .getDocumentElement();
    } catch (ParserConfigurationException | SAXException damaged) {
      throw new IOException(damaged);
    }
  }

  private void draw() {
    NodeList parts = root.getChildNodes();
    for (int i = 0; i < parts.getLength(); i++) {
      Node part = parts.item(i);
      if (part instanceof Element element) {
        draw(element);
      }
    }
  }

  private void draw(Element part) {
    switch (part.getTagName()) {
      case "title" -> {}
      case "rect" ->
          draw(
              part,
              new Rectangle2D.Double(
                  number(part, "x", 0),
                  number(part, "y", 0),
                  number(part, "width", 0),
                  number(part, "height", 0)));
      case "circle" -> {
        double radius = number(part, "r", 0);
        draw(
            part,
            new Ellipse2D.Double(
                number(part, "cx", 0) - radius,
                number(part, "cy", 0) - radius,
                2 * radius,
                2 * radius));
      }
      case "polyline" -> draw(part, path("M" + part.getAttribute("points"), false));
      case "polygon" -> draw(part, path("M" + part.getAttribute("points"), true));
      case "path" -> draw(part, path(part.getAttribute("d"), false));
      case "text" -> text(part);
      default -> throw new IllegalArgumentException("not in a drawing: " + part.getTagName());
    }
  }

  private void draw(Element part, Shape shape) {
    String fill = attribute(part, "fill", "#000");
    if (!fill.equals("none")) {
      graphics.setColor(Color.decode(sixDigits(fill)));
      graphics.setComposite(
          AlphaComposite.getInstance(
              AlphaComposite.SRC_OVER, (float) number(part, "fill-opacity", 1)));
      graphics.fill(shape);
      graphics.setComposite(AlphaComposite.SrcOver);
    }
    String stroke = attribute(part, "stroke", "none");
    if (!stroke.equals("none")) {
      graphics.setColor(Color.decode(sixDigits(stroke)));
      graphics.setStroke(stroke(part));
      graphics.draw(shape);
    }
  }

  private static BasicStroke stroke(Element part) {
    float width = (float) number(part, "stroke-width", 1);
    String dashes = attribute(part, "stroke-dasharray", "none");
    boolean round = attribute(part, "stroke-linecap", "").equals("round");
    int cap = round ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT;
    int join = round ? BasicStroke.JOIN_ROUND : BasicStroke.JOIN_MITER;
    if (dashes.equals("none")) {
      return new BasicStroke(width, cap, join);
    }
    double[] lengths =
        Arrays.stream(dashes.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
    float[] dash = new float[lengths.length];
    for (int i = 0; i < dash.length; i++) {
      dash[i] = (float) lengths[i];
    }
    return new BasicStroke(width, cap, join, 10, dash, 0);
  }

  /** A path of steps; points without a letter are joined by lines. */
  private static Path2D path(String steps, boolean closed) {
    Path2D path = new Path2D.Double();
    try (Scanner words = new Scanner(steps)) {
      String[] all = words.findAll(STEP).map(MatchResult::group).toArray(String[]::new);
      String step = "M";
      for (int i = 0; i < all.length; ) {
        if (NUMBERS_OF_A_STEP.containsKey(all[i])) {
          step = all[i];
          i++;
        }
        int count = NUMBERS_OF_A_STEP.getOrDefault(step, 0);
        double[] at = Arrays.stream(all, i, i + count).mapToDouble(Double::parseDouble).toArray();
        i += count;
        switch (step) {
          case "M" -> path.moveTo(at[0], at[1]);
          case "L" -> path.lineTo(at[0], at[1]);
          case "C" -> path.curveTo(at[0], at[1], at[2], at[3], at[4], at[5]);
          default ->
              path.lineTo(path.getCurrentPoint().getX() + at[0], path.getCurrentPoint().getY());
        }
        step = step.equals("M") ? "L" : step;
      }
    }
    if (closed) {
      path.closePath();
    }
    return path;
  }

  private void text(Element part) {
    String words = part.getTextContent();
    boolean bold = attribute(part, "font-weight", "normal").equals("bold");
    graphics.setFont(
        Look.letters()
            .deriveFont(bold ? Font.BOLD : Font.PLAIN, (float) number(part, "font-size", 12)));
    double wide = graphics.getFontMetrics().getStringBounds(words, graphics).getWidth();
    double left =
        switch (attribute(part, "text-anchor", "start")) {
          case "middle" -> wide / 2;
          case "end" -> wide;
          default -> 0;
        };
    graphics.setColor(Color.decode(sixDigits(attribute(part, "fill", "#000"))));
    AffineTransform upright = graphics.getTransform();
    var turned = TURNED.matcher(part.getAttribute("transform"));
    if (turned.matches()) {
      graphics.translate(Double.parseDouble(turned.group(1)), Double.parseDouble(turned.group(2)));
      graphics.rotate(Math.toRadians(Double.parseDouble(turned.group(3))));
    }
    graphics.drawString(words, (float) (number(part, "x", 0) - left), (float) number(part, "y", 0));
    graphics.setTransform(upright);
  }

  private static String sixDigits(String colour) {
    return colour.length() == 4 ? colour.replaceAll("([0-9a-fA-F])", "$1$1") : colour;
  }

  private static double number(Element part, String name, double otherwise) {
    String said = part.getAttribute(name);
    if (said.endsWith("%")) {
      double share = Double.parseDouble(said.substring(0, said.length() - 1)) / 100;
      return share * number(part.getOwnerDocument().getDocumentElement(), name, otherwise);
    }
    return said.isEmpty() ? otherwise : Double.parseDouble(said);
  }

  private static String attribute(Element part, String name, String otherwise) {
    String said = part.getAttribute(name);
    return said.isEmpty() ? otherwise : said;
  }
}
