package org.brewchem.pictures;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.intermediate.CommandSequence;
import de.erichseifert.vectorgraphics2d.svg.SVGProcessor;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Draws one picture. Mutable, for one use. */
final class Drawing {

  private static final Font LABEL = new Font("DejaVu Sans", Font.PLAIN, 13);
  private static final Font TITLE = new Font("DejaVu Sans", Font.BOLD, 15);
  private static final FontRenderContext MEASURE =
      new FontRenderContext(new AffineTransform(), true, true);
  private static final BasicStroke[] LINES = {
    dashed(), dashed(9, 5), dashed(2, 4), dashed(13, 4, 2, 4), dashed(6, 3, 2, 3, 2, 3)
  };
  private static final BasicStroke LIMIT =
      new BasicStroke(1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL, 1, new float[] {7, 5}, 0);
  private static final int LEFT = 58;
  private static final int RIGHT = 22;
  private static final int TOP = 66;
  private static final int BOTTOM = 58;
  private static final int EDGE = 12;
  private static final double GAP = 7;
  private static final double ROOM = 0.06;
  private static final double NEARER_TO_ANOTHER = 40;
  private static final double WIDEST_BAR = 28;

  private final Picture picture;
  private final int width;
  private final int height;
  private final List<Rectangle2D> taken = new ArrayList<>();

  private static BasicStroke dashed(float... dashes) {
    return new BasicStroke(
        2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes.length == 0 ? null : dashes, 0);
  }

  Drawing(Picture picture, int width, int height) {
    this.picture = picture;
    this.width = width;
    this.height = height;
  }

