package org.halflight.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.AbstractButton;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JComponent;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.MenuElement;
import javax.swing.MenuSelectionManager;
import javax.swing.SwingUtilities;
import javax.swing.event.MenuEvent;
import javax.swing.event.MenuListener;
import org.halflight.desk.view.MenuList;
import org.halflight.desk.view.PortsView;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** The menu of everything that can be done, from {@link MenuList}. For the window's own thread. */
final class DeskMenu {
  /** What the menu is made of at the moment it opens. */
  interface Source {
    MenuList.Now now();

    /** The buttons of the place on the screen. */
    List<AbstractButton> here();

    Look look();

    /** The ports of this computer. */
    List<PortsView.Line> ports();

    /** Uses this port; all likely ones where it is empty. */
    void choosePort(Optional<String> path);
  }

  private final Source source;
  private final Consumer<UserAction> acts;
  private final JPopupMenu popup = new JPopupMenu(Words.of("desk.key", UserAction.MENU));

  /**
   * @param acts does what is chosen
   */
  DeskMenu(Source source, Consumer<UserAction> acts) {
    this.source = source;
    this.acts = acts;
    popup.setName("menu");
  }

  /** Opens below a button, the first entry selected, so that the arrow keys walk from there. */
  void open(JComponent button) {
    popup.removeAll();
    SwingUtilities.updateComponentTreeUI(popup);
    List<JMenu> menus = menus();
    menus.forEach(popup::add);
    popup.show(button, 0, button.getHeight());
    MenuSelectionManager.defaultManager().setSelectedPath(new MenuElement[] {popup, menus.get(0)});
  }

  /** The same as a bar of menus, which the system shows at the top of its screen. */
  JMenuBar bar() {
    JMenuBar bar = new JMenuBar();
    List<JMenu> menus = menus();
    for (int i = 0; i < menus.size(); i++) {
      int which = i;
      JMenu menu = menus.get(i);
      menu.addMenuListener(
          new MenuListener() {
            @Override
            public void menuSelected(MenuEvent event) {
              menu.removeAll();
              for (java.awt.Component item : menus().get(which).getMenuComponents()) {
                menu.add(item);
              }
            }

            @Override
            public void menuDeselected(MenuEvent event) {}

            @Override
            public void menuCanceled(MenuEvent event) {}
          });
      bar.add(menu);
    }
    return bar;
  }

  private List<JMenu> menus() {
    List<JMenu> menus = new ArrayList<>();
    MenuList.of(source.now())
        .forEach(
            (group, entries) -> {
              JMenu menu = menu("menu." + group, Words.of("desk.menu", group));
              entries.forEach(entry -> menu.add(item(entry)));
              menus.add(menu);
              if (group == MenuList.Group.EDIT) {
                menus.add(here());
              } else if (group == MenuList.Group.PRACTICE) {
                menu.add(ports());
              }
            });
    return menus;
  }

  private JMenu here() {
    JMenu menu = menu("menu.HERE", Words.say("desk.menu.here"));
    for (AbstractButton button : source.here()) {
      JMenuItem item = new JMenuItem(button.getText());
      item.setName("menu.here." + button.getName());
      item.setEnabled(button.isEnabled());
      item.addActionListener(event -> button.doClick(0));
      menu.add(item);
    }
    menu.setEnabled(menu.getItemCount() > 0);
    return menu;
  }

  private JMenu ports() {
    JMenu menu = menu("menu.PORTS", Words.say("desk.ports.title"));
    boolean anyChosen = false;
    for (PortsView.Line line : source.ports()) {
      anyChosen |= line.chosen();
      menu.add(port(line.words(), line.chosen(), Optional.of(line.path())));
    }
    menu.add(port(Words.say("desk.ports.likelyOnes"), !anyChosen, Optional.empty()));
    return menu;
  }

  private JMenuItem port(String words, boolean isChosen, Optional<String> path) {
    JMenuItem item = new JRadioButtonMenuItem(words, isChosen);
    item.setName("menu.port." + path.orElse("likely"));
    item.addActionListener(event -> source.choosePort(path));
    return item;
  }

  private static JMenu menu(String name, String words) {
    JMenu menu = new JMenu(words);
    menu.setName(name);
    return menu;
  }

  private JMenuItem item(MenuList.Entry entry) {
    JMenuItem item =
        entry
            .isOn()
            .<JMenuItem>map(on -> new JCheckBoxMenuItem(entry.words(), on))
            .orElseGet(() -> new JMenuItem(entry.words()));
    item.setName("menu." + entry.act());
    KeyCap key = new KeyCap(entry.key(), source.look(), false);
    item.setIcon(key);
    item.setDisabledIcon(key);
    item.setEnabled(entry.isEnabled());
    item.getAccessibleContext()
        .setAccessibleName(Words.say("desk.keys.spoken", entry.words(), entry.key()));
    item.addActionListener(event -> acts.accept(entry.act()));
    return item;
  }
}
