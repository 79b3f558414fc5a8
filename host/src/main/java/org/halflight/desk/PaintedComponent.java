package org.halflight.desk;

import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/**
 * A component that paints itself and still has a name, a role and a description when read aloud.
 */
abstract class PaintedComponent extends JComponent implements LookListener {
  private static final long serialVersionUID = 1L;

  private final transient AccessibleRole role;

  /**
   * @param name what it is called aloud
   */
  PaintedComponent(AccessibleRole role, String name) {
    this.role = role;
    getAccessibleContext().setAccessibleName(name);
  }

  @Override
  public final AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            private static final long serialVersionUID = 1L;

            @Override
            public AccessibleRole getAccessibleRole() {
              return role;
            }
          };
    }
    return accessibleContext;
  }

  /** What it shows now, as it is read aloud. */
  final void speak(String description) {
    getAccessibleContext().setAccessibleDescription(description);
  }
}
