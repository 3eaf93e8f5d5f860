package tabor.emit.practice;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Fastest;
import tabor.body.Fastest.Bound;
import tabor.groove.Caution;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Stroke;
import tabor.kit.Limits;
import tabor.rhythm.CountNames;

/** How fast sections could go before a limb lacks time, and what that means. */
public final class FastestText {
  private static final int WIDTH = 78;

  private FastestText() {}

  /**
   * The limits of the grooves and steps given, in order; lines end with LF.
   *
   * @param lesson whose they are: they are numbered as in the lesson
   */
  public static String of(Lesson lesson, List<Groove> grooves) {
    List<String> lines = new ArrayList<>();
    List<String> names = lesson.grooves().stream().map(Groove::name).toList();
    for (Groove groove : grooves) {
      boolean titled = !groove.caption().equals(groove.name());
      lines.add(
          (names.indexOf(groove.name()) + 1)
              + ". "
              + TableText.clean(groove.caption())
              + (titled ? " (" + groove.name() + ")" : "")
              + ", "
              + groove.setting().tempo().words());
      lines.add("   " + limit(groove));
    }
    lines.add("");
    lines.addAll(meaning(grooves));
    return String.join("\n", lines) + "\n";
  }

  /** {@code top tempo: comfortable 104, extreme 132, set by the right hand from 2e to 2&}. */
  static String limit(Groove groove) {
    Fastest fastest = Fastest.of(groove);
    Bound comfortable = fastest.comfortable();
    Bound extreme = fastest.extreme();
    if (comfortable == null || extreme == null) {
      return "no top tempo: nothing is played";
    }
    String first = setBy(groove, comfortable);
    String second = setBy(groove, extreme);
    return first.equals(second)
        ? "top tempo: comfortable " + comfortable.tempo() + ", extreme " + extreme.tempo() + first
        : "top tempo: comfortable "
            + comfortable.tempo()
            + first
            + "; extreme "
            + extreme.tempo()
            + second;
  }

  private static String setBy(Groove groove, Bound bound) {
    String from = place(groove, bound.from(), null);
    String to = place(groove, bound.to(), bound.from());
    String way =
        bound.reason() == Fastest.Reason.WAY
            ? " (" + bound.from().surface().words() + " to " + bound.to().surface().words() + ")"
            : "";
    return ", set by the "
        + bound.limb().words()
        + (bound.from().equals(bound.to()) ? " at " + from : " from " + from + " to " + to)
        + way;
  }

  private static String place(Groove groove, Stroke stroke, @Nullable Stroke before) {
    boolean sameBar = before != null && before.bar() == stroke.bar();
    String count = CountNames.of(stroke.slot(), groove.meter(stroke.bar())).toString();
    return sameBar || (groove.bars() == 1 && stroke.bar() == 1)
        ? count
        : count + " in bar " + stroke.bar();
  }

  private static List<String> meaning(List<Groove> grooves) {
    List<String> lines = new ArrayList<>();
    lines.add("A top tempo is the tempo at which one limb has no time left for what is written.");
    List<Limits> limits =
        grooves.stream().map(groove -> groove.setting().kit().limitsInForce()).distinct().toList();
    if (limits.size() == 1) {
      Limits used = limits.get(0);
      lines.add(
          "Worked out with "
              + range(used.hands())
              + " strokes per second of a hand, "
              + range(used.feet())
              + " of a foot,");
      lines.add(
          range(used.doubles())
              + " within a double, and a hand that moves "
              + range(used.reach())
              + " cm per second");
      lines.add("(comfortable to extreme; general figures, nobody's own).");
    } else {
      lines.add("Each section is worked out with the limits of its own kit.");
    }
    lines.add("A student's own top tempo is lower: begin slowly.");
    lines.addAll(TableText.wrap(Caution.WORDS, WIDTH));
    return lines;
  }

  private static String range(Limits.Range range) {
    return range.comfortable().decimal() + " to " + range.extreme().decimal();
  }
}