  byte[] png() {
    BufferedImage image = new BufferedImage(2 * width, 2 * height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.scale(2, 2);
    paint(g);
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  void svg(Path path) throws IOException {
    VectorGraphics2D g = new VectorGraphics2D();
    paint(g);
    CommandSequence commands = g.getCommands();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new SVGProcessor().getDocument(commands, new PageSize(width, height)).writeTo(out);
    String text =
        out.toString(StandardCharsets.UTF_8)
            .replace("&quot;DejaVu Sans&quot;", "&quot;DejaVu Sans&quot;, Verdana, sans-serif")
            .replace("\r\n", "\n");
    Files.writeString(path, text);
  }

  private void paint(Graphics2D g) {
    Ground ground = picture.ground();
    g.setColor(ground.ground());
    g.fill(new Rectangle2D.Double(0, 0, width, height));
    XYChart chart = chart();
    double[] across = ticks(least(picture.across(), true), greatest(picture.across(), true));
    double[] up =
        picture.isOfBars()
            ? new double[0]
            : ticks(least(picture.up(), false), greatest(picture.up(), false));
    // Painted once on nothing, so that the chart knows its places before the grid is drawn.
    BufferedImage nothing = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
    chart.paint(nothing.createGraphics(), width - LEFT - RIGHT, height - TOP - BOTTOM);
    Frame frame = new Frame(chart);
    grid(g, frame, across, up);
    g.translate(LEFT, TOP);
    chart.paint(g, width - LEFT - RIGHT, height - TOP - BOTTOM);
    g.translate(-LEFT, -TOP);
    lines(g, frame);
    axes(g, frame, across, up);
    bars(g, frame);
    limits(g, frame);
    int index = 0;
    for (Picture.Item item : picture.items()) {
      if (isSeries(item)) {
        label(g, frame, item, ground.series(index++));
      } else if (isFilled(item)) {
        label(g, frame, item, ground.ink());
      }
    }
  }

  private void grid(Graphics2D g, Frame frame, double[] across, double[] up) {
    Rectangle2D plot = frame.plot();
    g.setColor(picture.ground().grid());
    g.setStroke(new BasicStroke(1));
    for (double tick : across) {
      double x = frame.x(tick);
      g.draw(new Line2D.Double(x, plot.getMinY(), x, plot.getMaxY()));
    }
    for (double tick : up) {
      double y = frame.y(tick);
      g.draw(new Line2D.Double(plot.getMinX(), y, plot.getMaxX(), y));
    }
  }

  private void axes(Graphics2D g, Frame frame, double[] across, double[] up) {
    Rectangle2D plot = frame.plot();
    g.setColor(picture.ground().ink());
    g.setStroke(new BasicStroke(1.2f));
    g.draw(new Line2D.Double(plot.getMinX(), plot.getMaxY(), plot.getMaxX(), plot.getMaxY()));
    double left = picture.isOfBars() ? frame.x(0) : plot.getMinX();
    g.draw(new Line2D.Double(left, plot.getMinY(), left, plot.getMaxY()));
    g.setFont(TITLE);
    g.drawString(picture.title(), EDGE, 26);
    g.setFont(LABEL);
    if (!picture.isOfBars()) {
      g.drawString(picture.up().title(), EDGE, TOP - 12);
    }
    String below = picture.across().title();
    g.drawString(below, (float) (plot.getMaxX() - wide(below)), height - 12);
    for (double tick : across) {
      String text = number(tick);
      g.drawString(
          text, (float) (frame.x(tick) - wide(text) / 2), (float) (plot.getMaxY() + 6 + tall()));
    }
    for (double tick : up) {
      String text = number(tick);
      g.drawString(
          text,
          (float) (plot.getMinX() - 8 - wide(text)),
          (float) (frame.y(tick) + tall() / 2 - 2));
    }
  }

  private void lines(Graphics2D g, Frame frame) {
    java.awt.Shape whole = g.getClip();
    g.setClip(frame.plot());
    int index = 0;
    for (Picture.Item item : picture.items()) {
      if (item.kind() == Picture.Kind.LINE) {
        g.setColor(picture.ground().series(index));
        g.setStroke(LINES[index % LINES.length]);
        g.draw(outline(frame, item));
      }
      index += isSeries(item) ? 1 : 0;
    }
    g.setClip(whole);
  }

  private static Path2D outline(Frame frame, Picture.Item item) {
    Path2D path = new Path2D.Double();
    path.moveTo(frame.x(item.x()[0]), frame.y(item.y()[0]));
    for (int i = 1; i < item.x().length; i++) {
      path.lineTo(frame.x(item.x()[i]), frame.y(item.y()[i]));
    }
    return path;
  }

  private void bars(Graphics2D g, Frame frame) {
    double row = frame.plot().getHeight() / picture.items().size();
    for (Picture.Item item : picture.items()) {
      if (item.kind() == Picture.Kind.BAR) {
        double middle = frame.plot().getMinY() + (item.y()[0] + 0.5) * row;
        double zero = frame.x(0);
        double end = frame.x(item.x()[0]);
        g.setColor(picture.ground().series(0));
        g.fill(
            new Rectangle2D.Double(
                Math.min(zero, end),
                middle,
                Math.abs(end - zero),
                Math.min(0.4 * row, WIDEST_BAR)));
        g.setColor(picture.ground().ink());
        g.setFont(LABEL);
        double from = item.x()[0] < 0 ? zero - GAP - wide(item.name()) : zero + GAP;
        g.drawString(item.name(), (float) from, (float) (middle - 5));
      }
    }
  }

  /** At most nine round numbers between two. */
  private static double[] ticks(double least, double greatest) {
    double rough = (greatest - least) / 8;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double step = power;
    for (double factor : new double[] {2, 5, 10}) {
      step = step < rough * (1 - 1e-9) ? factor * power : step;
    }
    int first = (int) Math.ceil(least / step - 1e-9);
    int last = (int) Math.floor(greatest / step + 1e-9);
    double[] ticks = new double[last - first + 1];
    for (int i = 0; i < ticks.length; i++) {
      ticks[i] = (first + i) * step;
    }
    return ticks;
  }

  private static String number(double tick) {
    BigDecimal rounded = new BigDecimal(tick).round(new MathContext(8));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static boolean isSeries(Picture.Item item) {
    return item.kind() == Picture.Kind.LINE || item.kind() == Picture.Kind.POINTS;
  }

  private static boolean isFilled(Picture.Item item) {
    return item.kind() == Picture.Kind.BAND || item.kind() == Picture.Kind.AREA;
  }

  private XYChart chart() {
    Ground ground = picture.ground();
    XYChart chart = new XYChartBuilder().width(width).height(height).build();
    XYStyler styler = chart.getStyler();
    Color clear = new Color(0, 0, 0, 0);
    styler.setLocale(Locale.ROOT);
    styler.setLegendVisible(false);
    styler.setChartTitleVisible(false);
    styler.setAxisTitlesVisible(false);
    styler.setAxisTicksVisible(false);
    styler.setPlotGridLinesVisible(false);
    styler.setPlotBorderVisible(false);
    styler.setChartPadding(0);
    styler.setPlotMargin(0);
    styler.setPlotContentSize(1);
    styler.setChartBackgroundColor(clear);
    styler.setPlotBackgroundColor(clear);
    styler.setMarkerSize(8);
    styler.setXAxisMin(least(picture.across(), true));
    styler.setXAxisMax(greatest(picture.across(), true));
    styler.setYAxisMin(least(picture.up(), false));
    styler.setYAxisMax(greatest(picture.up(), false));
    int index = 0;
    int bands = 0;
    for (Picture.Item item : picture.items()) {
      if (isFilled(item)) {
        XYSeries band = chart.addSeries(item.name() + " " + bands++, item.x(), item.y());
        band.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.PolygonArea);
        band.setFillColor(ground.band());
        band.setLineColor(ground.band());
        band.setMarker(SeriesMarkers.NONE);
      }
    }
    for (Picture.Item item : picture.items()) {
      if (item.kind() == Picture.Kind.BAR) {
        XYSeries unseen = chart.addSeries("bar " + item.y()[0], item.x(), item.y());
        unseen.setMarker(SeriesMarkers.NONE);
        unseen.setLineStyle(SeriesLines.NONE);
      }
      if (isSeries(item)) {
        XYSeries series = chart.addSeries(item.name(), item.x(), item.y());
        series.setMarkerColor(ground.series(index));
        // The chart begins its dashes again at each point, so that lines are drawn by lines().
        series.setLineStyle(SeriesLines.NONE);
        series.setMarker(
            item.kind() == Picture.Kind.LINE
                ? SeriesMarkers.NONE
                : Shape.ALL[index % Shape.ALL.length]);
        index++;
      }
    }
    return chart;
  }

  private double least(Picture.Axis axis, boolean across) {
    return Double.isNaN(axis.least()) ? extreme(axis, across, -1) : axis.least();
  }

  private double greatest(Picture.Axis axis, boolean across) {
    return Double.isNaN(axis.greatest()) ? extreme(axis, across, 1) : axis.greatest();
  }

  /** The least or the greatest of what is drawn, with some room. */
  private double extreme(Picture.Axis axis, boolean across, int sign) {
    if (picture.isOfBars() && !across) {
      return sign < 0 ? -0.5 : picture.items().size() - 0.5;
    }
    double least = Double.isNaN(axis.least()) ? Double.POSITIVE_INFINITY : axis.least();
    double greatest = Double.isNaN(axis.greatest()) ? Double.NEGATIVE_INFINITY : axis.greatest();
    for (Picture.Item item : picture.items()) {
      if (item.kind() != (across ? Picture.Kind.LIMIT_ACROSS : Picture.Kind.LIMIT_UP)) {
        for (double value : across ? item.x() : item.y()) {
          least = Math.min(least, value);
          greatest = Math.max(greatest, value);
        }
      }
    }
    if (across ? picture.isOfBars() : picture.readsHeights()) {
      least = Math.min(least, 0);
      greatest = Math.max(greatest, 0);
      if (sign < 0 ? least == 0 : greatest == 0) {
        return 0;
      }
    }
    double room = greatest > least ? ROOM * (greatest - least) : 1;
    return sign < 0 ? least - room : greatest + room;
  }

  /** Where the plot lies on the sheet. */
  private final class Frame {

    private final XYChart chart;
    private final Rectangle2D plot;

    Frame(XYChart chart) {
      this.chart = chart;
      double left = x(least(picture.across(), true));
      double top = y(greatest(picture.up(), false));
      plot =
          new Rectangle2D.Double(
              left,
              top,
              x(greatest(picture.across(), true)) - left,
              y(least(picture.up(), false)) - top);
    }

    double x(double value) {
      return LEFT + chart.getScreenXFromChart(value);
    }

    double y(double value) {
      return TOP + chart.getScreenYFromChart(value);
    }

    Rectangle2D plot() {
      return plot;
    }
  }

  private void limits(Graphics2D g, Frame frame) {
    g.setColor(picture.ground().ink());
    for (Picture.Item item : picture.items()) {
      Rectangle2D plot = frame.plot();
      if (item.kind() == Picture.Kind.LIMIT_ACROSS) {
        double y = frame.y(item.y()[0]);
        g.setStroke(LIMIT);
        g.draw(new Line2D.Double(plot.getMinX(), y, plot.getMaxX(), y));
        List<Point2D> places = new ArrayList<>();
        for (double share : new double[] {1, 0, 0.75, 0.5, 0.25}) {
          double from = plot.getMinX() + GAP + share * (plot.getWidth() - GAP - wide(item.name()));
          places.add(new Point2D.Double(from, y - GAP));
          places.add(new Point2D.Double(from, y + GAP + tall()));
        }
        place(g, frame, item, picture.ground().ink(), places);
      } else if (item.kind() == Picture.Kind.LIMIT_UP) {
        double x = frame.x(item.x()[0]);
        g.setStroke(LIMIT);
        g.draw(new Line2D.Double(x, plot.getMinY(), x, plot.getMaxY()));
        List<Point2D> places = new ArrayList<>();
        for (double share : new double[] {0, 1, 0.25, 0.5, 0.75}) {
          double base = plot.getMinY() + tall() + share * (plot.getHeight() - tall() - GAP);
          places.add(new Point2D.Double(x + GAP, base));
          places.add(new Point2D.Double(x - GAP - wide(item.name()), base));
        }
        place(g, frame, item, picture.ground().ink(), places);
      }
    }
  }

  private static double wide(String text) {
    return LABEL.getStringBounds(text, MEASURE).getWidth();
  }

  private static double tall() {
    return LABEL.getSize2D();
  }

  /** Puts the name of a line or a band where it hides least. */
  private void label(Graphics2D g, Frame frame, Picture.Item item, Color color) {
    List<Point2D> places = new ArrayList<>();
    int n = item.x().length;
    double wide = wide(item.name());
    if (item.kind() == Picture.Kind.AREA) {
      for (int i : new int[] {n / 4, n / 8, 3 * n / 8}) {
        double middle = (frame.y(item.y()[i]) + frame.y(0)) / 2;
        places.add(new Point2D.Double(frame.x(item.x()[i]) - wide / 2, middle + tall() / 2 - 2));
      }
    }
    if (isFilled(item)) {
      for (int i = 1; i < n / 2; i += Math.max(1, n / 40)) {
        double x = frame.x(item.x()[i]);
        double lower = frame.y(item.y()[i]);
        double upper = frame.y(item.y()[n - 1 - i]);
        places.add(new Point2D.Double(x - wide / 2, upper - GAP));
        places.add(new Point2D.Double(x - wide / 2, lower + GAP + tall()));
      }
    }
    for (int eighth : new int[] {8, 0, 4, 2, 6, 7, 1, 3, 5}) {
      int i = Math.min(n - 1, eighth * n / 8);
      double x = frame.x(item.x()[i]);
      double y = frame.y(item.y()[i]);
      for (double far : new double[] {1.4, 3, 5}) {
        places.add(new Point2D.Double(x + far * GAP, y + tall() / 2 - 2));
        places.add(new Point2D.Double(x - far * GAP - wide, y + tall() / 2 - 2));
        places.add(new Point2D.Double(x - wide / 2, y - far * GAP));
        places.add(new Point2D.Double(x - wide / 2, y + far * GAP + tall()));
        places.add(new Point2D.Double(x + far * GAP, y - far * GAP));
        places.add(new Point2D.Double(x - far * GAP - wide, y + far * GAP + tall()));
        places.add(new Point2D.Double(x + far * GAP, y + far * GAP + tall()));
        places.add(new Point2D.Double(x - far * GAP - wide, y - far * GAP));
      }
    }
    place(g, frame, item, color, places);
  }

  private void place(
      Graphics2D g, Frame frame, Picture.Item item, Color color, List<? extends Point2D> places) {
    Point2D best = places.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < places.size(); i++) {
      double cost = cost(frame, item, box(places.get(i), item.name())) + 0.02 * i;
      if (cost < least) {
        least = cost;
        best = places.get(i);
      }
    }
    taken.add(box(best, item.name()));
    g.setColor(color);
    g.setFont(LABEL);
    g.drawString(item.name(), (float) best.getX(), (float) best.getY());
  }

  private static Rectangle2D box(Point2D baseline, String text) {
    Rectangle2D bounds = LABEL.getStringBounds(text, MEASURE);
    return new Rectangle2D.Double(
        baseline.getX(), baseline.getY() + bounds.getY(), bounds.getWidth(), bounds.getHeight());
  }

  /** How much a text would hide: other texts most, then readings and lines. */
  private double cost(Frame frame, Picture.Item own, Rectangle2D box) {
    Rectangle2D plot = frame.plot();
    boolean inside =
        box.getMinX() >= plot.getMinX()
            && box.getMaxX() <= width - EDGE
            && box.getMinY() >= plot.getMinY() - 2
            && box.getMaxY() <= plot.getMaxY();
    double cost = inside ? 0 : 1e6;
    for (Rectangle2D other : taken) {
      cost += other.intersects(box) ? 1e5 : 0;
    }
    Rectangle2D wide =
        new Rectangle2D.Double(
            box.getX() - 4, box.getY() - 3, box.getWidth() + 8, box.getHeight() + 6);
    for (Picture.Item item : picture.items()) {
      double[] x = item.x();
      double[] y = item.y();
      switch (item.kind()) {
        case LIMIT_ACROSS ->
            cost +=
                !item.equals(own)
                        && frame.y(y[0]) > wide.getMinY()
                        && frame.y(y[0]) < wide.getMaxY()
                    ? 30
                    : 0;
        case LIMIT_UP ->
            cost +=
                !item.equals(own)
                        && frame.x(x[0]) > wide.getMinX()
                        && frame.x(x[0]) < wide.getMaxX()
                    ? 30
                    : 0;
        case POINTS -> {
          for (int i = 0; i < x.length; i++) {
            cost += wide.contains(frame.x(x[i]), frame.y(y[i])) ? 20 : 0;
          }
        }
        default -> {
          // An outline closes: before its first point lies its last.
          boolean crossed = false;
          for (int i = isFilled(item) ? 0 : 1; i < x.length; i++) {
            int before = i == 0 ? x.length - 1 : i - 1;
            crossed |=
                wide.intersectsLine(
                    frame.x(x[before]), frame.y(y[before]), frame.x(x[i]), frame.y(y[i]));
          }
          cost += crossed ? 25 : 0;
        }
      }
    }
    boolean isOfData = isSeries(own) || isFilled(own);
    return cost + (isOfData && isNearerToAnother(frame, own, box) ? NEARER_TO_ANOTHER : 0);
  }

  /** Whether a name there could be taken for that of another line. */
  private boolean isNearerToAnother(Frame frame, Picture.Item own, Rectangle2D box) {
    if (isFilled(own) && outline(frame, own).intersects(box)) {
      return false;
    }
    double toOwn = distance(frame, own, box);
    return picture.items().stream()
        .filter(item -> isSeries(item) && !item.equals(own))
        .anyMatch(item -> distance(frame, item, box) < toOwn + GAP);
  }

  private static double distance(Frame frame, Picture.Item item, Rectangle2D box) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < item.x().length; i++) {
      double x = frame.x(item.x()[i]);
      double y = frame.y(item.y()[i]);
      double across = Math.max(0, Math.max(box.getMinX() - x, x - box.getMaxX()));
      double up = Math.max(0, Math.max(box.getMinY() - y, y - box.getMaxY()));
      least = Math.min(least, Math.hypot(across, up));
    }
    return least;
  }
}
