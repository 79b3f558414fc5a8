package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Frame;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.accessibility.AccessibleContext;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import javax.swing.text.JTextComponent;
import org.halflight.words.PseudoLanguage;
import org.halflight.words.Unmarked;

/**
 * Reads every component of the window in a language that marks each letter of the bundle: texts,
 * tool tips, names for screen readers, tables, tabs, menus. A program of its own, because it needs
 * a display: {@link DeskTest} gives it one.
 */
final class DeskPseudo {
  /** What need not come from the bundle, and why. */
  private static final Map<String, String> EXCEPTIONS =
      Map.of(
          "(?<=[\\d)\u2212+] )(?:s|ms|mV|ppm|Hz|\u00b5s)\\b", "a symbol of a unit after its number",
          "\\bPRACTICE\\b|(?<=\\()full(?= )|(?<= )practice(?:-1)?(?=[ )])",
              "what the practice rig says of itself, and its port",
          "^(?:full|small|starter)(?= )", "the name of a firmware image, as it is typed",
          "(?m)^(?:s|ms|min|h|mm)$", "a symbol of a unit beside its figure",
          "(?m)(?:^|(?<= ))(?:[A-Z]|F\\d+|(?:\\S+\\+)+\\w+)$", "a key",
          "\\S*/\\S*[a-z]\\S*", "a path that the test chose");

  private final Set<String> unmarked = new TreeSet<>();
  private int read;

  private DeskPseudo() {}

  public static void main(String[] args) throws Exception {
    try {
      PseudoLanguage.spoken();
      DeskPseudo reader = new DeskPseudo();
      reader.work(Path.of(args[0]));
      System.out.println("read " + reader.read);
      reader.unmarked.forEach(System.out::println);
      System.exit(0);
    } catch (Throwable thrown) {
      // The threads of the window would keep the program alive.
      thrown.printStackTrace();
      System.exit(1);
    }
  }

  private void work(Path folder) {
    DeskHand hand = new DeskHand();
    hand.open(
        new DeskSurroundings(folder, NoPorts::new, System::nanoTime, Clock.systemUTC(), "1", 20),
        new Dimension(1366, 768),
        false);
    look(hand);
    hand.key(KeyEvent.VK_F);
    hand.await("a firing", view -> !view.results().isEmpty());
    look(hand);
    for (int place :
        List.of(
            KeyEvent.VK_F3,
            KeyEvent.VK_F4,
            KeyEvent.VK_F5,
            KeyEvent.VK_F7,
            KeyEvent.VK_F8,
            KeyEvent.VK_F6,
            KeyEvent.VK_F1,
            KeyEvent.VK_F2,
            KeyEvent.VK_D)) {
      hand.key(place);
      look(hand);
    }
    hand.close();
  }

  private void look(DeskHand hand) {
    DeskHand.onScreen(
        () -> {
          Frame frame = hand.window().frame();
          look("title", frame.getTitle());
          look(frame);
          return null;
        });
  }

  private void look(Component of) {
    AccessibleContext aloud = of.getAccessibleContext();
    List<String> texts = new ArrayList<>();
    if (aloud != null) {
      texts.add(aloud.getAccessibleName());
      texts.add(aloud.getAccessibleDescription());
    }
    if (of instanceof JComponent component) {
      texts.add(component.getToolTipText());
    }
    if (of instanceof JLabel label) {
      texts.add(label.getText());
    } else if (of instanceof AbstractButton button) {
      texts.add(button.getText());
    } else if (of instanceof JTextComponent text) {
      texts.add(text.getText());
    } else if (of instanceof JTabbedPane tabs) {
      for (int i = 0; i < tabs.getTabCount(); i++) {
        texts.add(tabs.getTitleAt(i));
        texts.add(tabs.getToolTipTextAt(i));
      }
    } else if (of instanceof JComboBox<?> box) {
      for (int i = 0; i < box.getItemCount(); i++) {
        texts.add(String.valueOf(box.getItemAt(i)));
      }
    } else if (of instanceof JTable table) {
      for (int column = 0; column < table.getColumnCount(); column++) {
        texts.add(table.getColumnName(column));
        for (int row = 0; row < table.getRowCount(); row++) {
          texts.add(String.valueOf(table.getValueAt(row, column)));
        }
      }
    }
    String where = of.getClass().getSimpleName() + " " + of.getName();
    texts.forEach(text -> look(where, text));
    Component[] inner =
        of instanceof JMenu menu
            ? menu.getMenuComponents()
            : of instanceof Container container ? container.getComponents() : new Component[0];
    for (Component each : inner) {
      look(each);
    }
  }

  private void look(String where, String text) {
    if (text != null && !text.isBlank()) {
      read++;
      Set<String> found = Unmarked.in(text.replaceAll("<[^>]*>", ""), EXCEPTIONS);
      if (!found.isEmpty()) {
        unmarked.add("UNMARKED " + where + ": " + found + " in " + text.replace('\n', ' '));
      }
    }
  }
}
