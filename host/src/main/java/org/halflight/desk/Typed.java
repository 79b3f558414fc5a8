package org.halflight.desk;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** Hears whatever is typed into a field. */
record Typed(Runnable hearer) implements DocumentListener {
  @Override
  public void insertUpdate(DocumentEvent event) {
    hearer.run();
  }

  @Override
  public void removeUpdate(DocumentEvent event) {
    hearer.run();
  }

  @Override
  public void changedUpdate(DocumentEvent event) {
    hearer.run();
  }
}
