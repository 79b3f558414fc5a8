package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import javax.swing.JMenu;
import javax.swing.JMenuItem;
import org.halflight.desk.view.UndoStack;
import org.halflight.link.Link;
import org.halflight.workflow.PracticeOperator;
import org.junit.jupiter.api.Test;

/** What is chosen from the menu happens on the practice rig. No display is needed for that. */
class PracticeMenuTest {
  private static final int STEPS = 100;

  private final AtomicLong nanos = new AtomicLong();
  private final PracticeOperator operator = PracticeOperator.paced(7, nanos::get, Instant.EPOCH);
  private final List<UndoStack.Act> acts = new ArrayList<>();
  private final PracticeMenu menu =
      new PracticeMenu(doing -> doing.accept(operator), acts::add, () -> {});

  @Test
  void everyKindOfRigCanBeChosenAndTakenBack() {
    assertThat(greeting()).contains(" full FF ");
    choose("practice.rig.starter");
    assertThat(greeting()).contains(" starter C1 ");
    choose("practice.rig.small");
    assertThat(greeting()).contains(" small E1 ");
    acts.get(1).undo().run();
    assertThat(greeting()).contains(" starter C1 ");
    acts.get(0).undo().run();
    assertThat(greeting()).contains(" full FF ");
  }

  private void choose(String name) {
    all(menu.menu().getComponents())
        .filter(item -> name.equals(item.getName()))
        .findFirst()
        .orElseThrow()
        .doClick(0);
  }

  private static Stream<JMenuItem> all(Component... components) {
    return Arrays.stream(components)
        .filter(JMenuItem.class::isInstance)
        .map(JMenuItem.class::cast)
        .flatMap(
            item -> item instanceof JMenu inner ? all(inner.getMenuComponents()) : Stream.of(item));
  }

  /** The first line of a link to the board, as after its cable was plugged in. */
  private String greeting() {
    Link link = operator.ports().open(operator.ports().candidates().get(0), 250_000);
    operator.ports().onBench(rig -> rig.readsAtOnce());
    StringBuilder heard = new StringBuilder();
    byte[] buffer = new byte[64];
    for (int i = 0; i < STEPS && heard.indexOf("\n") < 0; i++) {
      nanos.addAndGet(50_000_000);
      heard.append(new String(buffer, 0, link.read(buffer), StandardCharsets.US_ASCII));
    }
    return heard.toString();
  }
}
