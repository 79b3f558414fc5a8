package org.halflight.words;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.halflight.everyday.Bounce;
import org.halflight.everyday.Everyday;
import org.halflight.everyday.FlashContact;
import org.halflight.everyday.Holds;
import org.halflight.everyday.LightLeak;
import org.halflight.everyday.Linkage;
import org.halflight.everyday.SelfTimer;
import org.halflight.everyday.StopScale;
import org.halflight.everyday.Tried;
import org.halflight.job.CheckItem;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.Source;

/** What was tried beside the marked speeds, in sentences; each kind has its own class of words. */
public final class EverydayWords {
  private EverydayWords() {}

  /** What was tried, in a word or two. */
  public static String name(Tried tried) {
    return Words.say("everyday." + tried.what());
  }

  /** How it was found, in a word or two. */
  public static String state(Tried tried) {
    return Words.say(
        "desk.state." + tried.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** What it came to: the first sentence says how it is, the others what else there is to know. */
  public static List<String> lines(Tried tried) {
    if (tried instanceof Bounce bounce) {
      return BounceWords.lines(bounce);
    }
    if (tried instanceof Linkage linkage) {
      return LinkageWords.lines(linkage);
    }
    if (tried instanceof LightLeak leak) {
      return LeakWords.lines(leak);
    }
    if (tried instanceof StopScale scale) {
      return StopWords.lines(scale);
    }
    if (tried instanceof Holds holds) {
      return HoldWords.lines(holds);
    }
    if (tried instanceof SelfTimer timer) {
      return SelfTimerWords.lines(timer);
    }
    if (tried instanceof FlashContact contact) {
      return ContactWords.lines(contact);
    }
    throw new IllegalArgumentException("nobody has words for " + tried.what());
  }

  /** What it came to for the owner of the camera: the verdict, and no more. */
  public static String inShort(Tried tried) {
    String said =
        tried instanceof LightLeak
            ? String.join(" ", lines(tried))
            : tried instanceof StopScale scale ? StopWords.inShort(scale) : lines(tried).get(0);
    return ofRun(tried, said);
  }

  /** The same in one line with the run that it belongs to. */
  public static String inOneLine(Tried tried) {
    return ofRun(tried, String.join(" ", lines(tried)));
  }

  private static String ofRun(Tried tried, String said) {
    return tried
        .phase()
        .map(phase -> Words.say("everyday.ofRun", Sentences.phase(phase), said))
        .orElse(said);
  }

  /** Where the least trustworthy of some figures come from. */
  public static String source(List<FiringResult> firings, List<LightReading> readings) {
    Source worst = Everyday.source(firings, readings);
    return Stream.concat(
            firings.stream().map(firing -> firing.key().rigSerial()),
            readings.stream().map(LightReading::rigSerial))
        .filter(serial -> Source.of(serial) == worst)
        .findFirst()
        .map(Sentences::source)
        .orElse("");
  }

  /** An item of the lists of intake and hand-back. */
  public static String item(CheckItem item) {
    return Words.say("desk.item." + item.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }
}
