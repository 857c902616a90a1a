package org.brewchem.pictures;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A picture of results: what is drawn, on which axes. Immutable; each method returns a picture with
 * one thing more.
 */
public final class Picture {

  private static final int WIDTH = 860;
  private static final int HEIGHT = 540;
  private static final int MOST_BARS = 12;

  /** How something is drawn. */
  enum Kind {
    LINE,
    POINTS,
    BAND,
    AREA,
    BAR,
    LIMIT_ACROSS,
    LIMIT_UP
  }

  /**
   * One thing that is drawn: of a band and an area x and y are the outline, of a bar the length and
   * the row.
   */
  record Item(String name, Kind kind, double[] x, double[] y) {}

  /** An axis with its least and greatest value, NaN where the data decide. */
  record Axis(String title, double least, double greatest) {}

  private final String title;
  private final Axis across;
  private final Axis up;
  private final List<Item> items;
  private final Ground ground;

  private Picture(String title, Axis across, Axis up, List<Item> items, Ground ground) {
    this.title = title;
    this.across = across;
    this.up = up;
    this.items = items;
    this.ground = ground;
    if (has(items, Kind.AREA)) {
      needZero(up);
    }
    if (has(items, Kind.BAR)) {
      needZero(across);
    }
  }

  private static void needZero(Axis axis) {
    if (axis.least() > 0 || axis.greatest() < 0) {
      throw new IllegalArgumentException(
          axis.title()
              + ": from "
              + axis.least()
              + " to "
              + axis.greatest()
              + " is not possible; where a length or an area is read, the axis holds 0");
    }
  }

  private static boolean has(List<Item> items, Kind kind) {
    return items.stream().anyMatch(item -> item.kind() == kind);
  }

  /**
   * Starts a picture of bars, one below the other.
   *
   * @param title what it shows
   * @param across the quantity that the lengths stand for, with its unit
   * @return a picture without bars, on light ground; it takes bars only
   */
  public static Picture ofBars(String title, String across) {
    return of(title, across, "");
  }

  /**
   * Starts a picture.
   *
   * @param title what it shows
   * @param across the quantity of the horizontal axis with its unit, such as {@code volume [mL]} or
   *     {@code pH}
   * @param up the same of the vertical axis
   * @return a picture without data, on light ground
   */
  public static Picture of(String title, String across, String up) {
    return new Picture(
        title,
        new Axis(across, Double.NaN, Double.NaN),
        new Axis(up, Double.NaN, Double.NaN),
        List.of(),
        Ground.LIGHT);
  }

  /**
   * Chooses the ends of the horizontal axis.
   *
   * @param least the left end
   * @param greatest the right end
   * @return the picture with them
   * @throws IllegalArgumentException if the ends do not rise, or if bars are drawn and they leave
   *     out zero
   */
  public Picture across(double least, double greatest) {
    return new Picture(title, axis(across.title(), least, greatest), up, items, ground);
  }

  /**
   * Chooses the ends of the vertical axis.
   *
   * @param least the lower end; 0 where a length or an area is read
   * @param greatest the upper end
   * @return the picture with them
   * @throws IllegalArgumentException if the ends do not rise, or if an area is drawn and they leave
   *     out zero
   */
  public Picture up(double least, double greatest) {
    return new Picture(title, across, axis(up.title(), least, greatest), items, ground);
  }

  private static Axis axis(String title, double least, double greatest) {
    if (!(least < greatest) || !Double.isFinite(greatest - least)) {
      throw new IllegalArgumentException(
          title + ": from " + least + " to " + greatest + " is not possible; it must rise");
    }
    return new Axis(title, least, greatest);
  }

  /**
   * Starts the vertical axis at zero, so that a height can be read as a length.
   *
   * @return the picture with that
   */
  public Picture upFromZero() {
    return new Picture(title, across, new Axis(up.title(), 0, up.greatest()), items, ground);
  }

