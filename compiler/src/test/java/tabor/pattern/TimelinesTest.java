package tabor.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Onsets against a published table, {@code onsets.tsv}, which names its sources. */
class TimelinesTest {
  record Row(String name, int places, List<Integer> onsets, int turned) {}

  static List<Row> rows() throws IOException {
    List<Row> rows = new ArrayList<>();
    try (InputStream in = TimelinesTest.class.getResourceAsStream("onsets.tsv")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      for (String line : text.lines().filter(l -> !l.startsWith("#")).skip(1).toList()) {
        String[] cells = line.split("\t", -1);
        List<Integer> onsets = new ArrayList<>();
        for (String onset : cells[2].split(",", -1)) {
          onsets.add(Integer.valueOf(onset));
        }
        rows.add(new Row(cells[0], Integer.parseInt(cells[1]), onsets, Integer.parseInt(cells[4])));
      }
    }
    return rows;
  }

  private static List<Integer> onsets(List<PatternPlace> places) {
    List<Integer> onsets = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i).letter() == 'x') {
        onsets.add(i);
      } else {
        assertThat(places.get(i).letter()).isEqualTo('.');
      }
    }
    return onsets;
  }

  @ParameterizedTest
  @MethodSource("rows")
  void isStruckWhereTheTableSays(Row row) {
    int slash = row.name().indexOf('/');
    List<PatternPlace> places =
        slash < 0
            ? Timelines.named(row.name()).orElseThrow()
            : Timelines.spread(
                Integer.parseInt(row.name().substring(0, slash)),
                Integer.parseInt(row.name().substring(slash + 1)));
    assertThat(places).hasSize(row.places());
    List<PatternPlace> turned = new ArrayList<>(places);
    Collections.rotate(turned, row.turned());
    assertThat(onsets(turned)).isEqualTo(row.onsets());
  }

  @Test
  void everyTimelineIsInTheTable() throws IOException {
    Set<String> named = new HashSet<>();
    rows().forEach(row -> named.add(row.name()));
    assertThat(named).containsAll(Timelines.all().keySet());
  }

  @Test
  void theExamplesOfTheNotation() {
    assertThat(onsets(Timelines.spread(3, 8))).containsExactly(0, 3, 6);
    assertThat(onsets(Timelines.spread(2, 3))).containsExactly(0, 1);
    assertThat(onsets(Timelines.spread(1, 4))).containsExactly(0);
    assertThat(onsets(Timelines.spread(4, 4))).containsExactly(0, 1, 2, 3);
  }

  @Test
  void strokesAreSpreadEvenlyOverAnyLength() {
    for (int places = 1; places <= 40; places++) {
      for (int strokes = 1; strokes <= places; strokes++) {
        List<Integer> onsets = onsets(Timelines.spread(strokes, places));
        assertThat(onsets).hasSize(strokes).startsWith(0);
        for (int i = 0; i < strokes; i++) {
          int next = i + 1 < strokes ? onsets.get(i + 1) : places;
          assertThat(next - onsets.get(i))
              .isBetween(places / strokes, (places + strokes - 1) / strokes);
        }
      }
    }
  }

  @Test
  void nothingElseCanBeSpread() {
    assertThatThrownBy(() -> Timelines.spread(0, 4)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Timelines.spread(5, 4)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Timelines.spread(1, 513)).isInstanceOf(IllegalArgumentException.class);
    assertThat(Timelines.named("no-such-thing")).isEmpty();
  }
}
