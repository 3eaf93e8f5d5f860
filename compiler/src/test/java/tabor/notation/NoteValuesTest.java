package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** Note values as any handbook of notation has them, and which of them may stand where. */
class NoteValuesTest {
  @Test
  void stemsFlagsAndHeads() {
    List<String> all = new ArrayList<>();
    for (Written.Type type : Written.Type.values()) {
      all.add(
          type.length()
              + (type.hasStem() ? " stem" : "")
              + (type.isFilled() ? " filled" : "")
              + " "
              + type.flags());
    }
    assertThat(all)
        .startsWith("2 0", "1 0", "1/2 stem 0", "1/4 stem filled 0", "1/8 stem filled 1")
        .contains("1/16 stem filled 2", "1/32 stem filled 3")
        .endsWith("1/1024 stem filled 8");
    assertThat(new Written(Written.Type.HALF, 1).length()).isEqualTo(Time.of(3, 4));
  }

  @Test
  void voicesAndBars() {
    assertThat(Voice.HANDS.number()).isEqualTo(1);
    assertThat(Voice.FEET.number()).isEqualTo(2);
    Groove groove = Sketch.groove("g").pickup(1).part(RIGHT_HAND, "snare", "x | x . . .").done();
    Score score = Speller.spell(groove);
    assertThat(score.bars()).extracting(Bar::isPickup).containsExactly(true, false);
    assertThat(score.printed()).hasSize(2);
    Groove brief = Sketch.groove("g").pickup(1).part(RIGHT_HAND, "snare", "xx").done();
    assertThat(Speller.spell(brief).printed())
        .as("a short fill is printed without the bar behind it")
        .extracting(Bar::number)
        .containsExactly(0);
  }

  @Test
  void eventsEndWhereTheNextBegins() {
    List<Event> events =
        Speller.spell(Sketch.groove("g").part(RIGHT_HAND, "snare", "'xxx x{xxx}x . '''xx").done())
            .bars()
            .get(0)
            .hands();
    Time at = Time.ZERO;
    for (Event event : events) {
      assertThat(event.start()).isEqualTo(at);
      assertThat(event.end()).isEqualTo(at.plus(event.length()));
      assertThat(event.written().length().times(event.ratio())).isEqualTo(event.length());
      at = event.end();
    }
    assertThat(at).isEqualTo(Time.ONE);
    assertThat(events.get(0).ratio()).isEqualTo(Time.of(2, 3));
    assertThat(events.get(0).tuplets().get(0).tuplet().ratio()).isEqualTo(Time.of(2, 3));
    assertThat(events.get(4).ratio()).as("a triplet in a triplet").isEqualTo(Time.of(4, 9));
    assertThat(
            events.stream().flatMap(e -> e.chord().stream()).map(Event.Chord::graceNotes).toList())
        .startsWith(1, 0)
        .endsWith(3, 0);
    assertThat(events.get(0).chord().get().stemUp()).isTrue();
    assertThat(events.get(0).chord().get().notes().get(0).head())
        .isEqualTo(tabor.kit.Surface.Head.NORMAL);
  }

  /** A sign never hides a place that is more than a step stronger than where it stands. */
  @ParameterizedTest
  @CsvSource({
    ".x...x.. . . ., r32+ 16.(( r32+ 16.)) rq+ rh+",
    ".x.....x . . ., r32+ 16.(> r16+ r32+ 32)<< rq+ rh+",
    ".x.. . . ., r16+ 8. rq+ rh+",
    "x.x...x. . . ., 16(> 8- 16)< rq+ rh+",
  })
  void syncopesShowTheBeat(String words, String spelling) {
    Groove groove = Sketch.groove("g").part(RIGHT_HAND, "snare", words).done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands())).isEqualTo(spelling);
  }

  /** Wholes are beamed in halves, dotted halves in quarters. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, xxxxxxxx, 8( 8- 8- 8) 8( 8- 8- 8)",
    "6, 4, xxxxxx ., 8( 8) 8( 8) 8( 8) rh.+",
  })
  void longBeatsAreBeamedInParts(int count, int unit, String words, String spelling) {
    Meter meter =
        unit == 1
            ? Meter.of(count, unit)
            : new Meter(count, unit, List.of(Time.of(3, 4), Time.of(3, 4)));
    Groove groove = Sketch.groove("g").meter(meter).part(RIGHT_HAND, "snare", words).done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands())).isEqualTo(spelling);
  }

  /** Two divisions that no tuplet can hold: exact all the same, though nobody could read it. */
  @Test
  void whatNoGridHoldsIsStillExact() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x".repeat(1001) + " x x x")
            .part(LEFT_HAND, "floor", "x".repeat(1003) + " . . .")
            .done();
    List<Event> events = Speller.spell(groove).bars().get(0).hands();
    Time at = Time.ZERO;
    for (Event event : events) {
      assertThat(event.start()).isEqualTo(at);
      at = event.end();
    }
    assertThat(at).isEqualTo(Time.ONE);
    // Both begin together; three quarters follow.
    assertThat(events.stream().filter(event -> event.chord().isPresent()))
        .hasSize(1001 + 1003 - 1 + 3);
  }

  @Test
  void aRowOfCountsForEachDivisionThatDisagrees() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "ride", "x.x x . .")
            .part(LEFT_HAND, "snare", "x.xx x . .")
            .done();
    var rows = Speller.spell(groove).bars().get(0).counts();
    assertThat(rows).hasSize(2);
    assertThat(rows.get(0).toString()).isEqualTo("{0=1, 1/6=a, 1/4=2}");
    assertThat(rows.get(1).toString()).isEqualTo("{0=1, 1/8=&, 3/16=a}");
    Groove silent = Sketch.groove("g").bars(1).done();
    assertThat(Speller.spell(silent).bars().get(0).counts()).isEmpty();
  }
}
