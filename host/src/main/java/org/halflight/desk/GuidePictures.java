package org.halflight.desk;

import java.awt.GraphicsEnvironment;
import java.awt.Image;
import java.awt.Toolkit;
import java.awt.image.BaseMultiResolutionImage;
import java.io.IOException;
import java.io.InputStream;
import java.net.MalformedURLException;
import java.net.URL;
import java.util.Hashtable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.desk.view.GuideHtml;
import org.jspecify.annotations.Nullable;

/**
 * The pictures of a page of the guide, where a text pane looks for them: its drawings are made
 * beforehand, everything else is loaded as usual.
 */
final class GuidePictures extends Hashtable<URL, Image> {
  private static final long serialVersionUID = 1L;

  /** What a text pane calls it. */
  static final String PROPERTY = "imageCache";

  /** A page without drawings. */
  static final GuidePictures NONE = new GuidePictures();

  private static final Pattern SOURCE = Pattern.compile("<img src=\"([^\"]+)\"");

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
      put(drawing, image(bytes, scaleOfScreen()));
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
  public synchronized @Nullable Image get(Object source) {
    Image made = super.get(source);
    return made == null && source instanceof URL url
        ? Toolkit.getDefaultToolkit().createImage(url)
        : made;
  }
}
