package tabor.emit.pdf;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** Reads the filled and stroked paths of a page: the coordinates of each in order. */
final class DrawnPaths extends PDFGraphicsStreamEngine {
  private final List<List<Double>> paths = new ArrayList<>();
  private List<Double> path = new ArrayList<>();
  private int strokes;
  private Point2D at = new Point2D.Double();

  private DrawnPaths(PDPage page) {
    super(page);
  }

  static DrawnPaths of(PDPage page) throws IOException {
    DrawnPaths reader = new DrawnPaths(page);
    reader.processPage(page);
    return reader;
  }

  /** The coordinates of each path. */
  List<List<Double>> paths() {
    return paths;
  }

  /** How many of them are lines and no shapes. */
  int strokes() {
    return strokes;
  }

  private void add(double x, double y) {
    path.add(x);
    path.add(y);
    at = new Point2D.Double(x, y);
  }

  @Override
  public void moveTo(float x, float y) {
    add(x, y);
  }

  @Override
  public void lineTo(float x, float y) {
    add(x, y);
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    add(x1, y1);
    add(x2, y2);
    add(x3, y3);
  }

  @Override
  public Point2D getCurrentPoint() {
    return at;
  }

  @Override
  public void closePath() {}

  @Override
  public void endPath() {
    path = new ArrayList<>();
  }

  @Override
  public void fillPath(int windingRule) {
    paths.add(path);
    path = new ArrayList<>();
  }

  @Override
  public void strokePath() {
    strokes++;
    fillPath(0);
  }

  @Override
  public void fillAndStrokePath(int windingRule) {
    throw new AssertionError("nothing is filled and stroked");
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    throw new AssertionError("no rectangles");
  }

  @Override
  public void drawImage(PDImage image) {
    throw new AssertionError("no images");
  }

  @Override
  public void clip(int windingRule) {}

  @Override
  public void shadingFill(COSName shadingName) {}
}
