package org.halflight.desk;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import org.halflight.desk.view.Cue;
import org.halflight.desk.view.SoundsOn;

/**
 * Plays sounds, if it may and the computer can. One at a time, and never one that comes while
 * another plays: a late sound would be taken for a new one. Safe for use by several threads.
 */
final class CuePlayer implements AutoCloseable {
  private static final float SAMPLES_PER_SECOND = 22_050;

  /** Soft edges keep a tone from clicking, which would reach far above 2 kHz. */
  private static final double EDGE_SECONDS = 0.012;

  private static final double LOUDNESS = 0.35;

  private final ExecutorService player =
      new ThreadPoolExecutor(
          0,
          1,
          1,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(1),
          work -> {
            Thread thread = new Thread(work, "halflight-sounds");
            thread.setDaemon(true);
            return thread;
          },
          new ThreadPoolExecutor.DiscardPolicy());
  private volatile SoundsOn on;
  private volatile boolean works = true;

  CuePlayer(SoundsOn on) {
    this.on = on;
  }

  SoundsOn on() {
    return on;
  }

  void on(SoundsOn now) {
    on = now;
  }

  /** Plays a sound, unless they are switched off or this computer makes none. */
  void play(Cue cue) {
    if (on.plays(cue.kind()) && works) {
      player.execute(() -> sound(samples(cue)));
    }
  }

  @Override
  public void close() {
    player.shutdownNow();
  }

  /** A sound as samples of 16 bits, low byte first. */
  static byte[] samples(Cue cue) {
    int total =
        cue.rhythmMillis().stream()
            .mapToInt(millis -> (int) (Math.abs(millis) * SAMPLES_PER_SECOND / 1000))
            .sum();
    byte[] bytes = new byte[2 * total];
    int at = 0;
    int tone = 0;
    for (int millis : cue.rhythmMillis()) {
      int count = (int) (Math.abs(millis) * SAMPLES_PER_SECOND / 1000);
      for (int i = 0; i < count; i++) {
        double edge = Math.min(i, count - 1 - i) / (EDGE_SECONDS * SAMPLES_PER_SECOND);
        double swell = millis < 0 ? 0 : 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, edge));
        double wave = Math.sin(2 * Math.PI * cue.hertz(tone) * i / SAMPLES_PER_SECOND);
        int sample = (int) Math.round(LOUDNESS * Short.MAX_VALUE * swell * wave);
        bytes[at++] = (byte) sample;
        bytes[at++] = (byte) (sample >> 8);
      }
      tone += millis < 0 ? 1 : 0;
    }
    return bytes;
  }

  private void sound(byte[] samples) {
    AudioFormat format = new AudioFormat(SAMPLES_PER_SECOND, 16, 1, true, false);
    try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
      line.open(format);
      line.start();
      line.write(samples, 0, samples.length);
      line.drain();
    } catch (LineUnavailableException | RuntimeException | LinkageError noSound) {
      // No sound card, or it is busy: everything that is heard is also seen.
      works = false;
    }
  }
}
