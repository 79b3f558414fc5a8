package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import javax.swing.table.DefaultTableModel;
import org.junit.jupiter.api.Test;

class WrappedTableTest {
  @Test
  void aLineGrowsWithWordsThatComeLater() {
    DefaultTableModel words =
        new DefaultTableModel(new Object[][] {{"OK"}}, new Object[] {"state"});
    WrappedTable table = new WrappedTable(words);
    table.setSize(80, 400);
    table.doLayout();
    int before = table.getRowHeight(0);
    words.setValueAt("not tested, partly measured, and nobody has looked at it", 0, 0);
    assertThat(table.getRowHeight(0)).isGreaterThan(before + before / 2);
  }
}
