package org.halflight.desk;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.MenuElement;
import javax.swing.MenuSelectionManager;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.halflight.desk.view.BenchView;

/**
 * A person at the window: real keys, real clicks, real pixels. Waits for what it expects to see.
 */
final class DeskHand {
  /** More than the practice menu has. */
  private static final int MENU_ITEMS_MOST = 80;

  /** Looks at the window, each after news of it or a short while, until something never comes. */
  private static final int LOOKS_MOST = 5000;

  private static final long LOOK_MILLIS = 50;

  private final Supplier<BooleanSupplier> limits;
  private final Robot robot;
  private final Object news = new Object();
  private DeskWindow window;

  /** One who looks so often. */
  DeskHand() {
    this(
        () -> {
          AtomicInteger looks = new AtomicInteger();
          return () -> looks.incrementAndGet() > LOOKS_MOST;
        });
  }

  /**
   * @param limits gives, whenever something is waited for, what says that it is not to come
   */
  DeskHand(Supplier<BooleanSupplier> limits) {
    this.limits = limits;
    try {
      robot = new Robot();
    } catch (AWTException noScreen) {
      throw new IllegalStateException(noScreen);
    }
  }

  /** Opens a window of a size. */
  void open(DeskSurroundings surroundings, Dimension size, boolean dark) {
    onScreen(
        () -> {
          window =
              new DeskWindow(
                  surroundings,
                  new DeskSettings(surroundings.folder().resolve("s"), dark, true, 90));
          window.onView(
              view -> {
                synchronized (news) {
                  news.notifyAll();
                }
              });
          return null;
        });
    BenchLoop bench = window.beginBench();
    onScreen(
        () -> {
          window.open(size, bench);
          return null;
        });
    await("the window has the focus", view -> window.frame().isFocused());
    await("the rig answers", view -> view.link().isUp());
  }

  DeskWindow window() {
    return window;
  }

  /** Closes the window as a person does. */
  void close() {
    onScreen(
        () -> {
          window.close();
          return null;
        });
  }

  /** Waits until the window shows something; fails with what it shows when it never does. */
  BenchView await(String what, Predicate<BenchView> expected) {
    BooleanSupplier over = limits.get();
    while (true) {
      Optional<BenchView> view = onScreen(window::view);
      if (view.isPresent() && onScreen(() -> expected.test(view.get()))) {
        return view.get();
      }
      if (over.getAsBoolean()) {
        throw new AssertionError("waited in vain until " + what + "; the window shows " + view);
      }
      synchronized (news) {
        try {
          news.wait(LOOK_MILLIS);
        } catch (InterruptedException interrupted) {
          throw new IllegalStateException(interrupted);
        }
      }
    }
  }

  /** Waits until these words are on the screen, as a person reads them. */
  void reads(String... words) {
    String[] last = {""};
    for (String each : words) {
      try {
        await(
            "this is to be read: " + each,
            view -> {
              last[0] = read();
              return last[0].contains(each);
            });
      } catch (AssertionError never) {
        throw new AssertionError("nowhere to be read: " + each + "; but: " + last[0], never);
      }
    }
  }

  /** All that is written on the screen now, but what pictures have; with single blanks between. */
  String read() {
    return onScreen(
        () -> {
          JComponent content = (JComponent) window.frame().getContentPane();
          StringBuilder all = new StringBuilder();
          TextsPainted.of(content, new BufferedImage[1])
              .forEach(text -> all.append(text.text()).append(' '));
          shapes(content, all);
          return all.toString().replaceAll("\\s+", " ");
        });
  }

  private static void shapes(Container in, StringBuilder all) {
    for (Component each : in.getComponents()) {
      if (each.isShowing() && each instanceof PaintedComponent painted) {
        painted.drawnTexts().forEach(drawn -> all.append(drawn.text()).append(' '));
      } else if (each instanceof Container container) {
        shapes(container, all);
      }
    }
  }

  /** Presses a key, whatever has the focus. */
  void key(int code, int... heldWithIt) {
    for (int held : heldWithIt) {
      robot.keyPress(held);
    }
    robot.keyPress(code);
    robot.keyRelease(code);
    for (int held : heldWithIt) {
      robot.keyRelease(held);
    }
    robot.waitForIdle();
  }

  /** Types letters, digits and a few signs. */
  void type(String text) {
    for (int i = 0; i < text.length(); i++) {
      char each = text.charAt(i);
      boolean upper = Character.isUpperCase(each);
      int code =
          switch (each) {
            case ' ' -> KeyEvent.VK_SPACE;
            case '/' -> KeyEvent.VK_SLASH;
            case ',' -> KeyEvent.VK_COMMA;
            case '.' -> KeyEvent.VK_PERIOD;
            case '-' -> KeyEvent.VK_MINUS;
            case '=' -> KeyEvent.VK_EQUALS;
            default -> KeyEvent.getExtendedKeyCodeForChar(Character.toLowerCase(each));
          };
      if (upper) {
        robot.keyPress(KeyEvent.VK_SHIFT);
      }
      robot.keyPress(code);
      robot.keyRelease(code);
      if (upper) {
        robot.keyRelease(KeyEvent.VK_SHIFT);
      }
    }
    robot.waitForIdle();
  }

  /** Puts other words into a text field. */
  void fill(String name, String text) {
    click(name);
    JTextComponent field = (JTextComponent) find(name);
    onScreen(
        () -> {
          field.selectAll();
          return null;
        });
    type(text);
    await(name + " holds " + text, view -> field.getText().equals(text));
  }

