package tabor.compare;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.notation.Speller;

/**
 * A section as it was and as it is, one staff above the other, system by system. What is left out
 * or struck otherwise is hollow in the upper staff; what is new or struck otherwise has a tint in
 * the lower one.
 */
record ChangeDrawing(TextMetrics font) {
  private static final double WIDTH = Look.FULL.width();
  private static final double LABEL = 1.5;

  /** Between a label and its staff, and between two staves, in staff spaces. */
  private static final double GAP = 1;

  /** False for a section of which no stroke and no bar changed. */
  static boolean isDrawn(SectionChange change) {
    boolean both = change.before() instanceof Groove && change.after() instanceof Groove;
    return !both || !change.strokes().isEmpty() || !change.bars().isEmpty();
  }

  /** The pairs of staves of a section, from top to bottom; none where no strokes are known. */
  List<Drawing> systems(SectionChange change) {
    if (!isDrawn(change)) {
      return List.of();
    }
    Groove before = change.before() instanceof Groove groove ? groove : null;
    Groove after = change.after() instanceof Groove groove ? groove : null;
    boolean both = before != null && after != null;
    List<Stroke> gone = change.strokes().stream().map(StrokeChange::before).toList();
    List<Stroke> came = change.strokes().stream().map(StrokeChange::after).toList();
    List<Engraving.StaffSystem> upper =
        before == null ? List.of() : engrave(before, both ? gone : List.of());
    List<Engraving.StaffSystem> lower =
        after == null ? List.of() : engrave(after, both ? came : List.of());
    List<Drawing> pairs = new ArrayList<>();
    for (int i = 0; i < Math.max(upper.size(), lower.size()); i++) {
      pairs.add(
          pair(
              change.name(),
              i < upper.size() ? upper.get(i).drawing() : null,
              i < lower.size() ? lower.get(i).drawing() : null));
    }
    return List.copyOf(pairs);
  }

  private List<Engraving.StaffSystem> engrave(Groove groove, Collection<@Nullable Stroke> written) {
    Look look = new Look(WIDTH, true, true);
    return Engraver.engrave(Speller.spell(groove, shown(groove, written)), look, font).systems();
  }

  /** The strokes of the finished section that these are: mirrored, and on what stands in. */
  private static Set<Stroke> shown(Groove groove, Collection<@Nullable Stroke> written) {
    Set<List<Object>> keys = new HashSet<>();
    boolean mirror = groove.setting().kit().leftHanded();
    for (Stroke stroke : written) {
      if (stroke != null) {
        Limb limb = mirror ? stroke.limb().other() : stroke.limb();
        Surface struck =
            Objects.requireNonNullElse(
                groove.setting().kit().struck(stroke.surface()), stroke.surface());
        keys.add(List.of(stroke.bar(), stroke.slot(), limb, struck.name()));
      }
    }
    Set<Stroke> shown = new HashSet<>();
    for (Stroke s : groove.strokes()) {
      if (keys.contains(List.of(s.bar(), s.slot(), s.limb(), s.surface().name()))) {
        shown.add(s);
      }
    }
    return shown;
  }

  private Drawing pair(String title, @Nullable Drawing upper, @Nullable Drawing lower) {
    List<Mark> marks = new ArrayList<>();
    double y = 0;
    double width = 0;
    List<String> words = new ArrayList<>();
    for (boolean old : new boolean[] {true, false}) {
      Drawing drawing = old ? upper : lower;
      if (drawing == null) {
        continue;
      }
      y += y > 0 ? GAP : 0;
      String label = old ? "before" : "now";
      y += LABEL;
      marks.add(words(label, 0, y, LABEL, Face.ITALIC));
      y += GAP / 2;
      List<Mark> staff = old ? Hollow.all(drawing.marks()) : drawing.marks();
      marks.add(Mark.Group.of(label, Mark.moved(staff, 0, y, 1)));
      y += drawing.height();
      width = Math.max(width, drawing.width());
      words.add(label + ": " + drawing.words());
    }
    return new Drawing(width, y, title, String.join(" ", words), marks);
  }

  /** A line of text. */
  Mark.Words words(String text, double x, double y, double size, Face face) {
    String shown = font.showable(text);
    return new Mark.Words(shown, x, y, size, Mark.Align.LEFT, font.width(shown, size, face), face);
  }
}
