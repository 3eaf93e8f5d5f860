package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** What slashes and beams say of a measured roll is what is played. */
class RollProperties {
  private static final List<Meter> METERS =
      List.of(
          Meter.COMMON,
          Meter.of(3, 4),
          Meter.of(6, 8),
          Meter.of(2, 2),
          Meter.of(5, 8),
          new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8))));

  /** One hand on the snare: rolls in any slot, some held on through beats of silence. */
  @Provide
  Arbitrary<Groove> rolls() {
    return Arbitraries.longs()
        .map(
            seed -> {
              Random random = new Random(seed);
              Meter meter = METERS.get(random.nextInt(METERS.size()));
              Sketch sketch = Sketch.groove("rolls").meter(meter).bars(2);
              for (int bar = 1; bar <= 2; bar++) {
                for (int beat = 0; beat < meter.beatCount(); ) {
                  int slots = 1 + random.nextInt(5);
                  int silent = random.nextInt(4) == 0 ? 1 + random.nextInt(2) : 0;
                  silent = Math.min(silent, meter.beatCount() - beat - 1);
                  Time rest = meter.beatStart(beat + 1 + silent).minus(meter.beatStart(beat + 1));
                  for (int i = 0; i < slots; i++) {
                    Slot slot = new Slot(new Division(beat, 1, slots), i, List.of());
                    Time length = slot.length(meter);
                    Time held = i + 1 == slots ? length.plus(rest) : length;
                    sketch.stroke(
                        Sketch.stroke(
                            bar,
                            slot.start(meter),
                            held,
                            Limb.RIGHT_HAND,
                            Kits.FIVE_PIECE.surfaces().get("snare"),
                            slot,
                            ornaments(random)));
                  }
                  beat += 1 + silent;
                }
              }
              return sketch.done();
            });
  }

  private static Ornaments ornaments(Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> Ornaments.NONE;
      case 1 -> Ornaments.NONE.with(Ornament.DIDDLE);
      default -> Ornaments.NONE.with(Ornament.OPEN_ROLL);
    };
  }

  @Property(tries = 300)
  void slashesTimesBeamsAreTheStrokesPlayed(@ForAll("rolls") Groove groove) {
    Score score = Speller.spell(groove);
    List<Sound> sounds = Performer.once(groove, 0).sounds();
    for (Stroke stroke : groove.strokes()) {
      if (!RollWriting.isMeasured(stroke)) {
        continue;
      }
      long played =
          sounds.stream()
              .filter(sound -> stroke.equals(sound.stroke()))
              .filter(s -> s.kind() == Sound.Kind.STROKE || s.kind() == Sound.Kind.ROLL)
              .count();
      assertThat(said(score, stroke)).as("%s", stroke).isEqualTo(Time.of(played));
    }
  }

  /** How many strokes the notes of a roll say: with slashes, or one for each note without. */
  private static Time said(Score score, Stroke roll) {
    Groove groove = score.groove();
    Time start = groove.position(roll);
    Time end = start.plus(roll.length());
    Time said = Time.ZERO;
    for (Bar bar : score.bars()) {
      for (Event event : bar.hands()) {
        Time at = groove.position(bar.number(), event.start());
        if (event.chord().isEmpty() || at.before(start) || !at.before(end)) {
          continue;
        }
        for (Note note : event.chord().get().notes()) {
          int slashes = note.slashes();
          if (slashes == 0) {
            said = said.plus(note.tieIn() && !note.strokes().contains(roll) ? Time.ZERO : Time.ONE);
          } else {
            int flags = event.written().type().flags();
            Time each = Time.of(1, 4L << (flags + slashes));
            said = said.plus(event.written().length().over(each));
          }
        }
      }
    }
    return said;
  }

  /** What a handbook's rule gives: a slash halves the value, as a beam does. */
  @ParameterizedTest
  @CsvSource({
    // meter, word, written hands
    "4/4, x/, q", // two eighths
    "4/4, x//, q", // four sixteenths
    "6/8, x/, '2:3[ 8 8 ]'", // a slash would say three: two in a dotted beat are written out
    "2/2, x/, 'q q'", // two quarters in a half: no slash says that
    "2/2, x//, h", // four eighths in a half: one slash
  })
  void aRollIsSlashedOnlyWhereThatIsExact(String meter, String word, String expected) {
    String[] parts = meter.split("/", -1);
    Meter of = Meter.of(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    Slot slot = new Slot(new Division(0, 1, 1), 0, List.of());
    Ornament ornament = word.equals("x/") ? Ornament.DIDDLE : Ornament.OPEN_ROLL;
    Groove groove =
        Sketch.groove("g")
            .meter(of)
            .stroke(
                Sketch.stroke(
                    1,
                    Time.ZERO,
                    of.beat(0),
                    Limb.RIGHT_HAND,
                    Kits.FIVE_PIECE.surfaces().get("snare"),
                    slot,
                    Ornaments.NONE.with(ornament)))
            .done();
    List<Event> hands = Speller.spell(groove).bars().get(0).hands();
    int notes = (int) hands.stream().filter(event -> event.chord().isPresent()).count();
    String written = ScoreText.events(hands.subList(0, notes)).replaceAll("[()]", "");
    assertThat(written).isEqualTo(expected);
  }
}
