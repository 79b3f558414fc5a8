package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.words.Words;
import org.halflight.workflow.Prompt;

/**
 * What is left of the window while the light is read that a screen could disturb.
 *
 * @param sentence what goes on
 * @param more which reading it is, and the key that stops it
 */
public record DarkText(String sentence, String more) {
  /** Of a light test whose light is read just now; empty at any other time. */
  public static Optional<DarkText> of(BenchView view) {
    LightTestView test = view.lightTest();
    if (!test.isUnderWay() || !test.isReading()) {
      return Optional.empty();
    }
    Prompt prompt = test.prompt();
    return Optional.of(
        new DarkText(
            prompt.sentence(),
            Words.say("desk.dark.more", test.name(), prompt.step(), prompt.steps())));
  }

  /** Line by line. */
  public List<String> lines() {
    return List.of(sentence, more);
  }
}
