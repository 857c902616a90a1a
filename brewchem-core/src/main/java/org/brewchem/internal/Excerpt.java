package org.brewchem.internal;

/** Text of the caller's as it stands in a message: whole while it is short, else its beginning. */
public final class Excerpt {

  private static final int CUSTOMARY_LENGTH = 80;

  private Excerpt() {}

  /**
   * Returns a text of at most 80 characters.
   *
   * @param text the text
   * @return the text, or its beginning with an ellipsis
   */
  public static String of(String text) {
    return of(text, CUSTOMARY_LENGTH);
  }

  /**
   * Returns a text of at most so many characters.
   *
   * @param text the text
   * @param most the characters allowed, the ellipsis included; 2 or more
   * @return the text, or its beginning with an ellipsis
   */
  public static String of(String text, int most) {
    if (text.length() <= most) {
      return text;
    }
    int end = most - 1;
    return text.substring(0, Character.isHighSurrogate(text.charAt(end - 1)) ? end - 1 : end) + "…";
  }
}