  /**
   * Chooses the ground.
   *
   * @param chosen light, dark or grey
   * @return the picture on it
   */
  public Picture on(Ground chosen) {
    return new Picture(title, across, up, items, chosen);
  }

  /**
   * Draws a line.
   *
   * @param name what stands beside it
   * @param x its places, in the unit of the horizontal axis
   * @param y its heights, in the unit of the vertical axis
   * @return the picture with it
   * @throws IllegalArgumentException if there are not as many heights as places, none, or a number
   *     that is not finite
   */
  public Picture line(String name, double[] x, double[] y) {
    return with(item(name, Kind.LINE, x, y));
  }

  /**
   * Draws readings, each as a mark.
   *
   * @param name what stands beside them
   * @param x their places
   * @param y their heights
   * @return the picture with them
   * @throws IllegalArgumentException as of {@link #line}
   */
  public Picture points(String name, double[] x, double[] y) {
    return with(item(name, Kind.POINTS, x, y));
  }

  /**
   * Draws a band between two lines, such as the interval of another line.
   *
   * @param name what stands in it
   * @param x the places
   * @param lower the lower edge
   * @param upper the upper edge
   * @return the picture with it
   * @throws IllegalArgumentException as of {@link #line}
   */
  public Picture band(String name, double[] x, double[] lower, double[] upper) {
    item(name, Kind.BAND, x, lower);
    item(name, Kind.BAND, x, upper);
    int n = x.length;
    double[] aroundX = new double[2 * n];
    double[] aroundY = new double[2 * n];
    for (int i = 0; i < n; i++) {
      aroundX[i] = x[i];
      aroundY[i] = lower[i];
      aroundX[n + i] = x[n - 1 - i];
      aroundY[n + i] = upper[n - 1 - i];
    }
    return with(item(name, Kind.BAND, aroundX, aroundY));
  }

  /**
   * Fills what lies between a line and zero. The vertical axis then starts at zero, for an area is
   * read.
   *
   * @param name what stands in it
   * @param x the places
   * @param y the heights of the line
   * @return the picture with it
   * @throws IllegalArgumentException as of {@link #line}, or if the ends chosen for the vertical
   *     axis leave out zero
   */
  public Picture area(String name, double[] x, double[] y) {
    Item line = item(name, Kind.AREA, x, y);
    int n = x.length;
    double[] aroundX = Arrays.copyOf(line.x(), 2 * n);
    double[] aroundY = Arrays.copyOf(line.y(), 2 * n);
    for (int i = 0; i < n; i++) {
      aroundX[n + i] = x[n - 1 - i];
    }
    return with(item(name, Kind.AREA, aroundX, aroundY));
  }

  /**
   * Draws a bar below those that are there, with its name above it. The horizontal axis starts at
   * zero, for a length is read.
   *
   * @param name what stands above it
   * @param length its length, negative to the left
   * @return the picture with it
   * @throws IllegalArgumentException if the length is not finite, if the ends chosen for the
   *     horizontal axis leave out zero, if the picture was not started by {@link #ofBars}, or if it
   *     has twelve bars
   */
  public Picture bar(String name, double length) {
    if (items.size() == MOST_BARS) {
      throw new IllegalArgumentException(
          name + ": bar " + (MOST_BARS + 1) + " is not possible; at most " + MOST_BARS + " are");
    }
    return with(item(name, Kind.BAR, new double[] {length}, new double[] {items.size()}));
  }

  /**
   * Draws a band across the whole picture, such as a target. It needs {@link #across}.
   *
   * @param name what stands in it
   * @param lower the lower edge
   * @param upper the upper edge
   * @return the picture with it
   * @throws IllegalStateException if the ends of the horizontal axis are not chosen yet
   */
  public Picture bandAcross(String name, double lower, double upper) {
    if (Double.isNaN(across.least())) {
      throw new IllegalStateException("across: its ends are not chosen yet");
    }
    return band(
        name,
        new double[] {across.least(), across.greatest()},
        new double[] {lower, lower},
        new double[] {upper, upper});
  }

