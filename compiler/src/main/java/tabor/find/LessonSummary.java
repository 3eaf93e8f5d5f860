package tabor.find;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.body.Difficulty;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.kit.Limb;
import tabor.rhythm.Tempo;

/**
 * A lesson in a few lines.
 *
 * @param file as the caller calls it
 * @param title as written, else the file's name
 * @param goals of the lesson, then of its sections, each once
 * @param sections in the order of the file
 * @param techniques what its sections use, with the section that uses it first, kind by kind
 * @param hardest where it asks most of a limb; null if it comes near no limit
 * @param slowest the lowest tempo of a section, by quarters per minute; null without sections
 * @param fastest the highest one
 */
public record LessonSummary(
    String file,
    String title,
    List<String> goals,
    List<Line> sections,
    Map<Technique, String> techniques,
    @Nullable Hardest hardest,
    @Nullable Tempo slowest,
    @Nullable Tempo fastest) {
  /** Copies the lists. */
  public LessonSummary {
    goals = List.copyOf(goals);
    sections = List.copyOf(sections);
    techniques = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(techniques));
  }

  /**
   * A section.
   *
   * @param caption its title, else its name
   * @param kind {@code groove}, {@code step}, {@code sheet} or {@code chart}
   */
  public record Line(String caption, String kind) {}

  /**
   * The limb that is nearest to its comfortable limit.
   *
   * @param percent of that limit, rounded
   * @param section caption of the section
   */
  public record Hardest(Limb limb, long percent, String section) {}

  /** Sums a finished lesson up. What is for the teacher alone is left out. */
  public static LessonSummary of(String file, Lesson lesson) {
    List<String> goals = new ArrayList<>(lesson.extras().goals());
    List<Line> lines = new ArrayList<>();
    for (Section section : lesson.sections()) {
      goals.addAll(section.page().goals());
      lines.add(new Line(section.caption(), kind(section)));
    }
    Map<Technique, String> techniques = new LinkedHashMap<>();
    Hardest hardest = null;
    Tempo slowest = null;
    Tempo fastest = null;
    for (Groove groove : lesson.grooves()) {
      Technique.of(groove).forEach(one -> techniques.putIfAbsent(one, groove.caption()));
      Difficulty difficulty = Difficulty.of(groove);
      Limb limb = difficulty.hardest();
      if (limb != null && (hardest == null || difficulty.share() > hardest.percent())) {
        hardest = new Hardest(limb, difficulty.share(), groove.caption());
      }
      Tempo tempo = groove.setting().tempo();
      slowest = slowest == null || isSlower(tempo, slowest) ? tempo : slowest;
      fastest = fastest == null || isSlower(fastest, tempo) ? tempo : fastest;
    }
    Map<Technique, String> sorted = new LinkedHashMap<>();
    techniques.entrySet().stream()
        .sorted(Map.Entry.comparingByKey(Technique.ORDER))
        .forEach(one -> sorted.put(one.getKey(), one.getValue()));
    List<String> each = goals.stream().distinct().toList();
    return new LessonSummary(file, lesson.title(), each, lines, sorted, hardest, slowest, fastest);
  }

  private static boolean isSlower(Tempo one, Tempo other) {
    return one.quartersPerMinute().before(other.quartersPerMinute());
  }

  private static String kind(Section section) {
    if (section instanceof Sheet) {
      return "sheet";
    }
    if (section instanceof Chart) {
      return "chart";
    }
    return section instanceof Groove groove && groove.isStep() ? "step" : "groove";
  }
}
