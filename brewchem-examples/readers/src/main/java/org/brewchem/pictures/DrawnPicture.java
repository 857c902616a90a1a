package org.brewchem.pictures;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** An SVG file of a {@link Picture} as it is read back, to check what can be read in it. */
public final class DrawnPicture {

  /**
   * The least contrast of a text, after the Web Content Accessibility Guidelines 2.1, from memory.
   */
  private static final double LEAST_CONTRAST = 4.5;

  /** The least contrast of a line or a mark, after the same guidelines, from memory. */
  private static final double LEAST_CONTRAST_OF_A_LINE = 3;

  private static final String RGB = ":rgb\\(([0-9]+),([0-9]+),([0-9]+)\\)";
  private static final Pattern FILL = Pattern.compile("fill" + RGB);
  private static final Pattern STROKE = Pattern.compile("stroke" + RGB);
  private static final Pattern TRANSLATION =
      Pattern.compile("translate\\((-?[0-9.]+)[ ,](-?[0-9.]+)\\)");
  private static final Pattern STEP = Pattern.compile("([ML])(-?[0-9.E-]+),(-?[0-9.E-]+)");

  private record Written(String text, Rectangle2D box, Color color) {}

  /** What is filled, and lies under a text. */
  private record Filled(java.awt.Shape shape, Color color) {}

  private final double width;
  private final double height;
  private final Color ground;
  private final List<Written> texts;
  private final List<Filled> filled;
  private final List<Color> strokes;
  private final int paths;

  private DrawnPicture(
      double width,
      double height,
      Color ground,
      List<Written> texts,
      List<Filled> filled,
      List<Color> strokes,
      int paths) {
    this.width = width;
    this.height = height;
    this.ground = ground;
    this.texts = texts;
    this.filled = filled;
    this.strokes = strokes;
    this.paths = paths;
  }

  /**
   * Reads a file.
   *
   * @param path an SVG file of a picture
   * @return what is drawn in it
   * @throws IOException if it cannot be read or is none
   */
  public static DrawnPicture read(Path path) throws IOException {
    Element root = parse(path).getDocumentElement();
    NodeList elements = root.getElementsByTagName("text");
    List<Written> texts = new ArrayList<>();
    for (int i = 0; i < elements.getLength(); i++) {
      texts.add(written((Element) elements.item(i)));
    }
    List<Filled> filled = new ArrayList<>();
    List<Color> strokes = new ArrayList<>();
    int paths = 0;
    for (String name : List.of("rect", "path", "line", "polyline", "polygon")) {
      NodeList drawn = root.getElementsByTagName(name);
      paths += name.equals("rect") ? 0 : drawn.getLength();
      for (int i = 0; i < drawn.getLength(); i++) {
        Element element = (Element) drawn.item(i);
        String style = element.getAttribute("style");
        if (FILL.matcher(style).find() && !style.contains("fill-opacity:0;")) {
          filled.add(new Filled(shape(element), color(FILL, style)));
        } else if (STROKE.matcher(style).find() && isOfTheData(element)) {
          strokes.add(color(STROKE, style));
        }
      }
    }
    return new DrawnPicture(
        number(root.getAttribute("width").replace("px", "")),
        number(root.getAttribute("height").replace("px", "")),
        filled.remove(0).color(),
        List.copyOf(texts),
        List.copyOf(filled),
        List.copyOf(strokes),
        paths);
  }

  /** What is drawn of the data is cut off at the frame; grid and axes are not. */
  private static boolean isOfTheData(Element element) {
    return ((Element) element.getParentNode()).hasAttribute("clip-path");
  }

  private static java.awt.Shape shape(Element element) {
    Path2D outline = new Path2D.Double();
    if (element.getTagName().equals("rect")) {
      outline.append(
          new Rectangle2D.Double(
              number(element.getAttribute("x")),
              number(element.getAttribute("y")),
              number(element.getAttribute("width")),
              number(element.getAttribute("height"))),
          false);
    } else {
      Matcher steps = STEP.matcher(element.getAttribute("d"));
      while (steps.find()) {
        double x = number(steps.group(2));
        double y = number(steps.group(3));
        if (steps.group(1).equals("M")) {
          outline.moveTo(x, y);
        } else {
          outline.lineTo(x, y);
        }
      }
    }
    Matcher moved =
        TRANSLATION.matcher(((Element) element.getParentNode()).getAttribute("transform"));
    return moved.find()
        ? AffineTransform.getTranslateInstance(number(moved.group(1)), number(moved.group(2)))
            .createTransformedShape(outline)
        : outline;
  }

