package org.halflight.app;

/** Starts Halflight. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {}
}
