package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

final class DeskSmoke {
  public static void main(String[] args) {
    Path out = Path.of(args[0]);
    DeskHand hand = new DeskHand();
    hand.open(
        new DeskSurroundings(
            out.resolve("data"),
            () -> new org.halflight.link.Ports() { @Override public org.halflight.link.Link open(org.halflight.link.PortCandidate c, int b) { throw new IllegalStateException(); }
              @Override public List<org.halflight.link.PortCandidate> candidates() { return List.of(); }
            },
            System::nanoTime,
            Clock.systemUTC(),
            "test",
            20),
        new Dimension(1366, 768),
        false);
    hand.shot(out, "01-start");
    hand.key(KeyEvent.VK_F);
    hand.await("fired", v -> v.results().size() == 1);
    hand.shot(out, "02-fired");
    hand.key(KeyEvent.VK_F3);
    hand.shot(out, "03-light");
    hand.click("setLight");
    hand.await("open asked", v -> v.light().step().filter(s -> s == org.halflight.bench.LightSetting.Step.OPEN_THE_SHUTTER).isPresent());
    hand.shot(out, "04-light-open");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("light set", v -> v.light().set().isPresent());
    hand.shot(out, "05-light-set");
    hand.key(KeyEvent.VK_F5);
    hand.shot(out, "06-run");
    hand.click("beginRun");
    hand.await("run", v -> v.setup().isPresent());
    hand.shot(out, "07-run-begun");
    for (int i = 0; i < 9; i++) {
      int n = i + 3;
      hand.key(KeyEvent.VK_F);
      hand.await("firing " + n, v -> v.results().size() == n || v.openSeconds().isPresent());
      if (hand.window().view().get().openSeconds().isPresent()) {
        hand.shot(out, "08-open");
        hand.key(KeyEvent.VK_C);
        hand.await("firing " + n, v -> v.results().size() == n);
      }
    }
    hand.shot(out, "09-firings");
    hand.key(KeyEvent.VK_F9);
    hand.shot(out, "10-dark");
    hand.key(KeyEvent.VK_T);
    hand.shot(out, "11-tables");
    hand.key(KeyEvent.VK_F1);
    hand.shot(out, "12-keys");
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_F7);
    hand.shot(out, "13-mishaps");
    hand.close();
    System.exit(0);
  }
}