  private static Document parse(Path path) throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      return factory.newDocumentBuilder().parse(in);
    } catch (ParserConfigurationException | SAXException e) {
      throw new IOException(path + ": is no SVG file, " + e.getMessage(), e);
    }
  }

  private static Written written(Element element) {
    String style = element.getAttribute("style");
    Matcher size = Pattern.compile("font-size:([0-9.]+)px").matcher(style);
    float points = size.find() ? Float.parseFloat(size.group(1)) : 12;
    Font font =
        new Font("DejaVu Sans", style.contains("bold") ? Font.BOLD : Font.PLAIN, 1)
            .deriveFont(points);
    String text = element.getTextContent();
    Rectangle2D bounds =
        font.getStringBounds(text, new FontRenderContext(new AffineTransform(), true, true));
    return new Written(
        text,
        new Rectangle2D.Double(
            number(element.getAttribute("x")),
            number(element.getAttribute("y")) - 0.76 * points,
            bounds.getWidth(),
            0.98 * points),
        style.contains("fill:rgb") ? color(FILL, style) : Color.BLACK);
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  private static Color color(Pattern where, String style) {
    Matcher rgb = where.matcher(style);
    if (!rgb.find()) {
      throw new IllegalArgumentException(style + ": a colour as rgb(...) is needed");
    }
    return new Color(
        Integer.parseInt(rgb.group(1)),
        Integer.parseInt(rgb.group(2)),
        Integer.parseInt(rgb.group(3)));
  }

  /**
   * Returns the texts.
   *
   * @return an unmodifiable list in the order of the file
   */
  public List<String> texts() {
    return texts.stream().map(Written::text).toList();
  }

  /**
   * Returns how many lines, outlines and marks are drawn.
   *
   * @return the count
   */
  public int paths() {
    return paths;
  }

  /**
   * Returns the colours of what is drawn: ground, areas, lines, marks and texts.
   *
   * @return an unmodifiable set
   */
  public Set<Color> colors() {
    Set<Color> colors = new LinkedHashSet<>(strokes);
    colors.add(ground);
    filled.forEach(shape -> colors.add(shape.color()));
    texts.forEach(text -> colors.add(text.color()));
    return Collections.unmodifiableSet(colors);
  }

  /**
   * Checks that every text lies within the sheet, none over another, each with a contrast of 4.5 to
   * 1 or more to the ground and to every area that it lies on; and that lines and marks have a
   * contrast of 3 to 1 or more to the ground.
   *
   * @return what is wrong, empty if nothing is
   */
  public List<String> problems() {
    List<String> problems = new ArrayList<>();
    Rectangle2D sheet = new Rectangle2D.Double(0, 0, width, height);
    for (int i = 0; i < texts.size(); i++) {
      Written one = texts.get(i);
      if (!sheet.contains(one.box())) {
        problems.add("\"" + one.text() + "\" is not within the sheet");
      }
      double contrast = contrast(one.color(), ground);
      if (contrast < LEAST_CONTRAST) {
        problems.add(
            String.format(
                Locale.ROOT, "\"%s\" has a contrast of %.1f to its ground", one.text(), contrast));
      }
      for (Filled under : filled) {
        double contrastToArea = contrast(one.color(), under.color());
        if (contrastToArea < LEAST_CONTRAST && under.shape().intersects(one.box())) {
          problems.add(
              String.format(
                  Locale.ROOT,
                  "\"%s\" has a contrast of %.1f to an area under it",
                  one.text(),
                  contrastToArea));
        }
      }
      for (Written other : texts.subList(0, i)) {
        if (one.box().intersects(other.box())) {
          problems.add("\"" + one.text() + "\" lies over \"" + other.text() + "\"");
        }
      }
    }
    Set<Color> edges = filled.stream().map(Filled::color).collect(Collectors.toSet());
    for (Color stroke : new LinkedHashSet<>(strokes)) {
      double contrast = contrast(stroke, ground);
      if (contrast < LEAST_CONTRAST_OF_A_LINE && !edges.contains(stroke)) {
        problems.add(
            String.format(Locale.ROOT, "a line has a contrast of %.1f to its ground", contrast));
      }
    }
    return problems;
  }

  private static double contrast(Color one, Color other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(int channel) {
    double share = channel / 255.0;
    return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
