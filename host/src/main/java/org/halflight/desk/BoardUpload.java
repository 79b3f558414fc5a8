package org.halflight.desk;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.halflight.bench.LiveFeed;
import org.halflight.desk.view.RigModel;
import org.halflight.link.Ports;
import org.halflight.rig.RigSelector;
import org.halflight.trouble.Trouble;
import org.halflight.upload.UploadStep;
import org.halflight.upload.UploadTrouble;
import org.halflight.words.Words;
import org.halflight.workflow.FirmwareUpload;
import org.halflight.workflow.FirmwareWork;
import org.halflight.workflow.ShippedFirmware;

/**
 * Puts firmware on the board, on the thread of the rig's connection, which has let go of the rig
 * meanwhile. What the window shows of it is changed on the bench thread.
 */
final class BoardUpload {
  private final RigModel model;
  private final LiveFeed feed;
  private final Ports ports;
  private final LongSupplier nanos;
  private final AtomicBoolean stopped = new AtomicBoolean();
  private Consumer<Runnable> onBench = doing -> {};

  // On the bench thread only.
  private boolean underWay;

  private Runnable whenDone = () -> {};

  /** The rig that was asked for and refused, since the board says that it is another one. */
  private Optional<String> refused = Optional.empty();

  /**
   * @param feed of the session, whose rig is let go
   */
  BoardUpload(RigModel model, LiveFeed feed, Ports ports, LongSupplier nanos) {
    this.model = model;
    this.feed = feed;
    this.ports = ports;
    this.nanos = nanos;
  }

  /** How to do something on the bench thread, from any thread. */
  void joins(Consumer<Runnable> bench) {
    onBench = bench;
  }

  boolean isUnderWay() {
    return underWay;
  }

  /** Ends it soon; from any thread. */
  void stop() {
    stopped.set(true);
  }

  /**
   * Begins. Asked for the same rig once more, after the board said that it is another one, it takes
   * the person's word that the board was rewired.
   *
   * @param rig which rig the board is to become; empty for the one that it is
   * @param onDone hears, on the bench thread, that the firmware is on the board
   */
  void begin(Optional<String> rig, Runnable onDone) {
    whenDone = onDone;
    boolean rewired = rig.isPresent() && rig.equals(refused);
    refused = Optional.empty();
    underWay = true;
    stopped.set(false);
    model.uploadBegins();
    feed.withoutRig(() -> ended(upload(rig, rewired)));
  }

  /** What came of it. */
  private record Outcome(String sentence, Optional<String> refused, boolean isDone) {}

  private Outcome upload(Optional<String> rig, boolean rewired) {
    try {
      FirmwareWork work =
          new FirmwareWork(ports, nanos, () -> !stopped.get(), ShippedFirmware.images());
      FirmwareWork.Target target = work.target(RigSelector.any(), rig, rewired);
      return new Outcome(
          String.join(" ", work.upload(target, new ByTheHundredth())), Optional.empty(), true);
    } catch (UploadTrouble trouble) {
      boolean other = trouble.reason() == UploadTrouble.Reason.OTHER_RIG;
      return new Outcome(trouble.getMessage(), other ? rig : Optional.empty(), false);
    } catch (Trouble trouble) {
      return new Outcome(trouble.getMessage(), Optional.empty(), false);
    } catch (RuntimeException | Error fault) {
      ended(new Outcome(Words.say("desk.rig.upload.fault"), Optional.empty(), false));
      throw fault;
    }
  }

  private void ended(Outcome outcome) {
    onBench.accept(
        () -> {
          underWay = false;
          refused = outcome.refused();
          model.idle();
          model.says(outcome.sentence());
          if (outcome.isDone()) {
            whenDone.run();
          }
        });
  }

  /** A few hundred commands are no few hundred views. */
  private final class ByTheHundredth implements FirmwareUpload.Progress {
    private UploadStep last = UploadStep.SEARCHING;
    private int hundredths = -1;

    @Override
    public void at(UploadStep step, double fraction) {
      int now = (int) (100 * fraction);
      if (step != last || now != hundredths) {
        last = step;
        hundredths = now;
        onBench.accept(() -> model.uploadAt(step, fraction));
      }
    }
  }
}
