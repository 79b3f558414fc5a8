package org.halflight.chart;

import java.util.List;
import org.jfree.chart.axis.SymbolAxis;
import org.jspecify.annotations.Nullable;

/** An axis of names, which may be written shorter. */
final class NameAxis extends SymbolAxis {
  private static final long serialVersionUID = 1L;

  private final transient List<String> shorter;
  private boolean isShort;

  NameAxis(@Nullable String label, List<String> names, List<String> shorter) {
    super(label, names.toArray(String[]::new));
    this.shorter = List.copyOf(shorter);
  }

  /** Writes the shorter names from now on. */
  void shorten() {
    isShort = true;
    // Whoever has asked for the ticks before asks again.
    fireChangeEvent();
  }

  @Override
  public String[] getSymbols() {
    return isShort ? shorter.toArray(String[]::new) : super.getSymbols();
  }

  @Override
  public String valueToString(double value) {
    int place = (int) value;
    return !isShort
        ? super.valueToString(value)
        : place >= 0 && place < shorter.size() ? shorter.get(place) : "";
  }
}
