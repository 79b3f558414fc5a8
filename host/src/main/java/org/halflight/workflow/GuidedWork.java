package org.halflight.workflow;

/**
 * Work at the bench through which a person is led: prompts go out, answers come in. It knows
 * neither a window nor a terminal, so both lead through the same steps. Whoever owns it calls
 * {@link #advance()} between one line of the rig and the next. For one thread.
 */
public interface GuidedWork {
  /** What the person sees now. */
  Prompt prompt();

  /**
   * The person answers. An answer that the prompt does not offer changes nothing.
   *
   * @throws org.halflight.trouble.Trouble when the work cannot go on because of the world around it
   */
  void answer(Answer answer);

  /**
   * Goes on as far as it can without waiting.
   *
   * @return whether the prompt is another than before
   * @throws org.halflight.trouble.Trouble when the work cannot go on because of the world around it
   */
  boolean advance();
}
