package tabor.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.kit.Limb;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.words.Language;
import tabor.words.Words;

class TechniqueTest {
  private static Lesson lesson(String source) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("test.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson();
  }

  private static List<String> names(String source, Technique.Kind kind) {
    return Technique.of(lesson(source).grooves().get(0)).stream()
        .filter(one -> one.kind() == kind)
        .map(Technique::name)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "1/4, 1, 1, quarters",
    "1/4, 2, 1, eighths",
    "1/4, 3, 1, triplets",
    "1/4, 4, 1, sixteenths",
    "1/4, 5, 1, 5 to a beat",
    "1/4, 6, 1, sextuplets",
    "1/4, 8, 1, thirty-seconds",
    "3/8, 1, 1, dotted quarters",
    "3/8, 2, 1, two in a dotted beat",
    "3/8, 3, 1, eighths",
    "3/8, 6, 1, sixteenths",
    "1/2, 3, 2, triplets over 2 beats",
    "1/2, 5, 2, 5 over 2 beats",
    "1/8, 1, 1, eighths",
  })
  void divisionsHaveTheirNames(String length, long parts, int beats, String name) {
    String[] fraction = length.split("/", -1);
    Time time = Time.of(Long.parseLong(fraction[0]), Long.parseLong(fraction[1]));
    assertThat(Technique.division(time, parts, beats).name()).isEqualTo(name);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "DE | Achtel, Triolen über 2 Schläge, punktierte Achtel | 7/8 in 2+2+3",
        "FR | croches, triolets sur 2 temps, croches pointées | 7/8 en 2+2+3",
        "ES | corcheas, tresillos sobre 2 pulsos, corcheas con puntillo | 7/8 en 2+2+3",
      })
  void theirNamesInEveryLanguage(Language language, String divisions, String meter) {
    Words words = Words.of(language);
    assertThat(
            Stream.of(
                    Technique.division(Time.of(1, 4), 2, 1),
                    Technique.division(Time.of(1, 2), 3, 2),
                    Technique.division(Time.of(3, 16), 1, 1))
                .map(one -> one.words(words))
                .collect(Collectors.joining(", ")))
        .isEqualTo(divisions);
    String source = "time 7/8 in 2+2+3\ngroove g\n  kick : x. .. ...\n";
    assertThat(Technique.of(lesson(source).grooves().get(0)).get(0).words(words)).isEqualTo(meter);
  }

  @Test
  void onlyWhatIsAudibleCounts() {
    assertThat(names("groove g\n  snare : x... x. xxx x\n", Technique.Kind.DIVISION))
        .containsExactly("quarters", "triplets");
    assertThat(names("time 6/8\ngroove g\n  hands : rlr rl\n", Technique.Kind.DIVISION))
        .containsExactly("eighths", "two in a dotted beat");
    assertThat(names("groove g\n  hands : rlr:2 rl rlrl\n", Technique.Kind.DIVISION))
        .containsExactly("triplets over 2 beats", "eighths", "sixteenths");
  }

  @Test
  void strokesMetersAndRudiments() {
    String source = "time 7/8 in 2+2+3\ngroove g\n  hands : (r)l 'Rl rlr\n  kick : x. .. ...\n";
    assertThat(names(source, Technique.Kind.METER)).containsExactly("7/8 in 2+2+3");
    assertThat(names(source, Technique.Kind.STROKE))
        .containsExactly("ghost note", "accent", "flam");
    assertThat(names("groove g\n  hands play paradiddle in eighths\n", Technique.Kind.RUDIMENT))
        .containsExactly("paradiddle");
  }

  @Test
  void aLessonInAFewLines() {
    Lesson lesson =
        lesson(
            """
            title "Week one"
            goal  "Even"
            tempo 60
            groove a "First"
              teacher "zebra"
              hands : r r r r
            step b "Second"
              tempo 90
              goal "Even"
              goal "Relaxed"
              flam hands at 1
            sheet c "Third" from a
              each drop hands at 2
            chart d "Fourth"
              play a
            """);
    LessonSummary summary = LessonSummary.of("week-1.tabor", lesson);
    assertThat(summary.goals()).containsExactly("Even", "Relaxed");
    assertThat(summary.sections())
        .containsExactly(
            new LessonSummary.Line("First", "groove"),
            new LessonSummary.Line("Second", "step"),
            new LessonSummary.Line("Third", "sheet"),
            new LessonSummary.Line("Fourth", "chart"));
    assertThat(summary.techniques())
        .containsEntry(new Technique(Technique.Kind.STROKE, "ornament.flam", List.of()), "Second");
    LessonSummary.Hardest hardest = summary.hardest();
    assertThat(hardest).isNotNull();
    assertThat(hardest.limb()).isEqualTo(Limb.RIGHT_HAND);
    assertThat(hardest.section()).isEqualTo("Second");
    assertThat(summary.slowest()).isNotNull();
    assertThat(summary.slowest().words()).isEqualTo("quarter = 60");
    assertThat(summary.fastest().words()).isEqualTo("quarter = 90");
    assertThat(summary.toString()).doesNotContain("zebra");
  }

  @Test
  void eachTechniqueIsNewOnce() {
    LessonSummary one = LessonSummary.of("1", lesson("groove a\n  hands : r l r l\n"));
    LessonSummary two = LessonSummary.of("2", lesson("groove a\n  hands : rl 'r l r\n"));
    Overview overview = Overview.of(List.of(one, two, one));
    assertThat(overview.newIn(0).stream().map(first -> first.technique().name()))
        .containsExactly("4/4", "quarters");
    assertThat(overview.newIn(1).stream().map(first -> first.technique().name()))
        .containsExactly("eighths", "flam");
    assertThat(overview.newIn(2)).isEmpty();
  }
}
