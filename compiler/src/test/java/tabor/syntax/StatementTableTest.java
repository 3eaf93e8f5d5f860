package tabor.syntax;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class StatementTableTest {
  private static List<String> words(SectionKind kind) {
    return StatementTable.inSection(kind).stream()
        .map(row -> row.keyword() == null ? row.label() : row.keyword())
        .toList();
  }

  /** The lists of the notation page: sections 2, 5, 6 and 9, with what teachers add to them. */
  @Test
  void eachSectionTakesItsStatements() {
    assertThat(words(SectionKind.HEADER))
        .containsExactly(
            "title",
            "by",
            "use",
            "time",
            "tempo",
            "feel",
            "on",
            "levels",
            "show",
            "limits",
            "page",
            "goal",
            "teacher",
            "log",
            "say",
            "say",
            "say",
            "language");
    assertThat(words(SectionKind.PATTERN)).isEmpty();
    assertThat(words(SectionKind.KIT))
        .containsExactly("limits", "surface", "letter", "without", "left-handed", "place");
    assertThat(words(SectionKind.CHART))
        .containsExactly(
            "tempo",
            "feel",
            "page",
            "goal",
            "teacher",
            "count-in",
            "click",
            "click",
            "click",
            "play",
            "trade",
            "rest",
            "rest",
            "climb",
            "tempo",
            "hold",
            "cue",
            "mark",
            "dynamic",
            "text");
    assertThat(words(SectionKind.PLAYER))
        .containsExactly(
            "tempo",
            "on",
            "show",
            "limits",
            "page",
            "say",
            "say",
            "say",
            "language",
            "left-handed",
            "open-handed",
            "tempo",
            "sections",
            "text");
    assertThat(words(SectionKind.SHEET))
        .contains("each", "and", "tempo", "bars", "next", "lane", "add", "text", "goal")
        .doesNotContain("time", "pickup", "title", "count-in", "log", "say");
    assertThat(words(SectionKind.GROOVE))
        .contains("time", "pickup", "tempo", "lane", "plays", "text");
    assertThat(words(SectionKind.STEP))
        .contains("tempo", "bars", "next", "ostinato", "follows")
        .doesNotContain("time", "pickup", "title", "count-in");
  }

  @Test
  void aRowOfAWordComesBeforeOneWithout() {
    assertThat(StatementTable.row("lane", "ostinato").keyword()).isEqualTo("ostinato");
    assertThat(StatementTable.row("lane", "kick").keyword()).isNull();
    assertThat(StatementTable.row("change", "flam").meaning()).contains("grace note");
    assertThat(StatementTable.find("change", "kick")).isEmpty();
    assertThatThrownBy(() -> StatementTable.row("no", null))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aWordFindsTheRowsThatItStarts() {
    assertThat(StatementTable.startingWith("play"))
        .extracting(StatementRow::label)
        .containsExactly("playSections");
    assertThat(StatementTable.startingWith("x")).isEmpty();
  }

  @Test
  void everyMeaningIsASentence() {
    for (StatementRow row : StatementTable.rows()) {
      assertThat(row.meaning()).as(row.label()).matches("[A-Z].*[.]");
      assertThat(row.sections()).as(row.label()).isNotEmpty();
    }
  }
}
