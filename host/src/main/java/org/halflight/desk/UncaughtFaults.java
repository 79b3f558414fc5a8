package org.halflight.desk;

import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.halflight.desk.view.Message;
import org.halflight.files.FaultLog;
import org.halflight.words.Words;

/** Logs and says what went wrong on some thread where nobody caught it. For any thread. */
final class UncaughtFaults {
  /** The thread on which pictures are made. */
  static final String DRAWING_THREAD = "halflight-pictures";

  private static final String EVENT_THREAD = "AWT-EventQueue";
  private static final long BETWEEN_FAULTS_NANOS = 2_000_000_000;
  private static final long NEVER = Long.MIN_VALUE;

  private final FaultLog faults;
  private final LongSupplier nanos;
  private final Consumer<Message> says;
  private final AtomicLong saidAt = new AtomicLong(NEVER);

  UncaughtFaults(FaultLog faults, LongSupplier nanos, Consumer<Message> says) {
    this.faults = faults;
    this.nanos = nanos;
    this.says = says;
  }

  /** Logs a fault, and says it unless one was said just before. */
  void fault(Thread thread, Throwable fault) {
    String name = thread.getName();
    String where =
        name.startsWith(EVENT_THREAD)
            ? Words.say("fault.at.window")
            : name.equals(DRAWING_THREAD)
                ? Words.say("fault.at.drawing")
                : Words.say("fault.at.thread", name);
    String sentence = faults.goesOn(fault, where);
    // To say it may bring the same fault again: then it must not go round for ever.
    long now = nanos.getAsLong();
    long last = saidAt.get();
    if ((last == NEVER || now - last > BETWEEN_FAULTS_NANOS) && saidAt.compareAndSet(last, now)) {
      says.accept(new Message(Message.Kind.TROUBLE, sentence));
    }
  }
}
