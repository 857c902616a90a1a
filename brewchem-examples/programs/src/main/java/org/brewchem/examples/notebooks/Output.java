package org.brewchem.examples.notebooks;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.pictures.Picture;
import org.jspecify.annotations.Nullable;

/** One thing that a cell puts out. Immutable. */
public final class Output {

  /** How it came about. */
  public enum Kind {
    /** Printed while the cell ran. */
    PRINTED,
    /** The value of the last expression. */
    VALUE,
    /** Why the cell failed. */
    FAILURE
  }

  private final Kind kind;
  private final String text;
  private final byte[] png;
  private final @Nullable Picture picture;

  private Output(Kind kind, String text, byte[] png, @Nullable Picture picture) {
    this.kind = kind;
    this.text = Objects.requireNonNull(text, "text");
    this.png = png.clone();
    this.picture = picture;
  }

  static Output of(Kind kind, String text) {
    return new Output(kind, text, new byte[0], null);
  }

  static Output picture(String text, byte[] png) {
    return new Output(Kind.VALUE, text, png, null);
  }

  static Output of(Picture picture) {
    return new Output(Kind.VALUE, picture.toString(), picture.png(), picture);
  }

  /** The picture itself, empty if it was read from a file. */
  Optional<Picture> picture() {
    return Optional.ofNullable(picture);
  }

  /**
   * Returns how it came about.
   *
   * @return the kind
   */
  public Kind kind() {
    return kind;
  }

  /**
   * Returns the text.
   *
   * @return the text; of a picture what it shows
   */
  public String text() {
    return text;
  }

  /**
   * Returns the picture.
   *
   * @return the bytes of a PNG file, empty if it is a text alone
   */
  public Optional<byte[]> png() {
    return png.length == 0 ? Optional.empty() : Optional.of(png.clone());
  }

  /**
   * Says whether another output says the same. Of pictures the bytes are left out, for fonts differ
   * from machine to machine.
   *
   * @param other another
   * @return whether kind and text are equal, and both or none have a picture
   */
  boolean saysTheSame(Output other) {
    return kind == other.kind
        && text.strip().equals(other.text.strip())
        && (png.length == 0) == (other.png.length == 0);
  }

  /** Returns kind and text. */
  @Override
  public String toString() {
    return kind + (png.length == 0 ? "" : " with a picture") + ": " + text.strip();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Output that
        && kind == that.kind
        && text.equals(that.text)
        && Arrays.equals(png, that.png);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, text, Arrays.hashCode(png));
  }
}
