package tabor.emit.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.emit.engrave.Mark;
import tabor.lists.Lists;

/**
 * A drawing as an SVG element of the page, as small as it goes: shapes that occur several times are
 * named and used, straight ones share a path, single letters on one line share a text element, and
 * no attribute stands there that neither script nor style sheet reads. What it says in words stands
 * beside it on the page; the element itself is hidden from screen readers.
 */
final class DrawingMarkup {
  private final SymbolTable symbols;
  private final StringBuilder out = new StringBuilder();

  private DrawingMarkup(SymbolTable symbols) {
    this.symbols = symbols;
  }

  /**
   * One {@code <svg>} element; {@code symbols} has counted and named the shapes before. Safe for
   * several threads.
   */
  static String of(Outlines drawing, SymbolTable symbols) {
    DrawingMarkup writer = new DrawingMarkup(symbols);
    String width = LocalPath.tenths(drawing.width());
    String height = LocalPath.tenths(drawing.height());
    writer.out.append("<svg viewBox=\"0 0 ").append(width).append(' ').append(height);
    writer.out.append("\" width=\"").append(width).append("\" height=\"").append(height);
    writer.out.append("\" aria-hidden=\"true\">");
    writer.sheet(drawing, false);
    if (hasChanged(drawing)) {
      writer.out.append("<g class=\"changed\">");
      writer.sheet(drawing, true);
      writer.out.append("</g>");
    }
    return writer.out.append("</svg>\n").toString();
  }

  private static boolean hasChanged(Outlines drawing) {
    return Lists.any(drawing.inks(), Outlines.Inked::changed)
        || Lists.any(drawing.words(), Outlines.Lettered::changed);
  }

  /** Everything of one colour. */
  private void sheet(Outlines drawing, boolean changed) {
    Map<Double, StringBuilder> straight = new LinkedHashMap<>();
    for (Outlines.Inked ink : drawing.inks()) {
      if (ink.changed() != changed) {
        continue;
      }
      LocalPath path = ink.path();
      String symbol = path.isSimple() ? "" : symbols.name(path.data());
      if (!symbol.isEmpty()) {
        out.append("<use href=\"#").append(symbol).append("\" x=\"");
        out.append(LocalPath.tenths(path.x())).append("\" y=\"").append(LocalPath.tenths(path.y()));
        out.append('"').append(strength(ink.strength())).append("/>");
      } else if (path.isSimple()) {
        straight.computeIfAbsent(ink.strength(), s -> new StringBuilder()).append(placed(path));
      } else {
        path(placed(path), ink.strength());
      }
    }
    straight.forEach((strength, data) -> path(data.toString(), strength));
    words(
        Lists.map(
            Lists.filter(drawing.words(), one -> one.changed() == changed),
            Outlines.Lettered::words));
  }

  /** Absolute from its first point on. */
  private static String placed(LocalPath path) {
    String rest = path.data().substring("m0 0".length());
    return "M" + LocalPath.tenths(path.x()) + " " + LocalPath.tenths(path.y()) + rest;
  }

  private void path(String data, double strength) {
    out.append("<path d=\"").append(data).append('"').append(strength(strength)).append("/>");
  }

  private static String strength(double strength) {
    return strength < 1
        ? " opacity=\"" + LocalPath.hundredths(Math.round(strength * 100)) + '"'
        : "";
  }

  private void words(List<Mark.Words> all) {
    record Style(double size, Mark.Align align) {}
    Map<Style, List<Mark.Words>> styles = new LinkedHashMap<>();
    for (Mark.Words each : all) {
      styles
          .computeIfAbsent(new Style(each.size(), each.align()), s -> new ArrayList<>())
          .add(each);
    }
    styles.forEach(
        (style, words) -> {
          out.append("<g font-size=\"").append(LocalPath.tenths(style.size * LocalPath.UNIT));
          out.append('"').append(anchor(style.align)).append('>');
          Map<String, List<Mark.Words>> lines = new LinkedHashMap<>();
          for (Mark.Words each : words) {
            if (isSingle(each.text())) {
              lines.computeIfAbsent(y(each), y -> new ArrayList<>()).add(each);
            } else {
              text(each);
            }
          }
          lines.forEach(this::letters);
          out.append("</g>");
        });
  }

  private static String anchor(Mark.Align align) {
    return switch (align) {
      case LEFT -> "";
      case MIDDLE -> " text-anchor=\"middle\"";
      case RIGHT -> " text-anchor=\"end\"";
    };
  }

  /** True for one letter, digit or sign that stands for itself. */
  private static boolean isSingle(String text) {
    return text.length() == 1 && text.charAt(0) > ' ' && text.charAt(0) < 0x7f;
  }

  private static String y(Mark.Words words) {
    return LocalPath.tenths(words.y() * LocalPath.UNIT);
  }

  /** Letters of one line in one element, each at its own place. */
  private void letters(String y, List<Mark.Words> letters) {
    StringBuilder text = new StringBuilder();
    out.append("<text y=\"").append(y).append("\" x=\"");
    for (Mark.Words each : letters) {
      out.append(text.isEmpty() ? "" : " ").append(LocalPath.tenths(each.x() * LocalPath.UNIT));
      text.append(each.text());
    }
    out.append("\">").append(Markup.text(text.toString())).append("</text>");
  }

  /** A longer run keeps its measured width, so that no other face pushes it into its neighbours. */
  private void text(Mark.Words words) {
    out.append("<text x=\"").append(LocalPath.tenths(words.x() * LocalPath.UNIT));
    out.append("\" y=\"").append(y(words));
    if (words.width() > 0) {
      out.append("\" textLength=\"").append(LocalPath.tenths(words.width() * LocalPath.UNIT));
      out.append("\" lengthAdjust=\"spacingAndGlyphs");
    }
    out.append("\">").append(Markup.text(words.text())).append("</text>");
  }
}
