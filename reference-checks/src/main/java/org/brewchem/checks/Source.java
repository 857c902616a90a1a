package org.brewchem.checks;

/**
 * A source of expected values.
 *
 * @param key its key in {@code docs/sources.md}
 * @param text author, title, place, as the data files print it
 */
public record Source(String key, String text) {}
