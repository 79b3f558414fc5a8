package org.halflight.desk;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.awt.KeyboardFocusManager;
import java.util.HashMap;
import java.util.Map;
import javax.swing.InputMap;
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import org.halflight.chart.Theme;

/**
 * Colours and letters of the window, light or dark, from the palette of the pictures. The size of
 * the letters is the desktop's.
 *
 * @param dark light letters on a dark ground
 * @param theme of the pictures
 */
record Look(boolean dark, Theme theme) {
  /** The five sizes of letters, as times the desktop's; the bench's own are millimetres. */
  static final double NOTE = 0.92;

  static final double BODY = 1.05;
  static final double LEAD = 1.2;
  static final double SENTENCE = 1.5;
  static final double TITLE = 2;

  /** Space is a multiple of this, in pixels before scaling: around a place, between its parts. */
  static final int UNIT = 4;

  /** The least height of what a place is for: 9 mm of a 14-inch screen. */
  static final String MAIN_ACT = "hmin 40";

  /** Around a place, as MigLayout reads it. */
  static final String EDGES =
      "insets " + 4 * UNIT + " " + 8 * UNIT + " " + 3 * UNIT + " " + 8 * UNIT;

  /** Between the parts of a place. */
  static final String GAPS = "gap " + 5 * UNIT + " " + 2 * UNIT;

  private static final double SCREEN_MILLIMETRES = 310;

  private static final double SCREEN_HIGH_MILLIMETRES = SCREEN_MILLIMETRES * 9 / 16;

  private static final int USUAL_WIDTH = 1366;

  /** Makes Swing look so. Only what is made or updated afterwards looks so. */
  static Look install(boolean dark) {
    Theme theme = dark ? Theme.DARK : Theme.LIGHT;
    Map<String, String> extra = new HashMap<>();
    extra.put("@background", hex(theme.background()));
    extra.put("@foreground", hex(theme.ink()));
    extra.put("@accentColor", hex(theme.asLeft()));
    extra.put("Component.focusWidth", "2");
    extra.put("Component.arc", "8");
    extra.put("Button.arc", "8");
    extra.put("TextField.placeholderForeground", hex(theme.quietInk()));
    extra.put("ScrollBar.showButtons", "false");
    extra.put("TabbedPane.tabInsets", "4,7,4,7");
    extra.put("Table.showHorizontalLines", "true");
    extra.put("Table.rowHeight", "28");
    extra.put("TextComponent.arc", "8");
    FlatLaf.setGlobalExtraDefaults(extra);
    if (dark) {
      FlatDarkLaf.setup();
    } else {
      FlatLightLaf.setup();
    }
    enterPresses("Button.focusInputMap");
    enterPresses("ToggleButton.focusInputMap");
    return new Look(dark, theme.withLetterSize(letters().getSize2D()));
  }

  /** A button that has the focus is pressed by Enter as by the space bar. */
  private static void enterPresses(String map) {
    if (UIManager.get(map) instanceof InputMap keys) {
      keys.put(KeyStroke.getKeyStroke("ENTER"), "pressed");
      keys.put(KeyStroke.getKeyStroke("released ENTER"), "released");
    }
  }

  /** The desktop's letters. */
  static Font letters() {
    return UIManager.getFont("Label.font");
  }

  /** The desktop's letters, larger. */
  static Font letters(double times) {
    return letters().deriveFont((float) (letters().getSize2D() * times));
  }

  static Font bold(double times) {
    return letters(times).deriveFont(Font.BOLD);
  }

  /** A length in pixels that grows with the desktop's letters. */
  static int px(int pixels) {
    return UIScale.scale(pixels);
  }

  /**
   * A length at the bench in pixels, so that it is read from two metres whatever the screen: the
   * window counts as a 14-inch screen of {@value #SCREEN_MILLIMETRES} mm that it fills.
   *
   * @param inWindow any component of the window; before it is in one, the letters' size decides
   */
  static int mm(JComponent inWindow, double millimetres) {
    Component root = SwingUtilities.getRoot(inWindow);
    double each =
        root == null || root.getWidth() == 0
            ? px(USUAL_WIDTH) / SCREEN_MILLIMETRES
            : Math.min(
                root.getWidth() / SCREEN_MILLIMETRES, root.getHeight() / SCREEN_HIGH_MILLIMETRES);
    return (int) Math.round(millimetres * each);
  }

  /** Tab leaves a table, as it leaves any other control; arrows go from cell to cell. */
  static void leaveByTab(JTable table) {
    table.setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
    table.setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
  }

  Color ground() {
    return theme.background();
  }

  Color ink() {
    return theme.ink();
  }

  Color quietInk() {
    return theme.quietInk();
  }

  Color line() {
    return dark ? new Color(0x39414A) : new Color(0xD8DCE0);
  }

  /** Behind what is set apart a little. */
  Color shade() {
    return dark ? new Color(0x1D2329) : new Color(0xF4F5F6);
  }

  /** Done, and all is well: bluish green. */
  Color done() {
    return dark ? new Color(0x2FBF95) : new Color(0x007A59);
  }

  /** Something asks to be looked at: orange of the palette. */
  Color attention() {
    return dark ? new Color(0xE69F00) : new Color(0x9A5700);
  }

  /** Behind a sentence that asks. */
  Color askGround() {
    return dark ? new Color(0x3A2F14) : new Color(0xFFF3D6);
  }

  private static String hex(Color colour) {
    return String.format("#%06X", colour.getRGB() & 0xFFFFFF);
  }
}
