package org.halflight.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.words.Words;

/**
 * The one page for the owner. Its letters and its picture shrink as far as they can be read, so
 * that all fits; what then is still too long is cut and says so.
 */
final class OwnerPage {
  private static final float LABEL = 86;
  private static final float GAP = 5;
  private static final float CARD_AIR = 22;
  private static final float LOGO_WIDTH = 55 * Sheet.MM;
  private static final float LOGO_HEIGHT = 17 * Sheet.MM;
  private static final Map[] MAPS = {new Map(860, 340), new Map(960, 310), new Map(1060, 290)};
  private static final float[] SIZES = {9, 8.5f, 8, 7.5f, 7};

  /** The units that the speed map is drawn in, over the width of the page. */
  private record Map(float width, float height) {
    float drawn(Sheet sheet) {
      return height * sheet.width() / width + 3;
    }
  }

  /** A part as it is drawn: its points in lines. */
  private record Block(String name, List<List<String>> points) {
    int lines() {
      return points.stream().mapToInt(List::size).sum();
    }
  }

  private final PageInput input;
  private final PageText text;
  private final OwnerText words;
  private final Workshop from;
  private final Optional<PDImageXObject> logo;
  private final PDDocument document;
  private final Letters letters;

  OwnerPage(
      PageInput input,
      PageText text,
      Workshop from,
      Optional<PDImageXObject> logo,
      PDDocument document,
      Letters letters) {
    this.input = input;
    this.text = text;
    this.words = new OwnerText(input, text, from);
    this.from = from;
    this.logo = logo;
    this.document = document;
    this.letters = letters;
  }

  void draw(Sheet sheet) throws IOException {
    head(sheet);
    float room = sheet.room() - PocketCard.height(input) - CARD_AIR;
    List<OwnerText.Section> sections = words.sections();
    Map map = MAPS[MAPS.length - 1];
    float size = SIZES[SIZES.length - 1];
    boolean fits = false;
    for (int i = 0; i < MAPS.length && !fits; i++) {
      for (int j = 0; j < SIZES.length && !fits; j++) {
        map = MAPS[i];
        size = SIZES[j];
        fits = height(blocks(sections, size, sheet), size) <= room - map.drawn(sheet);
      }
    }
    List<Block> blocks = cut(blocks(sections, size, sheet), size, room - map.drawn(sheet));
    for (Block block : blocks) {
      draw(sheet, block, size);
    }
    sheet.down(3);
    pictures(sheet, map);
    sheet.paragraph(Words.say("page.card.hint"), letters.regular(), 7, Ink.QUIET);
    new PocketCard(input, sheet).draw();
  }

  /** The speed map, and the frame at the top speed of curtains beside it. */
  private void pictures(Sheet sheet, Map map) throws IOException {
    List<Picture> pictures = new ArrayList<>();
    pictures.add(
        RunPictures.speedMap(
            Words.say("page.map"), text.parts().stream().map(RunPart::run).toList(), ""));
    input.last().gate().ifPresent(pictures::add);
    float width = map.width() / pictures.size();
    List<PDFormXObject> drawings = new ArrayList<>();
    for (Picture picture : pictures) {
      drawings.add(VectorPicture.of(document, letters, picture, width, map.height()));
    }
    sheet.drawings(drawings, width, map.height());
  }

  private void head(Sheet sheet) throws IOException {
    float top = sheet.y();
    float width = sheet.width();
    if (logo.isPresent()) {
      PDImageXObject picture = logo.get();
      float scale = Math.min(LOGO_WIDTH / picture.getWidth(), LOGO_HEIGHT / picture.getHeight());
      float wide = picture.getWidth() * scale;
      float high = picture.getHeight() * scale;
      sheet.out().drawImage(picture, sheet.left() + width - wide, top - high, wide, high);
      width -= wide + 10;
    }
    lines(sheet, width, from.name(), 13, 1, true);
    lines(sheet, width, words.repairer(), 9, 1, false);
    if (logo.isPresent()) {
      sheet.down(Math.max(0, sheet.y() - (top - LOGO_HEIGHT)));
    }
    if (sheet.y() < top) {
      sheet.down(4);
      sheet.line(sheet.left(), sheet.y(), sheet.width(), 0.5f, Ink.LINE);
      sheet.down(2);
    }
    lines(sheet, sheet.width(), text.title(), 15, 2, true);
    lines(sheet, sheet.width(), words.facts(), 8.5f, 3, false);
    sheet.down(2);
  }

  /** A text of the head, cut after some lines. */
  private void lines(Sheet sheet, float width, String said, float size, int most, boolean bold)
      throws IOException {
    if (said.isBlank()) {
      return;
    }
    var font = bold ? letters.bold() : letters.regular();
    List<String> all = letters.lines(font, size, said, width - size);
    for (int i = 0; i < Math.min(most, all.size()); i++) {
      sheet.down(Sheet.lineHeight(size));
      String cut = i == most - 1 && all.size() > most ? "\u2026" : "";
      sheet.text(
          font,
          size,
          bold ? Ink.BLACK : Ink.QUIET,
          sheet.left(),
          sheet.y() + 0.25f * size,
          all.get(i) + cut);
    }
  }

  private List<Block> blocks(List<OwnerText.Section> sections, float size, Sheet sheet) {
    return sections.stream()
        .map(
            section ->
                new Block(
                    section.name(),
                    section.points().stream()
                        .map(
                            point ->
                                letters.lines(
                                    letters.regular(), size, point, sheet.width() - LABEL))
                        .toList()))
        .toList();
  }

  private static float height(List<Block> blocks, float size) {
    return (float)
        blocks.stream().mapToDouble(block -> GAP + block.lines() * Sheet.lineHeight(size)).sum();
  }

  /** Takes lines from the end of the longest part until all fit. */
  private static List<Block> cut(List<Block> blocks, float size, float room) {
    List<Block> kept = new ArrayList<>(blocks);
    while (height(kept, size) > room) {
      Block longest = kept.stream().max(Comparator.comparingInt(Block::lines)).orElseThrow();
      if (longest.lines() <= 2) {
        break;
      }
      List<String> all = longest.points().stream().flatMap(List::stream).toList();
      List<String> fewer = new ArrayList<>(all.subList(0, all.size() - 2));
      fewer.add(Words.say("page.owner.cut"));
      kept.set(kept.indexOf(longest), new Block(longest.name(), List.of(fewer)));
    }
    return kept;
  }

  private void draw(Sheet sheet, Block block, float size) throws IOException {
    sheet.down(GAP);
    boolean first = true;
    for (List<String> point : block.points()) {
      for (String line : point) {
        sheet.down(Sheet.lineHeight(size));
        float baseline = sheet.y() + 0.25f * size;
        if (first) {
          sheet.text(letters.bold(), size, Ink.BLACK, sheet.left(), baseline, block.name());
        }
        sheet.text(letters.regular(), size, Ink.BLACK, sheet.left() + LABEL, baseline, line);
        first = false;
      }
    }
  }
}
