package org.halflight.desk;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** How far the writing of a file has come, for whoever watches; it may be ended between steps. */
final class FileProgress {
  /**
   * A step that begins.
   *
   * @param doing what is done now
   * @param done how many steps are done
   * @param all how many there are
   */
  record Step(String doing, int done, int all) {}

  private final AtomicBoolean ended = new AtomicBoolean();
  private final Consumer<Step> watches;

  /**
   * @param watches hears each step, on the thread that writes
   */
  FileProgress(Consumer<Step> watches) {
    this.watches = watches;
  }

  /**
   * A step begins.
   *
   * @throws Trouble where the person ended it: nothing was written
   */
  void at(String doing, int done, int all) {
    if (ended.get()) {
      throw new Trouble(Words.say("desk.files.ended"));
    }
    watches.accept(new Step(doing, done, all));
  }

  /** No further step begins; from any thread. */
  void end() {
    ended.set(true);
  }
}
