package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tabor.groove.Loudness;
import tabor.kit.Surface;
import tabor.parse.Vocabulary.Role;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.NoteValue;
import tabor.syntax.Verb;

class VocabularyTest {
  @Test
  void everyWordHasARole() {
    Set<String> words = new TreeSet<>();
    Vocabulary.byRole().values().forEach(words::addAll);
    assertThat(words).containsAll(Vocabulary.keywords());
  }

  /** The grammar writes the closed lists out; the model has them too, and the two must agree. */
  @Test
  void theListsAreThoseOfTheModel() {
    assertThat(Vocabulary.of(Role.DYNAMIC))
        .isEqualTo(words(Arrays.stream(Loudness.values()).map(Loudness::word)));
    assertThat(Vocabulary.of(Role.HEAD))
        .isEqualTo(words(Arrays.stream(Surface.Head.values()).map(Surface.Head::word)));
    Set<String> values = words(Arrays.stream(NoteValue.values()).map(NoteValue::word));
    values.addAll(words(Arrays.stream(NoteValue.values()).map(NoteValue::singular)));
    values.addAll(words(Arrays.stream(BeatUnit.values()).map(BeatUnit::word)));
    assertThat(Vocabulary.of(Role.NOTE_VALUE)).isEqualTo(values);
    assertThat(Vocabulary.of(Role.STATEMENT))
        .containsAll(words(Arrays.stream(Verb.values()).map(Verb::word)));
  }

  private static Set<String> words(java.util.stream.Stream<String> words) {
    return words.collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void wordsAreWhereTheyAreUsed() {
    assertThat(Vocabulary.of(Role.HEADING))
        .containsExactly("chart", "groove", "kit", "pattern", "player", "sheet", "step");
    assertThat(Vocabulary.of(Role.LIMB))
        .containsExactly("all", "feet", "foot", "hand", "hands", "left", "line", "right");
    assertThat(Vocabulary.of(Role.LEVEL))
        .containsExactly("accent", "accented", "ghost", "ghosted", "plain");
    assertThat(Vocabulary.of(Role.JOINING))
        .contains("at", "between", "every", "follows", "in", "later", "over", "plays", "with")
        .doesNotContain("accent", "groove", "mf", "snare", "split");
    assertThat(Vocabulary.of(Role.SURFACE)).contains("kick", "ride.bell").doesNotContain("gong");
    assertThat(Vocabulary.of(Role.SIGN)).contains("'", "^", "~", "{", "|").doesNotContain("x");
  }
}
