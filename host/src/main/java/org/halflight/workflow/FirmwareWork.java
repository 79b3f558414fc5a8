package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.OpenRig;
import org.halflight.rig.PortOutcome;
import org.halflight.rig.RigFinder;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigSearch;
import org.halflight.rig.RigSelector;
import org.halflight.trouble.Trouble;
import org.halflight.upload.FirmwareAge;
import org.halflight.upload.FirmwareImage;
import org.halflight.upload.FirmwareImages;
import org.halflight.upload.UploadTrouble;
import org.halflight.upload.UploadTrouble.Reason;
import org.halflight.words.Words;

/**
 * Putting firmware on a board, the same in window and terminal: finds the board and what is on it,
 * chooses the image, uploads it, and says what comes next.
 */
public final class FirmwareWork {
  private final Ports ports;
  private final LongSupplier nanos;
  private final BooleanSupplier goOn;
  private final FirmwareImages images;

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   * @param goOn asked every 100 ms or so; when it says no, the work stops
   * @param images to choose from
   */
  public FirmwareWork(
      Ports ports, LongSupplier nanos, BooleanSupplier goOn, FirmwareImages images) {
    this.ports = ports;
    this.nanos = nanos;
    this.goOn = goOn;
    this.images = images;
  }

  /**
   * What is to be done, known before anything is written.
   *
   * @param port where the board is
   * @param before the rig that it is so far, its link closed; empty for a board without the
   *     firmware of a rig
   * @param image what goes onto it
   */
  public record Target(PortCandidate port, Optional<OpenRig> before, FirmwareImage image) {
    /** What will be done, for the person. */
    public String sentence() {
      return before
          .map(
              rig ->
                  Words.say(
                      "upload.begin.rig",
                      rig.name(),
                      port.path(),
                      rig.greeting().firmware(),
                      image.version(),
                      image.rig()))
          .orElseGet(
              () -> Words.say("upload.begin.board", port.path(), image.version(), image.rig()));
    }
  }

  /**
   * Finds the board and chooses the image.
   *
   * @param wish which rig, where more than one is there
   * @param rig which rig the board is to become; empty for the one that it is
   * @param rewired whether it may become another rig than its firmware says it is
   * @throws Trouble when it is not clear which board or which rig is meant
   */
  public Target target(RigSelector wish, Optional<String> rig, boolean rewired) {
    RigSearch search = new RigFinder(ports, nanos).search(wish, goOn);
    search.rig().ifPresent(found -> found.link().close());
    Optional<String> is = search.rig().map(found -> found.greeting().kind());
    PortCandidate port = search.rig().map(OpenRig::candidate).orElseGet(() -> onlyBoard(search));
    String wanted =
        rig.or(() -> is)
            .orElseThrow(
                () ->
                    new UploadTrouble(
                        Reason.WHICH_RIG, port.path(), String.join(", ", images.rigs())));
    FirmwareImage image =
        images
            .of(wanted)
            .orElseThrow(
                () ->
                    new Trouble(
                        Words.say("upload.noImage", wanted, String.join(", ", images.rigs()))));
    if (is.isPresent() && !is.get().equals(wanted) && !rewired) {
      throw new UploadTrouble(Reason.OTHER_RIG, port.path(), is.get(), wanted);
    }
    return new Target(port, search.rig(), image);
  }

  /** The one port where something is that is no rig yet. */
  private static PortCandidate onlyBoard(RigSearch search) {
    List<PortCandidate> boards =
        search.outcomes().stream()
            .filter(
                outcome ->
                    switch (outcome.finding()) {
                      case SILENT, NO_RIG, OTHER_PROTOCOL -> true;
                      case RIG, NO_PERMISSION, BUSY, UNUSABLE -> false;
                    })
            .map(PortOutcome::candidate)
            .toList();
    boolean rigs =
        search.outcomes().stream()
            .anyMatch(outcome -> outcome.finding() == PortOutcome.Finding.RIG);
    if (boards.isEmpty() || rigs) {
      throw new Trouble(search.sentence());
    }
    if (boards.size() > 1) {
      throw new UploadTrouble(
          Reason.WHICH_BOARD,
          boards.stream().map(PortCandidate::path).collect(Collectors.joining(", ")));
    }
    return boards.get(0);
  }

  /**
   * Uploads, and says what to do next, a sentence each.
   *
   * @throws Trouble when it could not be done
   */
  public List<String> upload(Target target, FirmwareUpload.Progress progress) {
    FirmwareUpload.Uploaded now =
        new FirmwareUpload(ports, nanos, goOn, progress).upload(target.port(), target.image());
    String version = target.image().version();
    boolean same =
        target.before().filter(rig -> rig.greeting().firmware().equals(version)).isPresent();
    List<String> said = new ArrayList<>();
    said.add(Words.say("upload.done", now.rig().name(), version, target.image().rig()));
    now.wiring().ifPresent(said::add);
    said.add(Words.say(same ? "upload.next.same" : "upload.next.calibrate"));
    return said;
  }

  /** What to say of the firmware on a rig; empty where it is the one that this program brings. */
  public static Optional<String> ageSentence(FirmwareImages images, Greeting greeting) {
    return images
        .of(greeting.kind())
        .flatMap(
            image ->
                switch (FirmwareAge.of(greeting.firmware(), image.version())) {
                  case OLDER ->
                      Optional.of(
                          Words.say("upload.age.older", greeting.firmware(), image.version()));
                  case NEWER ->
                      Optional.of(
                          Words.say("upload.age.newer", greeting.firmware(), image.version()));
                  case SAME, NOT_KNOWN -> Optional.empty();
                });
  }
}
