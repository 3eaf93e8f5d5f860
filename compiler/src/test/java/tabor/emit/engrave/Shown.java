package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Takes a drawing apart: every shape and text with the groups that it stands in. */
public final class Shown implements Mark.Cases<Boolean> {
  /**
   * A shape or a text.
   *
   * @param kind the first class of the group that it stands in
   * @param group a number for that group
   * @param outline its shape; null for a text
   * @param box its box
   * @param text what it says; empty for a shape
   * @param strength of the ink
   * @param data the facts of its group
   */
  public record Piece(
      String kind,
      int group,
      @org.jspecify.annotations.Nullable Contour outline,
      Box box,
      String text,
      double strength,
      Map<String, String> data) {
    @Override
    public String toString() {
      return kind + text + data + box;
    }
  }

  private final List<Piece> pieces = new ArrayList<>();
  private String kind = "";
  private Map<String, String> data = Map.of();
  private int group;
  private int groups;

  /** True if two boxes share more than {@code touch} of room both ways. */
  public static boolean overlap(Box one, Box other, double touch) {
    return Math.min(one.right(), other.right()) - Math.max(one.left(), other.left()) > touch
        && Math.min(one.bottom(), other.bottom()) - Math.max(one.top(), other.top()) > touch;
  }

  /** All pieces of a drawing, in the order of drawing. */
  public static List<Piece> of(List<Mark> marks) {
    Shown shown = new Shown();
    marks.forEach(mark -> mark.match(shown));
    return shown.pieces;
  }

  @Override
  public Boolean ink(Mark.Ink ink) {
    return pieces.add(
        new Piece(kind, group, ink.outline(), ink.outline().bounds(), "", ink.strength(), data));
  }

  @Override
  public Boolean glyph(Mark.Glyph glyph) {
    return pieces.add(new Piece(kind, group, glyph.contour(), glyph.box(), "", 1, data));
  }

  @Override
  public Boolean line(Mark.Line line) {
    Contour shape = Contour.stroke(line.x1(), line.y1(), line.x2(), line.y2(), line.thickness());
    return pieces.add(new Piece(kind, group, shape, line.box(), "", 1, data));
  }

  @Override
  public Boolean words(Mark.Words words) {
    return pieces.add(new Piece(kind, group, null, words.box(), words.text(), 1, data));
  }

  @Override
  public Boolean group(Mark.Group inner) {
    String outerKind = kind;
    Map<String, String> outerData = data;
    int outerGroup = group;
    kind = inner.classes().get(0);
    data = inner.data();
    group = ++groups;
    inner.marks().forEach(mark -> mark.match(this));
    kind = outerKind;
    data = outerData;
    group = outerGroup;
    return true;
  }
}
