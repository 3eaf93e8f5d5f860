package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;

/** What the one reading of places answers to those who ask without an edit. */
class PlaceQueryTest {
  private static final Span NOWHERE = new Span(0, 0);

  private static PlaceQuery query(String text) {
    Groove groove = Compact.compile(text).lesson().grooves().get(0);
    return new PlaceQuery(SectionView.of(groove), TargetFilter.of(Limb.RIGHT_FOOT));
  }

  private static At at(int beat, Count.Syllable syllable) {
    At.Place place = new At.One(new CountRef(Count.of(beat, syllable), NOWHERE));
    return new At(new At.Places(List.of(place), NOWHERE), null, null);
  }

  private static final String TWO = "groove g\n kick : x .x . . | . . xx .\n";

  @Test
  void strokesAtAPlaceInEveryBarThatHasThem() {
    PlaceQuery.Found found = query(TWO).find(at(2, Count.Syllable.AND), NOWHERE);
    assertThat(found.misses()).isEmpty();
    assertThat(found.strokes()).hasSize(1);
    assertThat(found.strokes().get(0).bar()).isEqualTo(1);
  }

  @Test
  void aMissIsTyped() {
    PlaceQuery.Found found = query(TWO).find(at(4, Count.Syllable.NONE), NOWHERE);
    assertThat(found.strokes()).isEmpty();
    assertThat(found.misses())
        .containsExactly(new Miss.Nothing(NOWHERE, Count.of(4, Count.Syllable.NONE), 1, null));
  }

  @Test
  void theNearestCountComesFirst() {
    PlaceQuery query = query("groove g\n kick : x .x . xx\n");
    assertThat(query.near(1, query.plainPlace(Count.of(2, Count.Syllable.NONE), 1)).get(0))
        .isEqualTo(Count.of(2, Count.Syllable.AND));
    assertThat(query.near(1, null).get(0)).isEqualTo(Count.of(1, Count.Syllable.NONE));
    assertThat(query.barsPlayed()).containsExactly(1);
    assertThat(query(TWO).barsPlayed()).containsExactly(1, 2);
  }
}
