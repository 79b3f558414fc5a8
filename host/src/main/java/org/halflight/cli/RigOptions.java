package org.halflight.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.RigFeed;
import org.halflight.bench.RigWork;
import org.halflight.link.Ports;
import org.halflight.rig.RigSelector;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which rig a command works with. */
final class RigOptions {
  @Option(names = "--rig", paramLabel = "SERIAL")
  private @Nullable String serial;

  @Option(names = "--port", paramLabel = "PORT")
  private List<String> ports = new ArrayList<>();

  @Option(names = "--every-port")
  private boolean everyPort;

  List<String> ports() {
    return ports;
  }

  /** What the rig says in a session, from when it is found on. */
  LiveFeed feed(Surroundings surroundings, LongSupplier nanos) {
    return new LiveFeed(surroundings.ports().apply(ports), wish(), nanos);
  }

  /** Work with the rig outside of a session; {@code q} and Ctrl-C stop it. */
  RigWork work(Surroundings surroundings) {
    Ports found = surroundings.ports().apply(ports);
    RigWork work =
        listening(new LiveFeed(found, wish(), surroundings.nanos()), surroundings.terminal());
    found.beforeTheProgramIsEnded(work::programEnds);
    return work;
  }

  /** Work that {@code q} stops. */
  static RigWork listening(RigFeed feed, Terminal terminal) {
    RigWork work = new RigWork(feed);
    work.meanwhile(
        () -> {
          if (terminal.typed().filter("q"::equals).isPresent()) {
            work.stop();
          }
        });
    return work;
  }

  RigSelector wish() {
    RigSelector wish = Optional.ofNullable(serial).map(RigSelector::of).orElseGet(RigSelector::any);
    return everyPort ? wish.onEveryPort() : wish;
  }
}
