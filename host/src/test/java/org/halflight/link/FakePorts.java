package org.halflight.link;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Ports that are plugged and unplugged by a test. Opening gives the links of a port one after the
 * other; opening once more than there are links fails the test.
 */
public final class FakePorts implements Ports {
  private record Plugged(PortCandidate candidate, Deque<Supplier<Link>> links) {}

  private final Map<String, Plugged> plugged = new LinkedHashMap<>();
  private final List<String> opened = new ArrayList<>();

  /** Plugs a likely board in. */
  public FakePorts plug(String path, Link... links) {
    return plug(new PortCandidate(path, "board", true), links);
  }

  public synchronized FakePorts plug(PortCandidate candidate, Link... links) {
    Deque<Supplier<Link>> suppliers = new ArrayDeque<>();
    for (Link link : links) {
      suppliers.add(() -> link);
    }
    plugged.put(candidate.path(), new Plugged(candidate, suppliers));
    return this;
  }

  /** Plugs a port in that cannot be opened. */
  public synchronized FakePorts plugRefusing(String path, LinkRefusedException refusal) {
    Deque<Supplier<Link>> suppliers = new ArrayDeque<>();
    suppliers.add(
        () -> {
          throw refusal;
        });
    plugged.put(path, new Plugged(new PortCandidate(path, "board", true), suppliers));
    return this;
  }

  public synchronized void unplug(String path) {
    plugged.remove(path);
  }

  /** The paths that were opened, or tried, in order. */
  public synchronized List<String> opened() {
    return List.copyOf(opened);
  }

  @Override
  public synchronized List<PortCandidate> candidates() {
    return plugged.values().stream().map(Plugged::candidate).toList();
  }

  @Override
  public Link open(PortCandidate candidate, int baudRate) {
    Supplier<Link> link;
    synchronized (this) {
      opened.add(candidate.path());
      Plugged port = plugged.get(candidate.path());
      if (port == null || port.links().isEmpty()) {
        throw new AssertionError("not to be opened (again): " + candidate);
      }
      link = port.links().removeFirst();
    }
    return link.get();
  }
}
