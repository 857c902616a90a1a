package org.brewchem.pictures;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

  private static final Pattern FILL = Pattern.compile("fill:rgb\\(([0-9]+),([0-9]+),([0-9]+)\\)");

  private record Written(String text, Rectangle2D box, Color color) {}

  private final double width;
  private final double height;
  private final Color ground;
  private final List<Written> texts;
  private final int paths;

  private DrawnPicture(double width, double height, Color ground, List<Written> texts, int paths) {
    this.width = width;
    this.height = height;
    this.ground = ground;
    this.texts = texts;
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
    Element first = (Element) root.getElementsByTagName("rect").item(0);
    NodeList rects = root.getElementsByTagName("rect");
    for (int i = 0; i < rects.getLength() && !first.hasAttribute("style"); i++) {
      first = (Element) rects.item(i);
    }
    int paths = 0;
    for (String name : List.of("path", "line", "polyline", "polygon")) {
      paths += root.getElementsByTagName(name).getLength();
    }
    return new DrawnPicture(
        number(root.getAttribute("width").replace("px", "")),
        number(root.getAttribute("height").replace("px", "")),
        fill(first),
        List.copyOf(texts),
        paths);
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
        fill(element));
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  private static Color fill(Element element) {
    Matcher fill = FILL.matcher(element.getAttribute("style"));
    if (!fill.find()) {
      return Color.BLACK;
    }
    return new Color(
        Integer.parseInt(fill.group(1)),
        Integer.parseInt(fill.group(2)),
        Integer.parseInt(fill.group(3)));
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
   * Checks that every text lies within the sheet, none over another, each with a contrast of 4.5 to
   * 1 or more to the ground.
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
      for (Written other : texts.subList(0, i)) {
        if (one.box().intersects(other.box())) {
          problems.add("\"" + one.text() + "\" lies over \"" + other.text() + "\"");
        }
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
