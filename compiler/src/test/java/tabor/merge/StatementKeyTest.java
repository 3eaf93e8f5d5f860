package tabor.merge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.parse.Reader;
import tabor.source.Passage;
import tabor.syntax.Line;
import tabor.syntax.SectionKind;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** Every statement of the table has a key; those of edits say whom they are about. */
class StatementKeyTest {
  private static Statement read(String line, SectionKind kind) {
    String heading = kind == SectionKind.HEADER ? "" : kind.word() + " a\n";
    if (line.startsWith("and ")) {
      heading += "  each add kick at 1\n";
    }
    Reader reader = new Reader();
    List<Passage> passages = Reader.passages(heading + "  " + line + "\n");
    List<Line> lines = reader.read(passages.get(passages.size() - 1)).lines();
    assertThat(lines).as(line).isNotEmpty();
    return lines.get(lines.size() - 1).statement();
  }

  private static StatementKey key(String line) {
    return StatementKey.of(read(line, SectionKind.STEP));
  }

  @Test
  void everyStatementOfTheTableHasAKey() {
    for (StatementRow row : StatementTable.rows()) {
      if (row.isSign() || row.isHeading()) {
        continue;
      }
      SectionKind kind = row.sections().stream().min(Comparator.naturalOrder()).orElseThrow();
      Statement statement = read(row.example(), kind);
      StatementKey key = StatementKey.of(statement);
      assertThat(key.isAbout(StatementKey.of(read(row.example(), kind))))
          .as(row.example())
          .isTrue();
      assertThat(key.whom() + key.where()).as(row.example()).doesNotContain("Span[");
    }
  }

  /** True if a section cannot well say both. */
  private static boolean excludes(StatementKey one, StatementKey other) {
    return !one.several() && one.isAbout(other) && one.where().equals(other.where());
  }

  @Test
  void whatIsSaidOfTheSameAtTheSamePlaceExcludesEachOther() {
    assertThat(excludes(key("accent snare at 2"), key("ghost snare at 2"))).isTrue();
    assertThat(excludes(key("flam snare at 2"), key("drag snare at 2"))).isTrue();
    assertThat(excludes(key("left plays tom1"), key("left plays floor"))).isTrue();
    assertThat(excludes(key("snare : x x x x"), key("snare : . x . x"))).isTrue();
    assertThat(excludes(key("tempo 60"), key("tempo 70"))).isTrue();
  }

  @Test
  void otherPlacesTargetsAndMattersGoTogether() {
    assertThat(excludes(key("accent snare at 2"), key("accent snare at 4"))).isFalse();
    assertThat(excludes(key("accent snare at 2"), key("accent kick at 2"))).isFalse();
    assertThat(excludes(key("accent snare at 2"), key("flam snare at 2"))).isFalse();
    assertThat(excludes(key("accent snare in bar 1"), key("accent snare in bar 2"))).isFalse();
    assertThat(excludes(key("left plays tom1 at 2"), key("right plays floor at 2"))).isFalse();
    assertThat(excludes(key("text \"a\""), key("text \"b\""))).isFalse();
    assertThat(excludes(key("tempo 60"), key("feel straight"))).isFalse();
  }
}
