package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ExcerptTest {

  @Test
  void aTextIsWholeUpToTheLengthAllowed() {
    String eighty = "x".repeat(80);
    assertEquals("", Excerpt.of(""));
    assertEquals(eighty, Excerpt.of(eighty));
    assertEquals("x".repeat(79) + "…", Excerpt.of(eighty + "y"));
    assertEquals("abc", Excerpt.of("abc", 3));
    assertEquals("ab…", Excerpt.of("abcd", 3));
  }

  /** A letter outside the basic plane takes two chars, which stay together. */
  @Test
  void noCharacterIsCutInTwo() {
    assertEquals("a…", Excerpt.of("a\uD83C\uDF7Abc", 3));
    assertEquals("a\uD83C\uDF7A…", Excerpt.of("a\uD83C\uDF7Abc", 4));
  }
}
