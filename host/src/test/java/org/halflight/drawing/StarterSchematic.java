package org.halflight.drawing;

import java.util.Locale;

/** The starter rig's circuit as a schematic. Symbols and wires also tell what is joined to what. */
final class StarterSchematic {
  private static final String INK = "#000";
  private static final String RED = "#c62828";
  private static final double THIN = 1.6;
  private static final double THICK = 2.2;

  private final Svg svg = new Svg("Wiring of the starter rig", 1000, 644);
  private final Netlist netlist = new Netlist();

  private StarterSchematic() {
    frame(20, 20, 600, 400, "A  Light to voltage: all of it");
    wire(110, 90, 330, 90, 330, 140);
    pin("5V", 110, 90, "the board's own supply");
    photodiode(330, 140, 210);
    wire(330, 210, 330, 250);
    node(330, 250);
    wire(330, 250, 230, 250, 230, 290);
    resistor(230, 290, 350);
    wire(330, 250, 330, 290);
    capacitor(330, 290, 350);
    wire(230, 350, 230, 385, 330, 385, 330, 350);
    wire(230, 385, 110, 385);
    node(230, 385);
    pin("GND", 110, 385, "");
    wire(330, 250, 450, 250);
    node(450, 250);
    wire(450, 250, 450, 210, 500, 210);
    wire(450, 250, 450, 290, 500, 290);
    pin("A0", 500, 210, "converter");
    pin("D7", 500, 290, "comparator");
    text(400, 340, "The chip compares D7 with");
    text(400, 360, "its bandgap, 1.0 to 1.2 V.");
    text(400, 380, "Full light: 2.4 to 4.3 V.");

    frame(640, 20, 340, 400, "B  Release, if you like");
    wire(720, 120, 760, 120);
    pin("D12", 720, 120, "");
    lyingResistor(760, 830, 120);
    wire(830, 120, 880, 120);
    releaseSwitch(880, 120, 180);
    wire(880, 180, 880, 205, 720, 205);
    pin("GND", 720, 205, "");
    text(656, 250, "Pin low means pressed. The chip has");
    text(656, 270, "its own pull-up. Only a switch goes there.");
    text(656, 304, "Knob contact, A5: as panel H of the full");
    text(656, 324, "rig, low voltage only, a socket of its own.");
    text(656, 358, "D2, D3, D4, D5, D6: nothing.");
    text(656, 378, "The firmware holds them high by itself.");

    svg.rect(20, 440, 960, 184, "#fff3e0", RED, 1.5);
    svg.bold(34, 468, 17, "start", RED, "Safety");
    text(34, 494, "Power from a USB port only: no mains voltage, no other supply.");
    text(
        34,
        518,
        "There is no input for a flash contact. Take every flash unit off the camera, and never wire its flash contact to this rig.");
    text(
        34,
        542,
        "Mind the heat of lamps, and do not look into them. Leave mains lamps and their supplies to a qualified person,");
    text(34, 562, "and follow the rules of your country.");
    text(
        34,
        586,
        "A spark from your hand can spoil the chip: touch bare metal before you touch the wires or plug in the release.");
    text(34, 610, "Nobody has built it yet: values and voltages are computed and simulated.");
  }

  /** The drawing. */
  static Svg picture() {
    return new StarterSchematic().svg;
  }

  /** What it joins. */
  static Netlist netlist() {
    return new StarterSchematic().netlist;
  }

  private void frame(double x, double y, double wide, double high, String title) {
    svg.rect(x, y, wide, high, "#fff", "#999", 1);
    svg.bold(x + 14, y + 26, 16, "start", INK, title);
  }

  private void text(double x, double y, String words) {
    svg.text(x, y, 14, "start", INK, words);
  }

  private static String point(double x, double y) {
    return String.format(Locale.ROOT, "%.1f %.1f", x, y);
  }

