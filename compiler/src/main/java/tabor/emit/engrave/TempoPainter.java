package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.lists.Lists;
import tabor.notation.Written;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.words.Words;

/** Draws what stands over the first system: the title, the tempo and the swing mark. */
public final class TempoPainter {
  private static final double NOTE_SCALE = 0.7;

  private TempoPainter() {}

  /** Room between two lines of a tempo mark and of a title, as a part of the size. */
  private static final double LEADING = 1.25;

  /**
   * The tempo and swing marks on the free row above the system.
   *
   * @param straight straight is said too
   * @param width of a line at most, in staff spaces
   */
  static void paint(Canvas canvas, Groove groove, boolean straight, double width) {
    Tempo tempo = groove.setting().tempo();
    Feel feel = groove.setting().feel();
    Words said = Words.of(groove.setting().wording().language());
    String words = straight || !feel.isStraight() ? said.feel(feel) : "";
    double base = -(canvas.above.reach(0, width) + 0.9);
    List<Mark> marks = mark(tempo, words, said, canvas.font, 0, base);
    if (right(marks) > width && !words.isEmpty()) {
      // The swing has a line of its own under the tempo.
      marks = new ArrayList<>();
      List<String> lines =
          FilledText.fill(words, Rule.TEMPO_SIZE, width, Face.REGULAR, canvas.font);
      double y = base - (lines.size() - 1) * Rule.TEMPO_SIZE * LEADING;
      marks.addAll(mark(tempo, "", said, canvas.font, 0, y - Rule.TEMPO_SIZE * LEADING - 0.2));
      for (String line : lines) {
        marks.add(canvas.words(line, 0, y, Rule.TEMPO_SIZE, Mark.Align.LEFT));
        y += Rule.TEMPO_SIZE * LEADING;
      }
    }
    for (Mark mark : marks) {
      canvas.take(mark.box());
    }
    canvas.marks.add(Mark.Group.of("tempo", marks));
  }

  private static double right(List<Mark> marks) {
    return Lists.largest(marks, mark -> mark.box().right());
  }

  /**
   * The section's title above all, in as many lines as it needs.
   *
   * @param width of a line at most, in staff spaces
   */
  static void heading(Canvas canvas, String title, double width) {
    double size = Rule.HEADING_SIZE;
    List<String> lines = FilledText.fill(title, size, width, Face.BOLD, canvas.font);
    double y = -(canvas.above.most() + 1.1) - (lines.size() - 1) * size * LEADING;
    List<Mark> marks = new ArrayList<>();
    for (String line : lines) {
      marks.add(canvas.words(line, 0, y, size, Mark.Align.LEFT, Face.BOLD));
      y += size * LEADING;
    }
    canvas.marks.add(Mark.Group.of("heading", marks));
  }

  /**
   * A tempo, and the swing where there is one: a small note, {@code = 92}, {@code swing eighths
   * 62%}.
   *
   * @param said the language
   * @param x its left edge
   * @param base the base line of its text
   */
  public static List<Mark> mark(
      Tempo tempo, Feel feel, Words said, TextMetrics font, double x, double base) {
    return mark(tempo, feel.isStraight() ? "" : said.feel(feel), said, font, x, base);
  }

  private static List<Mark> mark(
      Tempo tempo, String feel, Words said, TextMetrics font, double x, double base) {
    List<Mark> marks = new ArrayList<>();
    double right = note(tempo.beat(), x, base - 0.35, marks);
    String text = "= " + said.decimal(tempo.perMinute()) + (feel.isEmpty() ? "" : "    " + feel);
    double size = Rule.TEMPO_SIZE;
    marks.add(
        new Mark.Words(text, right + 0.5, base, size, Mark.Align.LEFT, font.width(text, size)));
    return marks;
  }

  /** The beat as a small note; returns its right edge. */
  private static double note(Time beat, double x, double y, List<Mark> marks) {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(2).over(3) : beat;
    Written.Type type = Written.Type.QUARTER;
    for (Written.Type candidate : Written.Type.values()) {
      if (candidate.length().equals(plain)) {
        type = candidate;
      }
    }
    Sign head = Heads.of(tabor.kit.Surface.Head.NORMAL, type);
    marks.add(new Mark.Glyph(head, x, y, NOTE_SCALE));
    double right = x + head.box().width() * NOTE_SCALE;
    if (type.hasStem()) {
      double top = y - 3.1 * NOTE_SCALE;
      double stem = right - Rule.STEM;
      double middle = right - Rule.STEM / 2;
      marks.add(Mark.Line.rule(middle, top, middle, y - 0.1, Rule.STEM));
      if (type.flags() > 0) {
        marks.add(new Mark.Glyph(Heads.flag(type, true), stem, top, NOTE_SCALE * 0.85));
        right += 0.55;
      }
    }
    if (dotted) {
      Sign dot = Sign.of("augmentationDot");
      marks.add(new Mark.Glyph(dot, right + 0.25, y, NOTE_SCALE));
      right += 0.25 + dot.box().width() * NOTE_SCALE;
    }
    return right;
  }
}
