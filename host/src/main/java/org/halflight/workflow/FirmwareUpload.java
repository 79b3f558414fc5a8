package org.halflight.workflow;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.OpenRig;
import org.halflight.rig.RigFinder;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigSelector;
import org.halflight.upload.Exchange;
import org.halflight.upload.FirmwareImage;
import org.halflight.upload.UploadPlan;
import org.halflight.upload.UploadStep;
import org.halflight.upload.UploadTrouble;
import org.halflight.upload.UploadTrouble.Reason;

/**
 * Puts firmware on the board behind a port: restarts it by DTR, finds its bootloader at either
 * usual speed, writes, reads back, and waits for the greeting. It waits only in reads of the link.
 * For one thread.
 */
public final class FirmwareUpload {
  /** The speeds of common bootloaders: Uno and newer Nano class boards, older ones. */
  private static final int[] BAUD_RATES = {115_200, 57_600};

  /** Each speed is tried so often: a board may have been caught while it was starting. */
  private static final int ROUNDS = 2;

  /** Line noise, or a computer that was too slow, may spoil an upload so often. */
  private static final int TRIES = 3;

  /** DTR is off for so long before it restarts the board: its capacitor must discharge. */
  private static final long OFF_NANOS = TimeUnit.MILLISECONDS.toNanos(250);

  /** The chip takes 65 ms to start (data sheet, longest start-up time) and hears nothing before. */
  private static final long START_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  /**
   * A bootloader that blinks at its start answers late, and its receiver holds two bytes: a second
   * question before that would be lost in part.
   */
  private static final long SYNC_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

  private static final int SYNCS = 3;

  /** A page takes 12 ms on the line and 9 ms to write. */
  private static final long ANSWER_NANOS = TimeUnit.MILLISECONDS.toNanos(800);

  /** Time alone is no silence: a computer that was busy has not yet read what came meanwhile. */
  private static final int READS_LEAST = 4;

  private final Ports ports;
  private final LongSupplier nanos;
  private final BooleanSupplier goOn;
  private final Progress progress;
  private final byte[] buffer = new byte[4096];

  /** Hears how an upload goes. */
  @FunctionalInterface
  public interface Progress {
    /**
     * It has come so far.
     *
     * @param fraction of all that is to be said to the bootloader, 0 to 1
     */
    void at(UploadStep step, double fraction);
  }

  /**
   * A board with its new firmware.
   *
   * @param rig as it greets, its link closed
   * @param wiring what to say of its wiring; empty where nothing speaks against it
   */
  public record Uploaded(OpenRig rig, Optional<String> wiring) {}

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   * @param goOn asked every 100 ms or so; when it says no, the upload stops
   */
  public FirmwareUpload(Ports ports, LongSupplier nanos, BooleanSupplier goOn, Progress progress) {
    this.ports = ports;
    this.nanos = nanos;
    this.goOn = goOn;
    this.progress = progress;
  }

  /**
   * Puts an image on a board.
   *
   * @return the rig that then greets
   * @throws UploadTrouble when it could not be done
   * @throws org.halflight.link.LinkRefusedException when the port cannot be opened
   */
  public Uploaded upload(PortCandidate port, FirmwareImage image) {
    progress.at(UploadStep.SEARCHING, 0);
    try (Link link = ports.open(port, BAUD_RATES[0])) {
      write(link, UploadPlan.of(image));
    } catch (LinkLostException pulled) {
      throw new UploadTrouble(Reason.UNPLUGGED, port.path());
    }
    return greeting(port, image);
  }

  private void write(Link link, List<Exchange> plan) {
    for (int tries = 1; ; tries++) {
      try {
        findBootloader(link);
        run(link, plan);
        return;
      } catch (UploadTrouble trouble) {
        if (!trouble.isWorthAnotherTry() || tries == TRIES) {
          throw trouble;
        }
      }
    }
  }