  /**
   * Draws a limit across the whole picture.
   *
   * @param name what stands at it
   * @param y its height
   * @return the picture with it
   */
  public Picture limitAcross(String name, double y) {
    return with(item(name, Kind.LIMIT_ACROSS, new double[] {0}, new double[] {y}));
  }

  /**
   * Draws a limit from bottom to top, such as an end point.
   *
   * @param name what stands at it
   * @param x its place
   * @return the picture with it
   */
  public Picture limitUp(String name, double x) {
    return with(item(name, Kind.LIMIT_UP, new double[] {x}, new double[] {0}));
  }

  private static Item item(String name, Kind kind, double[] x, double[] y) {
    if (x.length != y.length || x.length == 0) {
      throw new IllegalArgumentException(
          name + ": " + x.length + " places and " + y.length + " heights are not possible");
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            name + ": the point " + x[i] + ", " + y[i] + " is not possible; finite ones are");
      }
    }
    return new Item(name, kind, x.clone(), y.clone());
  }

  private Picture with(Item item) {
    if ((item.kind() == Kind.BAR) != isOfBars()) {
      throw new IllegalArgumentException(
          item.name()
              + (isOfBars()
                  ? ": a picture of bars takes bars only"
                  : ": a bar needs Picture.ofBars"));
    }
    List<Item> more = new ArrayList<>(items);
    more.add(item);
    return new Picture(title, across, up, List.copyOf(more), ground);
  }

  /**
   * Writes the picture into a file.
   *
   * @param path a name that ends in {@code .svg} or {@code .png}
   * @return what was drawn and where it is
   * @throws IllegalArgumentException if the name ends otherwise or nothing is drawn
   * @throws IOException if the file cannot be written
   */
  public Saved save(Path path) throws IOException {
    String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
    Drawing drawing = drawing();
    if (name.endsWith(".svg")) {
      drawing.svg(path);
    } else if (name.endsWith(".png")) {
      Files.write(path, drawing.png());
    } else {
      throw new IllegalArgumentException(
          "picture: the name \"" + name + "\" is not possible; it ends in .svg or .png");
    }
    return new Saved(path, this);
  }

  /**
   * Draws the picture as a PNG file of twice its size on a page, without writing it.
   *
   * @return the bytes of the file
   * @throws IllegalArgumentException if nothing is drawn
   */
  public byte[] png() {
    return drawing().png();
  }

  private Drawing drawing() {
    if (items.isEmpty()) {
      throw new IllegalArgumentException("picture: nothing is drawn yet");
    }
    return new Drawing(this, WIDTH, HEIGHT);
  }

  boolean isOfBars() {
    return up.title().isEmpty();
  }

  /** Whether a height is read as a length, so that the vertical axis starts at zero. */
  boolean readsHeights() {
    return has(items, Kind.AREA);
  }

  String title() {
    return title;
  }

  Axis across() {
    return across;
  }

  Axis up() {
    return up;
  }

  List<Item> items() {
    return items;
  }

  Ground ground() {
    return ground;
  }

  /**
   * A picture in a file.
   *
   * @param path the file
   * @param picture what is drawn
   */
  public record Saved(Path path, Picture picture) {

    /**
     * Names the file and what it shows.
     *
     * @return such as {@code curve.png: Titration of an invented beer; alkali 1, alkali 2}
     */
    @Override
    public String toString() {
      return path + ": " + picture;
    }
  }

  /**
   * Says what is drawn.
   *
   * @return such as {@code Titration of an invented beer; alkali 1, alkali 2}
   */
  @Override
  public String toString() {
    return items.isEmpty()
        ? title
        : title + "; " + items.stream().map(Item::name).collect(Collectors.joining(", "));
  }
}
