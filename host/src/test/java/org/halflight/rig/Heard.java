package org.halflight.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.halflight.fixtures.Turns;
import org.halflight.link.LinkState;

/** A listener that keeps what it hears, in one order, and lets a test wait for it. */
final class Heard implements RigConnection.Listener {
  private final List<String> all = new ArrayList<>();
  private final List<LinkChange> changes = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  @Override
  public void received(long hostNanos, RigLine line) {
    add("< " + line.text());
  }

  @Override
  public void sent(long hostNanos, String line) {
    add("> " + line.substring(0, line.indexOf('#')));
  }

  @Override
  public synchronized void changed(LinkChange change) {
    changes.add(change);
    add(change.state().name());
  }

  private synchronized void add(String what) {
    all.add(what);
    if (!threads.contains(Thread.currentThread())) {
      threads.add(Thread.currentThread());
    }
    notifyAll();
  }

  synchronized List<String> all() {
    return List.copyOf(all);
  }

  synchronized List<LinkState> states() {
    return changes.stream().map(LinkChange::state).toList();
  }

  synchronized LinkChange lastChange() {
    return changes.get(changes.size() - 1);
  }

  synchronized int threadCount() {
    return threads.size();
  }

  void awaitState(LinkState state, int times) {
    await(
        heard -> heard.states().stream().filter(state::equals).count() >= times,
        times + " times " + state);
  }

  void awaitText(String text) {
    await(heard -> heard.all().contains(text), text);
  }

  void await(Predicate<Heard> condition, String what) {
    Turns.await(
        this,
        () -> condition.test(this),
        () -> "did not hear " + what + " but " + all + " " + changes);
  }
}
