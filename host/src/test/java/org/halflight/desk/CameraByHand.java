package org.halflight.desk;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JTable;
import javax.swing.JTextArea;
import org.halflight.job.Photo;
import org.halflight.photo.SamplePictures;
import org.jspecify.annotations.Nullable;

/** A person at the camera place: intake, strip sheet, photographs, work log, handing back. */
final class CameraByHand {
  static final String LABEL = "Uncle Bo";
  static final String COMPLAINT = "sticks in the cold";
  static final String ANSWER = "the slow speeds are cleaned and keep time";

  private final Path screens;
  private final Path inbox;
  private final DeskHand hand;
  private final Clock clock;

  CameraByHand(Path folder, DeskHand hand, Clock clock) {
    this.screens = folder.resolve("screens");
    this.inbox = folder.resolve("inbox");
    this.hand = hand;
    this.clock = clock;
  }

  /** What the owner says, first without film and then with it, or the other way round. */
  void intake(String speeds) {
    hand.key(KeyEvent.VK_F4);
    hand.fill("detail.COMPLAINT", "sticks");
    hand.choose("detail.FILM", 2);
    hand.fill("cameraLabel", LABEL);
    hand.fill("cameraJob", "J-17");
    if (!speeds.isEmpty()) {
      hand.fill("cameraSpeeds", speeds);
    }
    hand.click("keepCamera");
    hand.await("the camera is named", v -> hand.find("handBack").isEnabled());
    hand.reads("Do not open the back");
    hand.fill("detail.COMPLAINT", COMPLAINT);
    hand.choose("detail.FILM", 1);
    hand.click("keepCamera");
    hand.await(
        "what it was before is at the field",
        v -> "Before: sticks".equals(tip("detail.COMPLAINT")));
    check(text("cameraTrouble").isEmpty(), text("cameraTrouble"));
    shot("03-intake");
  }

