package org.brewchem.pictures;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import org.knowm.xchart.style.markers.Marker;

/** A mark in outline, so that one that covers another leaves it to be seen. */
final class Shape extends Marker {

  private static final BasicStroke OUTLINE = new BasicStroke(1.6f);
  private static final int ROUND = 24;

  /** Marks in the order of the runs: a ring, a cross, a square, a plus, a triangle. */
  static final Shape[] ALL = {
    corners(ROUND, 1.25, 0),
    strokes(0.75, Math.PI / 4),
    corners(4, 1.6, Math.PI / 4),
    strokes(0.9, 0),
    corners(3, 1.5, -Math.PI / 2)
  };

  private final double[] x;
  private final double[] y;
  private final boolean closed;

  private Shape(double[] x, double[] y, boolean closed) {
    this.x = x;
    this.y = y;
    this.closed = closed;
  }

  private static Shape corners(int count, double size, double turned) {
    double[] x = new double[count];
    double[] y = new double[count];
    for (int i = 0; i < count; i++) {
      x[i] = size * Math.cos(turned + 2 * Math.PI * i / count);
      y[i] = size * Math.sin(turned + 2 * Math.PI * i / count);
    }
    return new Shape(x, y, true);
  }

  private static Shape strokes(double size, double turned) {
    double c = size * Math.cos(turned);
    double s = size * Math.sin(turned);
    return new Shape(new double[] {-c, c, s, -s}, new double[] {-s, s, -c, c}, false);
  }

  @Override
  public void paint(Graphics2D g, double across, double down, int size) {
    g.setStroke(OUTLINE);
    double half = size / 2.0;
    Path2D path = new Path2D.Double();
    for (int i = 0; i < x.length; i++) {
      double atX = across + half * x[i];
      double atY = down + half * y[i];
      if (i == 0 || (!closed && i == 2)) {
        path.moveTo(atX, atY);
      } else {
        path.lineTo(atX, atY);
      }
    }
    if (closed) {
      path.closePath();
    }
    g.draw(path);
  }
}
