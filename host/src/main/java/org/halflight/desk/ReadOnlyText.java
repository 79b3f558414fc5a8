package org.halflight.desk;

import javax.swing.JTextArea;

/** Words that are only read, wrapped; a screen reader hears what they are and what they say. */
final class ReadOnlyText extends JTextArea {
  private static final long serialVersionUID = 1L;

  /**
   * @param name of the component
   * @param spoken what these words are
   */
  ReadOnlyText(String name, String spoken) {
    setName(name);
    setEditable(false);
    setFocusable(false);
    setLineWrap(true);
    setWrapStyleWord(true);
    getAccessibleContext().setAccessibleName(spoken);
  }

  /** Wrapped text is as high as it is at the width that it has, so that comes first. */
  @Override
  public void setBounds(int x, int y, int width, int height) {
    boolean wraps = width != getWidth();
    super.setBounds(x, y, width, height);
    if (wraps) {
      revalidate();
    }
  }

  /** Says something, where it is not said already; long words are read from their begin. */
  void say(String words) {
    if (!getText().equals(words)) {
      setText(words);
      getAccessibleContext().setAccessibleDescription(words);
      setCaretPosition(0);
    }
  }
}