  /** Pictures come from a telephone; one of them is of a kind that is not read. */
  void picturesArrive() throws IOException {
    arrives("IMG_0117.JPG", SamplePictures.jpeg(1200, 900, 6, "", ""));
    arrives("IMG_0118.png", SamplePictures.picture("png", 900, 600));
    arrives("scan.png", SamplePictures.picture("png", 300, 900));
    arrives(
        "IMG_0119.heic", "\0\0\0\30ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1));
  }

  private void arrives(String name, byte[] picture) throws IOException {
    Path file = Files.write(folderOf(inbox).resolve(name), picture);
    Files.setLastModifiedTime(file, FileTime.from(clock.instant()));
  }

  private static Path folderOf(Path folder) throws IOException {
    return Files.createDirectories(folder);
  }

  /** Springs, shims and a measure, as they come apart. */
  void strip() {
    hand.key(KeyEvent.VK_F4);
    JTable lines = (JTable) hand.find("sheetLines");
    note(0, "3 turns from slack", "high-speed spring");
    note(1, "two", "under the flange");
    hand.await("it says how shims are written", v -> text("sheetHint").contains("0.10 0.05"));
    note(1, "0,10 0.05", "under the flange");
    note(6, "43.97", "depth gauge");
    hand.await("three lines", v -> lines.getRowCount() == 3);
    hand.reads("3 turns from slack", "2 shims, 0.10, 0.05 mm", "43.97");
    shot("07-strip-sheet");
  }

  /** What is not together again is named when the camera is to go; ticks, a correction, undo. */
  void assemble() {
    hand.key(KeyEvent.VK_F4);
    JTable lines = (JTable) hand.find("sheetLines");
    hand.click("handBack");
    hand.await("it names what is open", v -> asked().contains("2 shims"));
    shot("12-open");
    hand.await("Enter would do it", v -> hand.find("askYes").isFocusOwner());
    hand.key(KeyEvent.VK_ESCAPE);
    hand.await("Esc leaves it open", v -> asked().isEmpty());
    hand.focus("sheetLines");
    select(lines, 1);
    hand.key(KeyEvent.VK_SPACE);
    hand.await("ticked", v -> lines.getValueAt(1, 0).equals("ticked"));
    hand.fill("sheetWords", "0.10");
    hand.click("sheetCorrect");
    hand.await("corrected, to be ticked again", v -> lines.getValueAt(1, 0).equals("to tick"));
    check(hand.find("sheetCorrect").isFocusOwner(), "the focus stays at the button");
    check(text("sheetSaid").contains("Before: 2 shims, 0.10, 0.05 mm"), text("sheetSaid"));
    shot("12-corrected");
    hand.focus("sheetLines");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("ticked again", v -> lines.getValueAt(1, 0).equals("ticked"));
    select(lines, 2);
    hand.click("sheetStrike");
    hand.await("struck out", v -> lines.getValueAt(2, 0).equals("struck out"));
    undoneAndDoneAgain(lines);
    shot("12-assembled");
  }

  /** What the owner is told. */
  void answer() {
    hand.key(KeyEvent.VK_F4);
    hand.fill("detail.ANSWER", ANSWER);
    hand.fill("detail.LUBRICANT", "a trace of oil on two pivots");
    hand.click("keepCamera");
    hand.focus("keepCamera");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("no answer again", v -> field("detail.ANSWER").isEmpty());
    hand.focus("keepCamera");
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("answered again", v -> field("detail.ANSWER").equals(ANSWER));
    shot("13-answer");
  }

  void handBack() {
    hand.key(KeyEvent.VK_F4);
    hand.click("handBack");
    hand.await("it asks", v -> hand.find("askYes").isFocusOwner());
    check(!asked().contains("Not ticked"), asked());
    hand.key(KeyEvent.VK_ENTER);
    hand.await("handed back", v -> text("cameraTrouble").contains("is handed back"));
    hand.await("it is over", v -> !hand.find("handBack").isEnabled());
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("the visit goes on", v -> hand.find("handBack").isEnabled());
    check(text("cameraTrouble").equals("Undone: Uncle Bo handed back."), text("cameraTrouble"));
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("handed back again", v -> !hand.find("handBack").isEnabled());
    shot("16-handed-back");
  }

  /** Pictures that have arrived meanwhile: enlarged, named, taken off and put back. */
  void photos() {
    hand.reveal("photos");
    JList<?> photos = (JList<?>) hand.find("photos");
    hand.await("pictures have joined the visit", v -> photos.getModel().getSize() == 4);
    DeskHand.onScreen(
        () -> {
          photos.setSelectedIndex(0);
          return true;
        });
    hand.fill("photoCaption", "the shims as found");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it has its caption", v -> photo(photos, 0).caption().equals("the shims as found"));
    shot("07-photos");
    hand.focus("photos");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it is enlarged", v -> ((JLabel) hand.find("photoLarge")).getIcon() != null);
    shot("07-photo");
    hand.key(KeyEvent.VK_ESCAPE);
    hand.await("all again", v -> photos.isFocusOwner());
    String first = photo(photos, 0).name();
    hand.key(KeyEvent.VK_DELETE);
    hand.await("it is taken off", v -> photos.getModel().getSize() == 3);
    hand.focus("photos");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("it is back", v -> photos.getModel().getSize() == 4);
    check(photo(photos, 0).name().equals(first), first);
  }

  private static Photo photo(JList<?> photos, int row) {
    return (Photo) photos.getModel().getElementAt(row);
  }

  /** An entry of the work log is corrected; the earlier values are listed. */
  void log() {
    JList<?> log = (JList<?>) hand.find("log");
    hand.fill("logText", "blades");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it is in the log", v -> log.getModel().getSize() == 1);
    DeskHand.onScreen(
        () -> {
          log.setSelectedIndex(0);
          return true;
        });
    hand.fill("logText", "blades and rings");
    hand.fill("logValue", "0,15");
    hand.click("logCorrect");
    hand.await(
        "it is corrected",
        v -> log.getModel().getElementAt(0).toString().contains("blades and rings (0.15 mm)"));
    hand.reveal("earlier");
    JList<?> earlier = (JList<?>) hand.find("earlier");
    hand.await("what it said before is listed", v -> earlier.getModel().getSize() >= 3);
    shot("07-earlier");
    hand.click("logStrike");
    hand.await("it is taken back", v -> log.getModel().getSize() == 0);
  }

  /** F10 and the arrow keys walk the menu, which says what would be undone. */
  void menu() {
    hand.key(KeyEvent.VK_F10);
    hand.walk(KeyEvent.VK_DOWN, "menu.EDIT");
    hand.key(KeyEvent.VK_RIGHT);
    hand.walk(KeyEvent.VK_DOWN, "menu.UNDO");
    check(hand.walked().equals("Undo: Uncle Bo handed back, key Ctrl+Z"), hand.walked());
    shot("17-menu");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("undone by the menu", v -> hand.find("handBack").isEnabled());
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("and done again", v -> !hand.find("handBack").isEnabled());
  }

  /** The page about this place, without a browser. */
  void help() {
    hand.key(KeyEvent.VK_F1, KeyEvent.VK_CONTROL);
    hand.await("the guide", v -> page().contains("A camera that comes back"));
    shot("17-help");
    hand.key(KeyEvent.VK_F1, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
    hand.await("about", v -> page().contains("Licence: Apache 2.0"));
    hand.click("aboutCopy");
    hand.await("copied", v -> label("aboutCopied").contains("Copied"));
    shot("17-about");
  }

  private String page() {
    javax.swing.JEditorPane page = (javax.swing.JEditorPane) hand.find("helpText");
    try {
      return page.getDocument().getText(0, page.getDocument().getLength());
    } catch (javax.swing.text.BadLocationException impossible) {
      throw new AssertionError(impossible);
    }
  }

  /** Ctrl+Z works where no field is typed in; the lines say what they said before. */
  private void undoneAndDoneAgain(JTable lines) {
    hand.focus("sheetLines");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("not struck out any more", v -> lines.getValueAt(2, 0).equals("to tick"));
    check(text("cameraTrouble").contains("struck out"), text("cameraTrouble"));
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("not ticked again", v -> lines.getValueAt(1, 0).equals("to tick"));
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("two shims as before", v -> lines.getValueAt(1, 1).toString().contains("2 shims"));
    for (int i = 0; i < 3; i++) {
      hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
    }
    hand.await("struck out again", v -> lines.getValueAt(2, 0).equals("struck out"));
    check(lines.getValueAt(1, 0).equals("ticked"), "ticked again");
    check(lines.getValueAt(1, 1).toString().contains("1 shim"), "one shim again");
  }

  private String asked() {
    return hand.find("askYes").isShowing() ? text("askSentence") : "";
  }

  /** Name and logo, in the settings of the page. */
  void workshop() {
    hand.click("pageFrom.line");
    hand.fill("workshop.logo", "gone.png");
    hand.click("workshop.keep");
    hand.await("no such logo", v -> text("exportSaid").contains("gone.png"));
    hand.click("pageFrom.line");
    hand.click("pageFrom.line");
    hand.await("the settings are as before", v -> field("workshop.logo").isEmpty());
    hand.fill("workshop.name", "The Workshop");
    hand.click("workshop.keep");
    hand.await("it is kept", v -> text("exportSaid").contains("Kept."));
    hand.focus("workshop.keep");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("no name again", v -> field("workshop.name").isEmpty());
    check(text("exportSaid").contains("settings of the workshop"), text("exportSaid"));
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("the name again", v -> field("workshop.name").equals("The Workshop"));
    shot("02-workshop");
  }

  private @Nullable String tip(String name) {
    return ((JComponent) hand.find(name)).getToolTipText();
  }

  private String field(String name) {
    return ((javax.swing.JTextField) hand.find(name)).getText();
  }

  private String label(String name) {
    return ((javax.swing.JLabel) hand.find(name)).getText();
  }

  private void note(int item, String words, String place) {
    hand.choose("sheetItem", item);
    hand.fill("sheetWords", words);
    hand.fill("sheetPlace", place);
    hand.click("sheetNote");
    hand.await("it is noted, or it says why not", v -> isTaken());
  }

  private boolean isTaken() {
    return ((javax.swing.JTextField) hand.find("sheetWords")).getText().isEmpty()
        || text("sheetHint").contains("not understood");
  }

  private void select(JTable lines, int row) {
    DeskHand.onScreen(
        () -> {
          lines.changeSelection(row, 0, false, false);
          return true;
        });
  }

  private String text(String name) {
    return ((JTextArea) hand.find(name)).getText();
  }

  private void shot(String name) {
    hand.shot(screens, name);
  }

  private static void check(boolean right, String what) {
    if (!right) {
      throw new AssertionError(what);
    }
  }
}
