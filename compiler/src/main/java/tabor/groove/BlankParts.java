package tabor.groove;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.lists.Lists;

/** A section without the parts that the student is to write in. */
public final class BlankParts {
  private BlankParts() {}

  /** The section as it is printed, and what it comes from; it sounds as it was. */
  public static Groove of(Groove groove, List<Part> parts) {
    if (parts.isEmpty()) {
      return groove;
    }
    List<Stroke> written = groove.written();
    Map<Integer, List<Stroke>> blank = new HashMap<>();
    for (Stroke stroke : written) {
      if (Lists.any(parts, part -> part.test(stroke))) {
        blank.computeIfAbsent(stroke.bar(), bar -> new java.util.ArrayList<>()).add(stroke);
      }
    }
    boolean mirrored = groove.setting().kit().leftHanded();
    Groove base = groove.base();
    return groove
        .from(base == null ? null : of(base, parts))
        .playing(
            Lists.filter(
                groove.strokes(),
                stroke ->
                    !Lists.any(
                        blank.getOrDefault(stroke.bar(), List.of()),
                        one -> isThis(one, stroke, mirrored))),
            Lists.filter(written, stroke -> !Lists.any(parts, part -> part.test(stroke))),
            groove.repeats());
  }

  /** A variation with what its sheet says of the page, but for what is said once for all. */
  public static Groove on(PageNotes sheet, Groove variation) {
    return variation.on(
        new PageNotes(
            sheet.wishes(),
            false,
            List.of(),
            List.of(),
            sheet.blankSticking(),
            sheet.blankParts(),
            0,
            List.of()));
  }

  /** True if a stroke is struck for one as written, whatever stands in for it on this kit. */
  private static boolean isThis(Stroke written, Stroke struck, boolean mirrored) {
    return written.spot().equals(struck.spot())
        && (mirrored ? written.limb().other() : written.limb()) == struck.limb();
  }
}
