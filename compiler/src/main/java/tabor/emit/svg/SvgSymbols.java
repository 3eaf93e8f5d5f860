package tabor.emit.svg;

import java.util.Map;
import java.util.TreeMap;
import tabor.emit.engrave.Sign;

/**
 * The signs of all drawings of one page, each written once. Drawings refer to them by {@code use};
 * the definitions stand anywhere in the same page.
 */
public final class SvgSymbols {
  private record Sized(Sign sign, double scale) {}

  private final Map<String, Sized> used = new TreeMap<>();

  /** The name of a sign at a size, noted as used. */
  String id(Sign sign, double scale) {
    long percent = Math.round(scale * 100);
    String id = percent == 100 ? "s-" + sign.name() : "s-" + sign.name() + "-" + percent;
    used.putIfAbsent(id, new Sized(sign, percent / 100.0));
    return id;
  }

  /** An element without size that defines every sign used so far; empty if none was. */
  public String definitions() {
    if (used.isEmpty()) {
      return "";
    }
    StringBuilder out = new StringBuilder();
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"0\" height=\"0\"");
    out.append(" aria-hidden=\"true\" class=\"signs\"><defs>\n");
    used.forEach(
        (id, sized) -> {
          out.append("<path id=\"").append(id).append("\" d=\"");
          sized.sign().at(0, 0, sized.scale()).draw(new SvgWriter.PathData(out));
          out.append("\"/>\n");
        });
    return out.append("</defs></svg>\n").toString();
  }
}
