package org.halflight.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What is joined to what: points of a drawing, and the legs of parts that sit on them. */
final class Netlist {
  private final Map<String, String> joined = new HashMap<>();
  private final Map<String, List<String>> legs = new HashMap<>();

  /** A wire between two points. */
  Netlist wire(String from, String to) {
    joined.put(root(from), root(to));
    return this;
  }

  /** A leg on a point. */
  Netlist leg(String name, String point) {
    legs.computeIfAbsent(point, p -> new ArrayList<>()).add(name);
    return this;
  }

  /** The legs that are joined, two or more. */
  Set<Set<String>> nets() {
    Map<String, Set<String>> nets = new HashMap<>();
    legs.forEach(
        (point, names) -> nets.computeIfAbsent(root(point), root -> new TreeSet<>()).addAll(names));
    return nets.values().stream().filter(net -> net.size() > 1).collect(Collectors.toSet());
  }

  private String root(String point) {
    String at = point;
    while (joined.containsKey(at) && !joined.get(at).equals(at)) {
      at = joined.get(at);
    }
    return at;
  }
}
