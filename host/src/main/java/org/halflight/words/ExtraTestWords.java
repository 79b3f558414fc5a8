package org.halflight.words;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.FlashContact;
import org.halflight.extratest.Holds;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.SelfTimer;
import org.halflight.extratest.StopScale;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.Source;

/** What was tried beside the marked speeds, in sentences; each kind has its own class of words. */
public final class ExtraTestWords {
  private ExtraTestWords() {}

  /** What was tried, in a word or two. */
  public static String name(ExtraTest tried) {
    return Words.say("everyday." + tried.what());
  }

  /** How it was found, in a word or two. */
  public static String state(ExtraTest tried) {
    if (tried.state() == CheckState.OK && !tried.lacks().isEmpty()) {
      return Words.say("everyday.partly");
    }
    return Words.of("desk.state", tried.state());
  }

  /** What was left out and would have to be in order too. */
  public static String lacks(List<String> what) {
    return what.stream()
        .map(each -> Words.say("everyday.lacks." + each))
        .collect(Collectors.joining(", "));
  }

  /** What it came to: the first sentence says how it is, the others what else there is to know. */
  public static List<String> lines(ExtraTest tried) {
    if (tried instanceof Bounce bounce) {
      return BounceWords.lines(bounce);
    }
    if (tried instanceof Linkage linkage) {
      return LinkageWords.lines(linkage);
    }
    if (tried instanceof AdvanceTiming linkage) {
      return AdvanceTimingWords.lines(linkage);
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
  public static String inShort(ExtraTest tried) {
    String said =
        tried instanceof LightLeak
            ? String.join(" ", lines(tried))
            : tried instanceof StopScale scale
                ? StopWords.inShort(scale)
                : tried instanceof Bounce bounce
                    ? BounceWords.inShort(bounce)
                    : lines(tried).get(0);
    return ofRun(tried, said);
  }

  /** The same in one line with the run that it belongs to. */
  public static String inOneLine(ExtraTest tried) {
    return ofRun(tried, String.join(" ", lines(tried)));
  }

  private static String ofRun(ExtraTest tried, String said) {
    return tried
        .phase()
        .map(phase -> Words.say("everyday.ofRun", Sentences.phase(phase), said))
        .orElse(said);
  }

  /** Where the least trustworthy of some figures come from. */
  public static String source(List<FiringResult> firings, List<LightReading> readings) {
    Source worst = ExtraTests.source(firings, readings);
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
    return Words.of("desk.item", item);
  }
}
