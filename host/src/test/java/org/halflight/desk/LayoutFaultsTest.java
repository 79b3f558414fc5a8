package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.List;
import javax.accessibility.AccessibleRole;
import javax.swing.BoxLayout;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every fault that a window may have is found, and a window without one is left alone. */
class LayoutFaultsTest {
  private final JPanel window = new JPanel(null);

  @BeforeAll
  static void look() {
    Look.install(false);
  }

  @Test
  void aWindowWithoutFaultHasNone() {
    JLabel label = add(new JLabel("All of it can be read"), 10, 10, 300, 30);
    JButton button = add(new JButton("Begin"), 10, 50, 120, 40);
    assertThat(faults()).isEmpty();
    assertThat(label.getText() + button.getText()).isNotBlank();
  }

  @Test
  void aLabelThatIsTooNarrow() {
    add(new JLabel("This does not fit into its place"), 10, 10, 90, 30);
    assertThat(faults()).singleElement().asString().startsWith("shortened: 'This");
  }

  @Test
  void aLabelThatIsTooLow() {
    add(new JLabel("Half of it"), 10, 10, 300, 6);
    assertThat(faults()).singleElement().asString().startsWith("cut off: 'Half of it'");
  }

  @Test
  void aLabelWithoutAnyRoom() {
    add(new JLabel("Nobody sees it"), 10, 10, 0, 0);
    assertThat(faults()).containsExactly("JLabel 'Nobody sees it' has no room");
  }

  @Test
  void aButtonOverAnotherAndBeyondTheEdge() {
    add(new JButton("One"), 10, 10, 120, 40);
    add(new JButton("Two"), 100, 10, 120, 40);
    add(new JButton("Three"), 550, 10, 120, 40);
    assertThat(faults())
        .contains(
            "JButton 'Two' lies over JButton 'One' by 100,10 30x40",
            "JButton 'Three' reaches beyond JPanel: 550,10 120x40");
  }

  @Test
  void wordsOverWords() {
    JLabel clear = add(new JLabel("One sentence"), 10, 10, 300, 30);
    JPanel over = add(new JPanel(null), 0, 0, 400, 100);
    over.setOpaque(false);
    JLabel second = new JLabel("another");
    second.setBounds(20, 10, 300, 30);
    over.add(second);
    assertThat(faults())
        .anyMatch(fault -> fault.startsWith("drawn over 'another': 'One sentence'"));
    assertThat(clear.isVisible()).isTrue();
  }

  @Test
  void greyOnGrey() {
    JLabel faint = add(new JLabel("hardly to be seen"), 10, 10, 300, 30);
    faint.setForeground(new Color(0xAAAAAA));
    faint.setOpaque(true);
    faint.setBackground(new Color(0xDDDDDD));
    assertThat(faults()).singleElement().asString().startsWith("contrast 1.7: 'hardly");
    faint.setEnabled(false);
    assertThat(faults()).as("what is out of use may be faint").isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"000000, FFFFFF, 21", "777777, FFFFFF, 4.48", "FF0000, 00FF00, 2.91"})
  void contrastIsThatOfTheStandard(String one, String other, double contrast) {
    // Checked with the formula of WCAG 2.1 by hand.
    assertThat(LayoutFaults.contrast(colour(one), colour(other)))
        .isCloseTo(contrast, org.assertj.core.api.Assertions.within(0.01));
  }

  private static Color colour(String hex) {
    return new Color(Integer.parseInt(hex, 16));
  }

  @Test
  void aButtonThatNobodyNamed() {
    JButton dumb = add(new JButton(), 10, 10, 60, 60);
    assertThat(faults()).containsExactly("JButton '' has no name for a screen reader");
    dumb.getAccessibleContext().setAccessibleName("Begin");
    assertThat(faults()).isEmpty();
  }

  @Test
  void aCellThatIsTooNarrowAndAHeadingToo() {
    JTable table =
        new JTable(
            new Object[][] {{"a word that is far too long", "x"}},
            new Object[] {"A", "a heading that is too long"});
    table.getAccessibleContext().setAccessibleName("cells");
    JScrollPane scroll = add(new JScrollPane(table), 10, 10, 120, 100);
    scroll.setColumnHeaderView(table.getTableHeader());
    assertThat(faults())
        .anyMatch(fault -> fault.startsWith("shortened: 'a wo"))
        .anyMatch(fault -> fault.startsWith("shortened: 'a he"));
    assertThat(scroll.isVisible()).isTrue();
  }

  @Test
  void linesThatDoNotFitUnlessTheyScroll() {
    JTextArea area = new JTextArea("word ".repeat(60));
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.getAccessibleContext().setAccessibleName("lines");
    add(area, 10, 10, 200, 60);
    assertThat(faults()).anyMatch(fault -> fault.startsWith("lines cut off: 'word"));
    window.removeAll();
    add(new JScrollPane(area), 10, 10, 200, 60);
    assertThat(faults()).isEmpty();
  }

  @Test
  void aPanelWhoseContentIsHigherThanIt() {
    JPanel panel = new JPanel();
    panel.setLayout(new BoxLayout(panel, BoxLayout.Y_AXIS));
    for (int i = 0; i < 8; i++) {
      panel.add(new JButton("Button " + i));
    }
    add(panel, 10, 10, 200, 100);
    assertThat(faults()).anyMatch(fault -> fault.contains("reaches beyond JPanel"));
  }

  @Test
  void aPaintedTextThatReachesBeyondItsComponentOrOverAnother() {
    PaintedComponent painted =
        new PaintedComponent(AccessibleRole.LABEL, "figure", Look.install(false)) {
          @Override
          void paint(Graphics2D g) {
            Font large = ofHeight(g, 60);
            g.setColor(Color.BLACK);
            drawShape(g, large, "1/125", 10, 80);
            drawShape(g, ofHeight(g, 20), "o o", 20, 70);
          }
        };
    add(painted, 10, 10, 150, 100);
    assertThat(faults())
        .anyMatch(fault -> fault.startsWith("cut off: '1/125'"))
        .anyMatch(fault -> fault.startsWith("drawn over '1/125': 'o o'"));
  }

  private <T extends JComponent> T add(T component, int x, int y, int width, int height) {
    component.setBounds(x, y, width, height);
    window.add(component);
    return component;
  }

  private List<String> faults() {
    window.setSize(new Dimension(600, 400));
    layOut(window);
    return LayoutFaults.of(window);
  }

  private static void layOut(Component in) {
    in.doLayout();
    if (in instanceof java.awt.Container container) {
      for (Component each : container.getComponents()) {
        layOut(each);
      }
    }
  }
}
