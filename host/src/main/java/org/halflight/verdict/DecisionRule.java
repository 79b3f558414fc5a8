package org.halflight.verdict;

import org.halflight.session.QuickRepeat;
import org.halflight.session.QuickSpeeds;
import org.halflight.stored.StoredWords;

/**
 * How the number of firings came about; it changes what a decision is worth. Who looks after each
 * firing and stops when it pleases finds 'within' three times as often as stated.
 */
public enum DecisionRule {
  /** The number was fixed before the first firing. */
  FIXED_NUMBER {
    @Override
    public double risk(int firings) {
      return RISK;
    }
  },
  /**
   * Fired until it is decided, from {@link #FIRST_LOOK} firings up with a look after each: look j
   * has {@code RISK / (j (j + 1))} of the risk, so that all looks together stay below {@link #RISK}
   * however many there are (Bonferroni).
   */
  UNTIL_DECIDED {
    @Override
    public double risk(int firings) {
      double look = Math.max(1, firings - FIRST_LOOK + 1);
      return RISK / (look * (look + 1));
    }

    @Override
    public boolean decides(int firings) {
      return firings >= FIRST_LOOK;
    }
  },
  /**
   * A quick look: of up to four speeds that were fired once each, the one with the largest error is
   * fired again, with a look after each from three firings up. Which of the four it is hangs on
   * chance, so that each has a quarter of {@link #RISK}, whichever is chosen (Bonferroni); look j
   * has {@code 1 / (j (j + 1))} of that, as above.
   */
  QUICK {
    @Override
    public double risk(int firings) {
      double look = Math.max(1, firings - QuickRepeat.LEAST);
      return RISK / QuickSpeeds.MOST / (look * (look + 1));
    }

    @Override
    public boolean decides(int firings) {
      return firings > QuickRepeat.LEAST;
    }
  };

  /** As files store them. */
  public static final StoredWords<DecisionRule> WORDS =
      StoredWords.of(
          DecisionRule.class,
          decisionRule ->
              switch (decisionRule) {
                case FIXED_NUMBER -> "fixed-number";
                case UNTIL_DECIDED -> "until-decided";
                case QUICK -> "quick";
              });

  /** The greatest risk of calling a speed within tolerance whose truth lies on a limit. */
  public static final double RISK = 0.05;

  /** With fewer nothing is decided by {@link #UNTIL_DECIDED}. */
  public static final int FIRST_LOOK = 5;

  /** The risk of a decision after so many firings. */
  public abstract double risk(int firings);

  /** Whether anything is decided after so many firings. */
  public boolean decides(int firings) {
    return true;
  }
}
