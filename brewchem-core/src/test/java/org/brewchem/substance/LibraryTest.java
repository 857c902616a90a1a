package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The rules of the look-up, on a library of our own. */
class LibraryTest {

  private static final String GYPSUM = new String("1");
  private static final String LACTIC = new String("2");
  private static final String BRACKET = new String("3");

  private static Library<String> library() {
    Library<String> library = new Library<>("thing", " acid", LibraryTest::onlyUpperCase);
    library.add(GYPSUM, "CASO", "calcium sulfate (gypsum)", "plaster (stucco) acid");
    library.add(LACTIC, null, "lactic acid", "milk acid");
    library.add(BRACKET, null, " (odd)");
    return library;
  }

  private static String onlyUpperCase(String text) {
    if (!text.matches("[A-Z]+")) {
      throw new IllegalArgumentException("no formula");
    }
    return text.startsWith("Z") ? "CASO" : text;
  }

  @Test
  void aMemberIsFoundByEachOfItsNamesWholeInBracketsAndWithoutSuffix() {
    Library<String> library = library();
    for (String name :
        List.of(
            "calcium sulfate (gypsum)",
            "calcium sulfate",
            "gypsum",
            "plaster (stucco) acid",
            "plaster (stucco)")) {
      assertEquals(Optional.of(GYPSUM), library.withName(name), name);
    }
    for (String name : List.of("lactic acid", "lactic", "milk acid", "milk")) {
      assertEquals(Optional.of(LACTIC), library.withName(name), name);
    }
    for (String name : List.of("", "odd", "plaster", "stucco", "stucco) aci", "CASO", "acid")) {
      assertEquals(Optional.empty(), library.withName(name), name);
    }
    assertEquals(List.of(GYPSUM, LACTIC, BRACKET), library.members());
  }

  @Test
  void withoutASuffixNothingIsCutOff() {
    Library<String> library = new Library<>("thing", "", LibraryTest::onlyUpperCase);
    library.add(LACTIC, null, "lactic acid");
    assertEquals(Optional.empty(), library.withName("lactic"));
    assertSame(LACTIC, library.find("lactic acid"));
  }

  @Test
  void aFormulaIsReadUpToFortyCharacters() {
    Library<String> library = library();
    assertSame(GYPSUM, library.find("CASO"));
    assertSame(GYPSUM, library.find("Z".repeat(40)));
    assertThrows(IllegalArgumentException.class, () -> library.find("Z".repeat(41)));
  }

  @Test
  void aNameOrFormulaOfTwoMembersIsRefusedAndOneSaidTwiceIsNot() {
    Library<String> library = library();
    library.add(LACTIC, "LAC", "lactic acid");
    assertEquals(
        "thing: gypsum names two of them",
        assertThrows(IllegalStateException.class, () -> library.add("other", null, "rock (gypsum)"))
            .getMessage());
    assertThrows(IllegalStateException.class, () -> library.add("other", "CASO", "rock"));
  }

  private static String refused(String text, String... names) {
    Library<String> library = new Library<>("thing", "", LibraryTest::onlyUpperCase);
    for (String name : names) {
      library.add(new String(name), null, name);
    }
    return String.valueOf(
        assertThrows(IllegalArgumentException.class, () -> library.find(text)).getMessage());
  }

  @Test
  void nearIsOneChangeAndOneMoreForEveryFiveLetters() {
    assertEquals(
        "thing: \"abcz\" is not possible; near it are [abcd]", refused("abcz", "abcd", "zzzzzzzz"));
    assertEquals(
        "thing: \"xbcd\" is not possible; near it are [abcd]", refused("xbcd", "abcd", "zzzzzzzz"));
    assertEquals("thing: \"abyz\" is not possible; one of [abcd]", refused("abyz", "abcd"));
    assertEquals(
        "thing: \"abcyz\" is not possible; near it are [abcde]", refused("abcyz", "abcde"));
    assertEquals("thing: \"abxyz\" is not possible; one of [abcde]", refused("abxyz", "abcde"));
  }

  @Test
  void aPartOfThreeLettersIsNearToo() {
    assertEquals(
        "thing: \"cde\" is not possible; near it are [abcdefghi]", refused("cde", "abcdefghi"));
    assertEquals("thing: \"cd\" is not possible; one of [abcdefghi]", refused("cd", "abcdefghi"));
    assertEquals(
        "thing: \"abcdefghi\" is not possible; near it are [cde]", refused("abcdefghi", "cde"));
    assertEquals("thing: \"abcdefghi\" is not possible; one of [cd]", refused("abcdefghi", "cd"));
  }

  @Test
  void theNearestComesFirstAndAtMostFiveAreNamed() {
    assertEquals(
        "thing: \"abcdefghij\" is not possible; near it are"
            + " [abcdefghix, abcdefghxy, abcdefgxyz, 1abcdefghij23, 12abcdefghij34]",
        refused(
            "abcdefghij",
            "12abcdefghij34",
            "12abcdefghij345",
            "abcdefgxyz",
            "abcdefghxy",
            "1abcdefghij23",
            "abcdefghix"));
  }
}
