package org.halflight.record;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.halflight.job.Camera;
import org.halflight.job.DryRun;
import org.halflight.session.Source;

/**
 * A camera as the list of cameras shows it.
 *
 * @param camera the camera
 * @param jobNumbers job numbers of its visits, the first one first; those without one left out
 * @param visits how often it was here
 * @param lastReceivedAt when it came in last
 * @param firings all its firings
 * @param sources where its figures come from; practice and simulator are to be marked
 * @param dryRun the dry run that it still wants, where it was left wet and is still here
 */
public record CameraLine(
    Camera camera,
    List<String> jobNumbers,
    int visits,
    Optional<Instant> lastReceivedAt,
    int firings,
    Set<Source> sources,
    Optional<DryRun> dryRun) {
  public CameraLine {
    jobNumbers = List.copyOf(jobNumbers);
    sources = Set.copyOf(sources);
  }

  /** Whether label, serial number or a job number holds a text, in capitals or not. */
  public boolean holds(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return holds(camera.label(), wanted)
        || holds(camera.serialNumber(), wanted)
        || jobNumbers.stream().anyMatch(number -> holds(number, wanted));
  }

  private static boolean holds(String text, String wanted) {
    return text.toLowerCase(Locale.ROOT).contains(wanted);
  }
}
