package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JTable;
import javax.swing.JTextArea;
import org.halflight.files.SettingsFile;
import org.halflight.job.Photo;
import org.halflight.photo.PhotoInbox;
import org.halflight.photo.SamplePictures;
import org.jspecify.annotations.Nullable;

/**
 * The strip sheet of a visit by keys and mouse: noted, corrected, ticked, and named at handing
 * back. A program of its own, because it needs a display: {@link DeskTest} gives it one.
 */
final class DeskStripSheet {
  private static final Dimension SMALL = new Dimension(1366, 768);

  private final Path folder;
  private final DeskHand hand = new DeskHand();

  private DeskStripSheet(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) {
    try {
      new DeskStripSheet(Path.of(args[0])).run();
      System.out.println("STRIP SHEET: done");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() throws IOException {
    Path inbox = Files.createDirectories(folder.resolve("inbox"));
    SettingsFile.change(folder.resolve("data"), kept -> PhotoInbox.choose(kept, inbox.toString()));
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, System::nanoTime, Clock.systemUTC(), "test", 20),
        SMALL,
        false);
    hand.key(KeyEvent.VK_F4);
    intake();
    Files.write(inbox.resolve("IMG_0117.JPG"), SamplePictures.jpeg(1200, 900, 6, "", ""));
    Files.write(inbox.resolve("IMG_0118.png"), SamplePictures.picture("png", 900, 600));
    Files.write(inbox.resolve("scan.png"), SamplePictures.picture("png", 300, 900));
    Files.writeString(inbox.resolve("IMG_0119.heic"), "\0\0\0\30ftypheic\0\0\0\0mif1heic");
    JTable lines = (JTable) hand.find("sheetLines");
    note(0, "3 turns from slack", "high-speed spring");
    note(1, "two", "under the flange");
    hand.await("it says how shims are written", v -> text("sheetHint").contains("0.10 0.05"));
    note(1, "0,10 0.05", "under the flange");
    note(6, "43.97", "depth gauge");
    hand.await("three lines", v -> lines.getRowCount() == 3);
    shot("1-noted");
    hand.click("handBack");
    hand.await("it names what is open", v -> asked().contains("2 shims"));
    shot("2-open");
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
    shot("3-corrected");
    hand.focus("sheetLines");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("ticked again", v -> lines.getValueAt(1, 0).equals("ticked"));
    select(lines, 2);
    hand.click("sheetStrike");
    hand.await("struck out", v -> lines.getValueAt(2, 0).equals("struck out"));
    undoneAndDoneAgain(lines);
    photos();
    log();
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
    menu();
    help();
    hand.key(KeyEvent.VK_F7);
    hand.await("the camera is listed", v -> ((JTable) hand.find("cameras")).getRowCount() > 0);
    shot("4-cameras");
    workshop();
    hand.close();
  }

  /** Pictures that have arrived meanwhile: enlarged, named, taken off and put back. */
  private void photos() {
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
    shot("3-photos");
    hand.focus("photos");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it is enlarged", v -> ((JLabel) hand.find("photoLarge")).getIcon() != null);
    shot("3-photo");
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
  private void log() {
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
    shot("3-earlier");
    hand.click("logStrike");
    hand.await("it is taken back", v -> log.getModel().getSize() == 0);
  }

  /** F10 and the arrow keys walk the menu, which says what would be undone. */
  private void menu() {
    hand.key(KeyEvent.VK_F10);
    hand.walk(KeyEvent.VK_DOWN, "menu.EDIT");
    hand.key(KeyEvent.VK_RIGHT);
    hand.walk(KeyEvent.VK_DOWN, "menu.UNDO");
    check(hand.walked().equals("Undo: Uncle Bo handed back, key Ctrl+Z"), hand.walked());
    shot("6-menu");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("undone by the menu", v -> hand.find("handBack").isEnabled());
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("and done again", v -> !hand.find("handBack").isEnabled());
  }

  /** The page about this place, without a browser. */
  private void help() {
    hand.key(KeyEvent.VK_F1, KeyEvent.VK_CONTROL);
    hand.await("the guide", v -> page().contains("A camera that comes back"));
    shot("7-help");
    hand.key(KeyEvent.VK_F1, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
    hand.await("about", v -> page().contains("Licence: Apache 2.0"));
    hand.click("aboutCopy");
    hand.await("copied", v -> label("aboutCopied").contains("Copied"));
    shot("8-about");
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

  private void intake() {
    hand.fill("detail.COMPLAINT", "sticks");
    hand.choose("detail.FILM", 2);
    hand.fill("cameraLabel", "Uncle Bo");
    hand.click("keepCamera");
    hand.await("the camera is named", v -> hand.find("handBack").isEnabled());
    hand.await("it warns", v -> text("cameraTrouble").contains("Do not open the back"));
    hand.fill("detail.COMPLAINT", "sticks in the cold");
    hand.choose("detail.FILM", 1);
    hand.click("keepCamera");
    hand.await(
        "what it was before is at the field",
        v -> "Before: sticks".equals(tip("detail.COMPLAINT")));
    check(text("cameraTrouble").isEmpty(), text("cameraTrouble"));
    shot("0-intake");
  }

  /** Name and logo, in the settings of the page. */
  private void workshop() {
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
    check(
        SettingsFile.read(folder.resolve("data")).getProperty("workshop").equals("The Workshop"),
        "the name is in the settings");
    hand.focus("workshop.keep");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("no name again", v -> field("workshop.name").isEmpty());
    check(text("exportSaid").contains("settings of the workshop"), text("exportSaid"));
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("the name again", v -> field("workshop.name").equals("The Workshop"));
    shot("5-workshop");
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
    hand.shot(folder.resolve("screens"), name);
  }

  private static void check(boolean right, String what) {
    if (!right) {
      throw new AssertionError(what);
    }
  }
}
