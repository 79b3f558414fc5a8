package org.halflight.desk;

import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import javax.swing.AbstractButton;
import javax.swing.JButton;
import javax.swing.JPanel;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.UserAction;

/** The places of the window, one of them on the screen. For the window's own thread. */
final class Places {
  private final CardLayout cards = new CardLayout();
  private final JPanel panel = new JPanel(cards);
  private final Map<UserAction, Place> all = new LinkedHashMap<>();
  private final Consumer<UserAction> onMove;
  private final Place home;
  private Place here;

  /**
   * @param all the first one is where it goes back to
   * @param onMove hears which place is on the screen
   */
  Places(List<Place> all, Consumer<UserAction> onMove) {
    this.onMove = onMove;
    home = all.get(0);
    here = home;
    for (Place each : all) {
      this.all.put(each.key(), each);
      panel.add(each, each.key().name());
      if (each != home) {
        each.onEscape(this::back);
      }
    }
  }

  /** The buttons of the place on the screen that say what they do. */
  List<AbstractButton> buttons() {
    return here.acceptsBenchKeys() ? List.of() : buttons(here);
  }

  private static List<AbstractButton> buttons(Container in) {
    List<AbstractButton> buttons = new ArrayList<>();
    for (Component each : in.getComponents()) {
      if (each instanceof JButton button && each.isVisible() && !button.getText().isBlank()) {
        buttons.add(button);
      } else if (each instanceof Container inner && each.isVisible()) {
        buttons.addAll(buttons(inner));
      }
    }
    return buttons;
  }

  JPanel panel() {
    return panel;
  }

  /** The place on the screen. */
  Place here() {
    return here;
  }

  /** Goes to a place. */
  void goTo(UserAction key) {
    Place next = Objects.requireNonNull(all.get(key));
    if (next != here) {
      here.isLeft();
      here = next;
    }
    cards.show(panel, key.name());
    onMove.accept(key);
    here.comesUp();
    here.first().requestFocusInWindow();
    here.enterIsFor(here.byEnter());
  }

  /** Goes to a place, or back from it. */
  void turn(UserAction key) {
    if (here.key() == key) {
      back();
    } else {
      goTo(key);
    }
  }

  void back() {
    goTo(home.key());
  }

  /** There is something new at the bench. */
  void show(BenchView view) {
    all.values().forEach(each -> each.show(view));
  }

  void asTables(boolean on) {
    all.values().forEach(each -> each.asTables(on));
  }

  void look(Look look) {
    all.values().forEach(each -> each.look(look));
  }
}
