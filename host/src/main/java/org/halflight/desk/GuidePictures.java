package org.halflight.desk;

import java.awt.GraphicsEnvironment;
import java.awt.Image;
import java.awt.Toolkit;
import java.awt.image.BaseMultiResolutionImage;
import java.io.IOException;
import java.io.InputStream;
import java.net.MalformedURLException;
import java.net.URL;
import java.util.Collections;
import java.util.Dictionary;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.desk.view.GuideHtml;
import org.jspecify.annotations.Nullable;

/**
 * The pictures of a page of the guide, where a text pane looks for them: its drawings are made
 * beforehand, everything else is loaded as usual.
 */
@SuppressWarnings("JdkObsolete") // a text pane asks for this class
final class GuidePictures extends Dictionary<Object, Image> {
  /** What a text pane calls it. */
  static final String PROPERTY = "imageCache";

  /** A page without drawings. */
  static final GuidePictures NONE = new GuidePictures();

  private static final Pattern SOURCE = Pattern.compile("<img src=\"([^\"]+)\"");

  /** By their addresses as text: addresses themselves are compared by asking the network. */
  private final Map<String, Image> drawings = new LinkedHashMap<>();

  /**
   * Makes the drawings of a page. Reads files, so not for the window's own thread.
   *
   * @param folder where the pages are; null where there are none
   */
  static GuidePictures of(String body, @Nullable URL folder) {
    GuidePictures pictures = new GuidePictures();
    Matcher found = SOURCE.matcher(body);
    while (folder != null && found.find()) {
      if (found.group(1).endsWith(GuideHtml.DRAWING)) {
        pictures.add(folder, found.group(1));
      }
    }
    return pictures;
  }

  private void add(URL folder, String source) {
    try {
      URL drawing = new URL(folder, source);
      byte[] bytes;
      try (InputStream in = drawing.openStream()) {
        bytes = in.readAllBytes();
      }
      drawings.put(drawing.toString(), image(bytes, scaleOfScreen()));
    } catch (MalformedURLException notInTheGuide) {
      return;
    } catch (IOException missing) {
      // The text below a picture says what it shows.
      return;
    }
  }

  /** On a dense screen the letters of a drawing are as fine as those of the text. */
  private static Image image(byte[] drawing, double scale) throws IOException {
    Image usual = SvgImage.of(drawing, GuideHtml.DRAWING_WIDTH);
    return scale <= 1
        ? usual
        : new BaseMultiResolutionImage(
            usual, SvgImage.of(drawing, (int) (scale * GuideHtml.DRAWING_WIDTH)));
  }

  private static double scaleOfScreen() {
    return GraphicsEnvironment.isHeadless()
        ? 1
        : GraphicsEnvironment.getLocalGraphicsEnvironment()
            .getDefaultScreenDevice()
            .getDefaultConfiguration()
            .getDefaultTransform()
            .getScaleX();
  }

  @Override
  public @Nullable Image get(Object source) {
    Image made = drawings.get(source.toString());
    return made == null && source instanceof URL url
        ? Toolkit.getDefaultToolkit().createImage(url)
        : made;
  }

  @Override
  public int size() {
    return drawings.size();
  }

  @Override
  public boolean isEmpty() {
    return drawings.isEmpty();
  }

  @Override
  public Enumeration<Object> keys() {
    return Collections.enumeration(List.copyOf(drawings.keySet()));
  }

  @Override
  public Enumeration<Image> elements() {
    return Collections.enumeration(drawings.values());
  }

  @Override
  public Image put(Object source, Image image) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Image remove(Object source) {
    throw new UnsupportedOperationException();
  }
}