  /** Gives a component the focus, as the tabulator key would. */
  void focus(String name) {
    Component component = find(name);
    onScreen(component::requestFocusInWindow);
    await(name + " has the focus", view -> component.isFocusOwner());
  }

  /** Chooses an entry of a box. */
  void choose(String name, int index) {
    JComboBox<?> box = (JComboBox<?>) find(name);
    onScreen(
        () -> {
          box.setSelectedIndex(index);
          return null;
        });
  }

  /** Clicks in the middle of a component. */
  void click(String name) {
    reveal(name);
    Component component = find(name);
    await(name + " is on the screen", view -> component.isShowing() && component.isEnabled());
    Point at = onScreen(component::getLocationOnScreen);
    robot.mouseMove(at.x + component.getWidth() / 2, at.y + component.getHeight() / 2);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    robot.waitForIdle();
  }

  /** Brings a component into sight, as a person would. */
  void reveal(String name) {
    Component component = find(name);
    onScreen(
        () -> {
          unfold(component);
          return null;
        });
  }

  /** Opens the folds and tabs around a component, and scrolls to it. */
  private void unfold(Component component) {
    for (Component each = component.getParent(); each != null; each = each.getParent()) {
      if (each instanceof Fold fold && !fold.isOpen() && !component.getName().endsWith(".line")) {
        fold.open(true);
      }
      if (each.getParent() instanceof JTabbedPane tabs) {
        tabs.setSelectedComponent(each);
      }
    }
    window.frame().validate();
    FormScroll.reveal(component);
  }

  /** Chooses an entry of the menu of mishaps, by the keyboard alone. */
  void mishap(String name) {
    key(KeyEvent.VK_F9);
    await("the menu is open", view -> selected().length > 0);
    for (int i = 0; i < MENU_ITEMS_MOST && !isSelected("practice." + name); i++) {
      key(KeyEvent.VK_DOWN);
    }
    key(KeyEvent.VK_ENTER);
    await("the menu is closed", view -> selected().length == 0);
  }

  /** Waits for the pictures and writes what is on the screen. */
  void shot(Path folder, String name) {
    await(
        "the pictures are drawn",
        view ->
            window.bench().isUpToDate()
                && window.details().isUpToDate()
                && window.rig().isUpToDate()
                && window.tried().isUpToDate()
                && window.cameras().map().canvas().isUpToDate());
    robot.waitForIdle();
    onScreen(
        () -> {
          Container content = window.frame().getContentPane();
          List<String> beyond = beyondTheEdge(content, content);
          if (!beyond.isEmpty()) {
            throw new AssertionError(name + ": beyond the edge of the window: " + beyond);
          }
          return null;
        });
    Rectangle area = onScreen(() -> window.frame().getBounds());
    try {
      Files.createDirectories(folder);
      ImageIO.write(robot.createScreenCapture(area), "png", folder.resolve(name + ".png").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What shows but reaches over the left or right edge of the window, unless it scrolls. */
  private static List<String> beyondTheEdge(Container in, Container window) {
    List<String> beyond = new ArrayList<>();
    for (Component each : in.getComponents()) {
      if (!each.isShowing() || each instanceof JScrollPane) {
        continue;
      }
      Rectangle place = SwingUtilities.convertRectangle(in, each.getBounds(), window);
      if (place.x < 0 || place.x + place.width > window.getWidth()) {
        beyond.add(each.getClass().getSimpleName() + " " + each.getName() + " " + place);
      } else if (each instanceof Container container) {
        beyond.addAll(beyondTheEdge(container, window));
      }
    }
    return beyond;
  }

  /** Makes the window another size. */
  void size(Dimension size) {
    onScreen(
        () -> {
          window.frame().setSize(size);
          window.frame().validate();
          return null;
        });
    await("the window has its size", view -> window.frame().getSize().equals(size));
  }

  /** A component by its name. */
  Component find(String name) {
    return onScreen(
        () ->
            find(window.frame().getContentPane(), name)
                .orElseThrow(() -> new AssertionError("nothing is called " + name)));
  }

  private static Optional<Component> find(Container in, String name) {
    for (Component each : in.getComponents()) {
      if (name.equals(each.getName())) {
        return Optional.of(each);
      }
      if (each instanceof Container inner) {
        Optional<Component> found = find(inner, name);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static MenuElement[] selected() {
    return MenuSelectionManager.defaultManager().getSelectedPath();
  }

  /** Presses a key until an entry of the open menu is selected. */
  void walk(int key, String name) {
    await("the menu is open", view -> selected().length > 0);
    for (int i = 0; i < 40 && !isSelected(name); i++) {
      key(key);
    }
    if (!isSelected(name)) {
      throw new AssertionError(name + " is not in the menu; selected is " + walked());
    }
  }

  /** What a screen reader says of the entry of the menu that is selected. */
  String walked() {
    return onScreen(
        () -> {
          MenuElement[] path = selected();
          return path.length == 0
              ? ""
              : path[path.length - 1].getComponent().getAccessibleContext().getAccessibleName();
        });
  }

  private boolean isSelected(String name) {
    return onScreen(
        () -> {
          MenuElement[] path = selected();
          return path.length > 0 && name.equals(path[path.length - 1].getComponent().getName());
        });
  }

  /** Does something on the window's own thread. */
  static <T> T onScreen(Supplier<T> doing) {
    if (SwingUtilities.isEventDispatchThread()) {
      return doing.get();
    }
    AtomicReference<T> result = new AtomicReference<>();
    try {
      SwingUtilities.invokeAndWait(() -> result.set(doing.get()));
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof AssertionError failed) {
        throw failed;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    return result.get();
  }
}