  /** A wire joins all its corners. */
  private void wire(double... points) {
    svg.line(INK, THIN, points);
    for (int i = 2; i < points.length; i += 2) {
      netlist.wire(point(points[i - 2], points[i - 1]), point(points[i], points[i + 1]));
    }
  }

  private void node(double x, double y) {
    svg.circle(x, y, 3.5, INK, INK, 1);
  }

  private void pin(String name, double x, double y, String note) {
    svg.circle(x, y, 5, "#fff", INK, THIN);
    boolean atLeft = x < 400 || name.equals("D12") || name.equals("GND");
    svg.bold(x + (atLeft ? -10 : 10), y + 6, 17, atLeft ? "end" : "start", INK, name);
    if (atLeft) {
      svg.text(x - 10, y - 16, 13, "start", INK, note);
    } else {
      svg.text(x + 40, y + 5, 12, "start", INK, note);
    }
    netlist.leg(name, point(x, y));
  }

  private void photodiode(double x, double top, double bottom) {
    double middle = (top + bottom) / 2;
    svg.line(INK, THIN, x, top, x, middle - 12).line(INK, THIN, x, middle + 12, x, bottom);
    svg.area("#fff", INK, THIN, x - 14, middle + 12, x + 14, middle + 12, x, middle - 12);
    svg.line(INK, THICK, x - 14, middle - 12, x + 14, middle - 12);
    for (double down : new double[] {-10, 8}) {
      svg.line(INK, 1.4, x - 70, middle + down - 8, x - 26, middle + down + 2);
      svg.area(
          INK,
          INK,
          1,
          x - 24,
          middle + down + 3,
          x - 34,
          middle + down + 4,
          x - 33,
          middle + down - 4);
    }
    text(x - 108, middle, "light");
    text(x + 24, middle - 14, "cathode");
    text(x + 24, middle + 6, "PIN photodiode (BPW34 class)");
    text(x + 24, middle + 26, "anode");
    netlist.leg("photodiode cathode", point(x, top)).leg("photodiode anode", point(x, bottom));
  }

  private void resistor(double x, double top, double bottom) {
    svg.line(INK, THIN, x, top, x, top + 12).line(INK, THIN, x, bottom - 12, x, bottom);
    svg.rect(x - 8, top + 12, 16, bottom - top - 24, "#fff", INK, THIN);
    svg.text(x - 16, (top + bottom) / 2 + 5, 14, "end", INK, "22, 47 or 100 k");
    netlist.leg("resistor 1", point(x, top)).leg("resistor 2", point(x, bottom));
  }

  private void lyingResistor(double left, double right, double y) {
    svg.line(INK, THIN, left, y, left + 14, y).line(INK, THIN, right - 14, y, right, y);
    svg.rect(left + 14, y - 8, right - left - 28, 16, "#fff", INK, THIN);
    svg.text((left + right) / 2, y - 16, 14, "middle", INK, "1 k");
    netlist.leg("release resistor 1", point(left, y)).leg("release resistor 2", point(right, y));
  }

  private void capacitor(double x, double top, double bottom) {
    double middle = (top + bottom) / 2;
    svg.line(INK, THIN, x, top, x, middle - 5).line(INK, THIN, x, middle + 5, x, bottom);
    svg.line(INK, THICK, x - 14, middle - 5, x + 14, middle - 5);
    svg.line(INK, THICK, x - 14, middle + 5, x + 14, middle + 5);
    text(x + 22, middle + 5, "1 nF");
    netlist.leg("capacitor 1", point(x, top)).leg("capacitor 2", point(x, bottom));
  }

  private void releaseSwitch(double x, double top, double bottom) {
    svg.line(INK, THIN, x, top, x, top + 16).line(INK, THIN, x, bottom - 16, x, bottom);
    svg.line(INK, THICK, x, bottom - 16, x + 16, top + 14);
    svg.text(x + 22, (top + bottom) / 2 + 5, 14, "start", INK, "release");
    netlist.leg("release signal", point(x, top)).leg("release ground", point(x, bottom));
  }
}
