package tabor.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.testing.RudimentTable;

/** The built-in rudiments against a table copied from elsewhere. */
class RudimentsTest {
  static List<RudimentTable.Row> rows() {
    return RudimentTable.rows();
  }

  /** A place in the signs of the table: grace notes small and by the other hand. */
  private static String token(PatternPlace place) {
    char hand = Character.toUpperCase(place.letter());
    String grace = place.letter() == 'r' ? "l" : "r";
    return grace.repeat(place.graceNotes())
        + hand
        + (place.diddle() ? String.valueOf(hand) : "")
        + (place.buzz() ? "z" : "")
        + (place.accent() ? ">" : "");
  }

  private static String tokens(List<PatternPlace> places) {
    return places.stream().map(RudimentsTest::token).collect(Collectors.joining(" "));
  }

  @Test
  void thereAreFortyInTheSocietysOrder() {
    List<String> names = new ArrayList<>();
    int number = 1;
    for (Rudiments.Rudiment rudiment : Rudiments.all().values()) {
      assertThat(rudiment.number()).isEqualTo(number++);
      names.add(rudiment.name());
    }
    assertThat(names)
        .hasSize(40)
        .isEqualTo(RudimentTable.rows().stream().map(RudimentTable.Row::name).toList());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void isPlayedAsTheTableSays(RudimentTable.Row row) {
    Rudiments.Rudiment rudiment = Rudiments.named(row.name()).orElseThrow();
    assertThat(tokens(rudiment.lead())).isEqualTo(row.right());
    assertThat(tokens(rudiment.leftLead())).isEqualTo(row.left());
    String poured = row.next().equals("alternates") ? row.right() + " " + row.left() : row.right();
    assertThat(tokens(rudiment.places())).isEqualTo(poured);
  }

  /** The rolls that are named by a number have so many strokes. */
  @Test
  void aRollOfSoManyStrokesHasThem() {
    List<String> numbers =
        List.of(
            "five", "six", "seven", "nine", "ten", "eleven", "thirteen", "fifteen", "seventeen");
    List<Integer> counts = List.of(5, 6, 7, 9, 10, 11, 13, 15, 17);
    for (int i = 0; i < numbers.size(); i++) {
      List<PatternPlace> lead =
          Rudiments.named(numbers.get(i) + "-stroke-roll").orElseThrow().lead();
      assertThat(lead.stream().mapToInt(place -> place.diddle() ? 2 : 1).sum())
          .isEqualTo(counts.get(i));
    }
  }

  @Test
  void theSingleParadiddlesHaveTheirShortNames() {
    assertThat(Rudiments.named("paradiddle")).isEqualTo(Rudiments.named("single-paradiddle"));
    assertThat(Rudiments.named("paradiddle-diddle"))
        .isEqualTo(Rudiments.named("single-paradiddle-diddle"))
        .isPresent();
    assertThat(Rudiments.named("stroke-roll")).isEmpty();
    assertThat(Rudiments.named("stroke-four")).isEmpty();
  }

  @Test
  void silenceAndOtherLettersHaveNoOtherHand() {
    assertThat(Rudiments.place("llR>").mirrored()).isEqualTo(Rudiments.place("rrL>"));
    PatternPlace rest = new PatternPlace('.', false, 0, false, false);
    assertThat(rest.mirrored()).isEqualTo(rest);
  }
}
