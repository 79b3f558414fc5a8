package org.halflight.workflow;

/**
 * Work at the bench through which a person is led: prompts go out, answers come in. It knows
 * neither a window nor a terminal, so both lead through the same steps. Whoever owns it calls
 * {@link #advance()} between one line of the rig and the next. For one thread.
 */
public abstract class GuidedWork {
  /** What the person sees now. */
  public abstract Prompt prompt();

  /**
   * The person answers. An answer that the prompt does not offer changes nothing but a remark.
   *
   * @throws org.halflight.trouble.Trouble when the work cannot go on because of the world around it
   */
  public final void answer(Answer answer) {
    if (prompt().answers().contains(answer)) {
      onAnswer(answer);
    } else {
      onAnswerNotOffered(answer);
    }
  }

  /** The person gave an answer that the prompt offers. */
  abstract void onAnswer(Answer answer);

  /** The person gave another answer: the work may say what to do first. */
  void onAnswerNotOffered(Answer answer) {}

  /**
   * Goes on as far as it can without waiting.
   *
   * @return whether the prompt is another than before
   * @throws org.halflight.trouble.Trouble when the work cannot go on because of the world around it
   */
  public final boolean advance() {
    Prompt before = prompt();
    goOn();
    return !prompt().equals(before);
  }

  /** Goes on as far as it can without waiting. */
  abstract void goOn();
}