  private void findBootloader(Link link) {
    for (int round = 0; round < ROUNDS; round++) {
      for (int baudRate : BAUD_RATES) {
        link.setBaudRate(baudRate);
        restart(link);
        for (int syncs = 0; syncs < SYNCS; syncs++) {
          byte[] came = ask(link, Exchange.sync(), Exchange::endsInSync, SYNC_NANOS);
          // Noise may look like an answer once, but not twice to the byte.
          if (Exchange.endsInSync(came) && isRight(link, Exchange.sync())) {
            return;
          }
        }
      }
    }
    throw new UploadTrouble(Reason.NO_BOOTLOADER, link.name());
  }

  private void restart(Link link) {
    link.setDtr(false);
    drain(link, OFF_NANOS);
    link.setDtr(true);
    drain(link, START_NANOS);
  }

  /** Reads and forgets what comes for a while. */
  private void drain(Link link, long forNanos) {
    long start = nanos.getAsLong();
    do {
      mustGoOn();
      link.read(buffer);
    } while (nanos.getAsLong() - start < forNanos);
  }

  private boolean isRight(Link link, Exchange exchange) {
    return exchange.answer(answer(link, exchange)) == Exchange.Answer.RIGHT;
  }

  private void run(Link link, List<Exchange> plan) {
    for (int i = 0; i < plan.size(); i++) {
      Exchange next = plan.get(i);
      byte[] came = answer(link, next);
      Optional<UploadTrouble> trouble = next.trouble(came, link.name());
      if (trouble.isPresent()) {
        throw trouble.get();
      }
      progress.at(next.step(), (i + 1.0) / plan.size());
    }
  }

  private byte[] answer(Link link, Exchange exchange) {
    return ask(
        link, exchange, came -> exchange.answer(came) != Exchange.Answer.UNFINISHED, ANSWER_NANOS);
  }

  /** Sends a command, and gives back what came until it is enough or the time is over. */
  private byte[] ask(Link link, Exchange exchange, Predicate<byte[]> isEnough, long limitNanos) {
    ByteArrayOutputStream came = new ByteArrayOutputStream();
    link.write(exchange.request());
    long start = nanos.getAsLong();
    for (int reads = 0; reads < READS_LEAST || nanos.getAsLong() - start < limitNanos; reads++) {
      mustGoOn();
      came.write(buffer, 0, link.read(buffer));
      if (isEnough.test(came.toByteArray())) {
        break;
      }
    }
    return came.toByteArray();
  }

  private void mustGoOn() {
    if (!goOn.getAsBoolean()) {
      throw new UploadTrouble(Reason.STOPPED);
    }
  }

  private Uploaded greeting(PortCandidate port, FirmwareImage image) {
    progress.at(UploadStep.GREETING, 1);
    RigFinder finder = new RigFinder(only(port), nanos);
    for (int tries = 1; tries <= TRIES; tries++) {
      Optional<OpenRig> rig = finder.search(RigSelector.any().onEveryPort(), goOn).rig();
      if (rig.isPresent()) {
        try {
          if (isOf(image, rig.get().greeting())) {
            return new Uploaded(rig.get(), wiring(rig.get()));
          }
        } finally {
          rig.get().link().close();
        }
      }
    }
    mustGoOn();
    throw new UploadTrouble(Reason.NO_GREETING, port.path(), image.version());
  }

  private Optional<String> wiring(OpenRig rig) {
    try {
      return WiringLook.ask(rig, nanos);
    } catch (LinkLostException pulled) {
      // The firmware is on the board and has greeted; whoever uses the rig next hears of the rest.
      return Optional.empty();
    }
  }

  private static boolean isOf(FirmwareImage image, Greeting greeting) {
    return greeting.kind().equals(image.rig()) && greeting.firmware().equals(image.version());
  }

  /** That port and no other. */
  private Ports only(PortCandidate port) {
    return new Ports() {
      @Override
      public List<PortCandidate> candidates() {
        return List.of(port);
      }

      @Override
      public Link open(PortCandidate candidate, int baudRate) {
        return ports.open(candidate, baudRate);
      }
    };
  }
}
