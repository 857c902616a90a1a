package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class NoticeTest {

  @Test
  void rowsCountFromOne() {
    assertEquals("row 1: odd", Notice.ofRow(Desk.TestCode.ODD, "mass", 1, "odd").toString());
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> Notice.ofRow(Desk.TestCode.ODD, "mass", 0, "odd"));
    assertEquals("row: 0 is not possible; rows count from 1", refused.getMessage());
  }
}
