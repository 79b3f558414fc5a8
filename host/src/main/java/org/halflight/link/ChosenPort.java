package org.halflight.link;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The ports of this computer, or only the one that the person chose, for as long as it is there.
 * Once it is gone all count again, and it too is opened when it comes back, whatever it looks like.
 * Safe for use by several threads if the ports are.
 */
public final class ChosenPort implements Ports {
  private final Ports all;

  /** The only one that counts. */
  private Optional<String> only = Optional.empty();

  /** The one that was named by the person. */
  private String named = "";

  private Optional<Consumer<String>> onGone = Optional.empty();

  /** One that went before anybody listened. */
  private Optional<String> untold = Optional.empty();

  public ChosenPort(Ports all) {
    this.all = all;
  }

  /**
   * Tells of a chosen port that is not there.
   *
   * @param hearer hears its path, on any thread
   */
  public synchronized void onGone(Consumer<String> hearer) {
    onGone = Optional.of(hearer);
    untold.ifPresent(hearer);
    untold = Optional.empty();
  }

  /** Only this port counts from now on; empty for all of them. */
  public synchronized void choose(Optional<String> path) {
    only = path;
    named = path.orElse("");
  }

  /** The port that was chosen, while it is there. */
  public synchronized Optional<String> chosen() {
    return only;
  }

  @Override
  public List<PortCandidate> candidates() {
    List<PortCandidate> there = all.candidates();
    synchronized (this) {
      List<PortCandidate> here = there.stream().map(this::asNamed).toList();
      Optional<String> gone =
          only.filter(path -> here.stream().noneMatch(port -> port.path().equals(path)));
      if (gone.isPresent()) {
        only = Optional.empty();
        onGone.ifPresentOrElse(its -> its.accept(gone.get()), () -> untold = gone);
      }
      Optional<String> one = only;
      return here.stream().filter(port -> one.isEmpty() || one.get().equals(port.path())).toList();
    }
  }

  private PortCandidate asNamed(PortCandidate port) {
    return port.path().equals(named)
        ? new PortCandidate(port.path(), port.description(), true)
        : port;
  }

  /** Of all ports, the chosen one or not: they are to choose from. */
  @Override
  public PortSurvey survey() {
    return all.survey();
  }

  @Override
  public Link open(PortCandidate candidate, int baudRate) {
    return all.open(candidate, baudRate);
  }

  @Override
  public void beforeTheProgramIsEnded(Runnable last) {
    all.beforeTheProgramIsEnded(last);
  }
}
