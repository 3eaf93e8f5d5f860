package tabor.ide;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.compile.Compiled;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.groove.Ornaments;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/** Whether a file says the same after a change. */
final class SameMusic {
  private SameMusic() {}

  /** What matters of a section, without where it is written. */
  private record Essence(
      String caption,
      int bars,
      Groove.Setting setting,
      Time pickup,
      List<Heard> strokes,
      List<Loudness.Mark> marks,
      List<Loudness.Hairpin> hairpins,
      List<String> prose) {
    static Essence of(Groove groove) {
      return new Essence(
          groove.caption(),
          groove.bars(),
          groove.setting(),
          groove.pickup(),
          heard(groove.written()),
          groove.marks(),
          groove.hairpins(),
          groove.prose());
    }
  }

  /** A stroke without where it came from. */
  record Heard(
      int bar,
      Time at,
      Time length,
      Limb limb,
      String surface,
      Level level,
      Ornaments ornaments,
      Slot slot) {}

  /** Strokes in order, without where they came from. */
  static List<Heard> heard(List<Stroke> strokes) {
    return strokes.stream()
        .sorted(Stroke.ORDER)
        .map(
            s ->
                new Heard(
                    s.bar(),
                    s.at(),
                    s.length(),
                    s.limb(),
                    s.surface().name(),
                    s.level(),
                    s.ornaments(),
                    s.slot()))
        .toList();
  }

  /**
   * True if after the edits every groove and step has the strokes, settings, dynamics and texts
   * that it had, every comment is there, and no error is new.
   */
  static boolean after(Compiled compiled, List<TextEdit> edits, Library library) {
    Compiled after = trial(compiled, edits, library);
    return hasNoNewProblems(compiled, after)
        && essences(after).equals(essences(compiled))
        && comments(after).equals(comments(compiled));
  }

  /** True if the edits make no error. */
  static boolean withoutNewErrors(Compiled compiled, List<TextEdit> edits, Library library) {
    return hasNoNewProblems(compiled, trial(compiled, edits, library));
  }

  private static Compiled trial(Compiled compiled, List<TextEdit> edits, Library library) {
    String text = TextEdit.apply(TextEdit.inOrder(edits), compiled.text());
    return library.trial(compiled.file(), text);
  }

  private static boolean hasNoNewProblems(Compiled before, Compiled after) {
    Map<String, Long> old = problems(before);
    return problems(after).entrySet().stream()
        .allMatch(entry -> entry.getValue() <= old.getOrDefault(entry.getKey(), 0L));
  }

  /** How often each error is there; another way to write may earn another warning. */
  private static Map<String, Long> problems(Compiled compiled) {
    return compiled.diagnostics().stream()
        .filter(diagnostic -> diagnostic.severity() == Severity.ERROR)
        .collect(Collectors.groupingBy(d -> d.code().word(), Collectors.counting()));
  }

  private static Map<String, Essence> essences(Compiled compiled) {
    Map<String, Essence> found = new TreeMap<>();
    for (Section section : compiled.lesson().sections()) {
      if (section instanceof Groove groove) {
        found.put(groove.name(), Essence.of(groove));
      }
    }
    return found;
  }

  private static List<String> comments(Compiled compiled) {
    return compiled.syntax().stream()
        .flatMap(section -> Comments.of(section).stream())
        .map(Comments.Comment::text)
        .sorted(Comparator.naturalOrder())
        .toList();
  }
}
