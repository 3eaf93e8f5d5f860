package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.testing.Sketch;

/** What stands at a note beside its time, as docs/spelling.md says. */
class NoteSignsTest {
  private static List<Event.Chord> chords(Groove groove, Voice voice) {
    return Speller.spell(groove).bars().stream()
        .flatMap(bar -> bar.events(voice).stream())
        .flatMap(event -> event.chord().stream())
        .toList();
  }

  private static String signs(Note note) {
    return (note.ghost() ? "ghost " : "")
        + (note.accent() ? "accent " : "")
        + (note.graceNotes() > 0 ? note.graceNotes() + " grace " : "")
        + (note.slashes() > 0 ? note.slashes() + " slashes " : "")
        + (note.buzz() ? "buzz " : "")
        + (note.choke() ? "choke " : "")
        + (note.rimshot() ? "rimshot " : "")
        + (note.tieIn() ? "in " : "")
        + (note.tieOut() ? "out " : "");
  }

  private static String signs(String surface, String words) {
    return chords(Sketch.groove("g").part(RIGHT_HAND, surface, words).done(), Voice.HANDS).stream()
        .map(chord -> signs(chord.notes().get(0)).strip())
        .collect(Collectors.joining(", "));
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "snare; x X g x^; , accent, ghost, rimshot",
        "snare; 'x ''X ''g x~; 1 grace, accent 2 grace, ghost 2 grace, buzz",
        "snare; . g . X^; ghost, accent rimshot",
        "crash; x! X! . .; choke, accent choke",
        // A quarter in four is sixteenths, an eighth in two as well: two beams or slashes.
        "snare; x// x/x/ . .; 2 slashes, 1 slashes, 1 slashes",
        // What goes on is not struck again.
        "crash; . . . X- | - - - -; accent out, in",
        "snare; . . . X~ | - . . .; accent buzz out, buzz in",
      },
      delimiter = ';',
      quoteCharacter = '"')
  void aNoteHas(String surface, String words, String signs) {
    assertThat(signs(surface, words)).isEqualTo(signs);
  }

  @Test
  void aRuffHasThreeGraceNotes() {
    assertThat(signs("snare", "'''x . . .")).isEqualTo("3 grace");
  }

  @Test
  void aGhostForBothHandsIsOneOnlyWhereBothAreGhosts() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "g g g .")
            .part(LEFT_HAND, "snare", "g x X .")
            .done();
    assertThat(chords(groove, Voice.HANDS).stream().map(c -> signs(c.notes().get(0)).strip()))
        .containsExactly("ghost", "", "accent");
  }

  @Test
  void headsStandFromTheLowestUp() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "ride", "x . x .")
            .part(LEFT_HAND, "snare", "x . . x")
            .part(RIGHT_HAND, "tom1", ". x . x")
            .part(LEFT_HAND, "floor", ". x x .")
            .done();
    assertThat(
            chords(groove, Voice.HANDS).stream()
                .map(
                    chord ->
                        chord.notes().stream()
                            .map(note -> note.surface().name())
                            .collect(Collectors.joining(" "))))
        .containsExactly("snare ride", "floor tom1", "floor ride", "snare tom1");
  }

  private static String hihats(Sketch sketch) {
    return chords(sketch.done(), Voice.HANDS).stream()
        .map(chord -> chord.notes().get(0).hihat().name())
        .collect(Collectors.joining(" "));
  }

  @Test
  void closedIsSaidWhereTheEarExpectsItOpen() {
    assertThat(
            hihats(
                Sketch.groove("g")
                    .part(RIGHT_HAND, "hihat", "x .x .x .x")
                    .part(LEFT_HAND, "hihat.half", ". x . .")
                    .part(LEFT_HAND, "hihat.open", ". . x x")))
        .as("half open needs a closing too")
        .isEqualTo("NONE HALF CLOSED OPEN CLOSED OPEN CLOSED");
    assertThat(
            hihats(
                Sketch.groove("g")
                    .part(RIGHT_HAND, "hihat.open", "x . . .")
                    .part(LEFT_FOOT, "hihat.foot", ". x . .")
                    .part(RIGHT_HAND, "hihat", ". . x .")))
        .as("the foot has closed it")
        .isEqualTo("OPEN NONE");
    assertThat(
            hihats(
                Sketch.groove("g")
                    .part(RIGHT_HAND, "hihat.open", "x . . . | . . . .")
                    .part(RIGHT_HAND, "hihat", ". . . . | x . . .")))
        .as("a bar line closes nothing")
        .isEqualTo("OPEN CLOSED");
    assertThat(
            hihats(
                Sketch.groove("g")
                    .part(RIGHT_HAND, "hihat.open", "x . . .")
                    .part(RIGHT_HAND, "ride", ". x . .")
                    .part(RIGHT_HAND, "hihat", ". . x .")))
        .isEqualTo("OPEN NONE CLOSED");
  }

  private static String feet(boolean leftHanded, Limb limb, String surface) {
    Sketch sketch =
        Sketch.groove("g")
            .kit(leftHanded ? Kits.FIVE_PIECE.mirrored() : Kits.FIVE_PIECE)
            .part(limb, surface, "x . . .");
    return chords(sketch.done(), Voice.FEET).get(0).sticking();
  }

  @Test
  void feetHaveLettersWhereTheyPlayAnothersPedal() {
    assertThat(feet(false, RIGHT_FOOT, "kick")).isEmpty();
    assertThat(feet(false, LEFT_FOOT, "hihat.foot")).isEmpty();
    assertThat(feet(false, LEFT_FOOT, "kick")).isEqualTo("L");
    assertThat(feet(false, RIGHT_FOOT, "hihat.foot")).isEqualTo("R");
    assertThat(feet(true, LEFT_FOOT, "kick")).isEmpty();
    assertThat(feet(true, RIGHT_FOOT, "hihat.foot")).isEmpty();
    assertThat(feet(true, RIGHT_FOOT, "kick")).isEqualTo("R");
    assertThat(
            chords(
                    Sketch.groove("g")
                        .part(RIGHT_FOOT, "kick", "x . . .")
                        .part(LEFT_FOOT, "kick", "x . . .")
                        .done(),
                    Voice.FEET)
                .get(0)
                .sticking())
        .isEqualTo("B");
  }

  @Test
  void whatAStepChangedIsMarked() {
    Groove groove = Sketch.groove("g").part(RIGHT_HAND, "snare", "x x x/ .").done();
    java.util.Set<Stroke> changed =
        java.util.Set.of(groove.strokes().get(1), groove.strokes().get(2));
    assertThat(
            Speller.spell(groove, changed).bars().get(0).hands().stream()
                .flatMap(event -> event.chord().stream())
                .map(chord -> chord.notes().get(0).changed()))
        .containsExactly(false, true, true);
  }

  /** One sign for several beats: whole bars held, and silent beats as handbooks group them. */
  @ParameterizedTest
  @CsvSource(
      value = {
        "4/4; x~ - - -; w",
        "3/4; x~ - -; h.",
        "2/4; x~ -; h",
        "6/4; x~ - - - - -; w.",
        "5/4; x~ - - - -; w ~q",
        "4/4; x . . .; q rq+ rh+",
        "4/4; . x . .; rq+ q rh+",
        "3/4; x . .; q rq+ rq+",
        "3/4; . . x; rq+ rq+ q",
        "5/4; x . . . .; q rq+ rq+ rq+ rq+",
        "5/8; x . . . .; 8 r8+ rq+ r8+",
        "6/8; x .; q. rq.+",
        "4/2; x . . .; h rh+ rw+",
        "4/8; x . . .; 8 r8+ rq+",
      },
      delimiter = ';')
  void oneSignForSeveralBeats(String meter, String words, String spelling) {
    String[] parts = meter.split("/", -1);
    Groove groove =
        Sketch.groove("g")
            .meter(Meter.of(Integer.parseInt(parts[0]), Integer.parseInt(parts[1])))
            .part(RIGHT_HAND, "snare", words)
            .done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands())).isEqualTo(spelling);
  }

  /** A roll that no slash can say is written stroke by stroke, two and two. */
  @Test
  void aRollThatIsWrittenOutHasItsHands() {
    // Two in a dotted beat of 6/8: a slash would say three.
    Groove diddle =
        Sketch.groove("g").meter(Meter.of(6, 8)).part(RIGHT_HAND, "snare", "'X/ .").done();
    List<Event.Chord> two = chords(diddle, Voice.HANDS);
    assertThat(two.stream().map(chord -> chord.start().toString())).containsExactly("0", "3/16");
    assertThat(two.stream().map(Event.Chord::sticking)).containsExactly("R", "R");
    assertThat(two.stream().map(chord -> signs(chord.notes().get(0)).strip()))
        .as("grace notes and accent are the first's")
        .containsExactly("accent 1 grace", "");
    Groove open =
        Sketch.groove("g").meter(Meter.of(6, 8)).part(RIGHT_HAND, "snare", "x// .").done();
    List<Event.Chord> four = chords(open, Voice.HANDS);
    assertThat(four.stream().map(chord -> chord.start().toString()))
        .containsExactly("0", "3/32", "3/16", "9/32");
    assertThat(four.stream().map(Event.Chord::sticking)).containsExactly("R", "R", "L", "L");
    java.util.Set<Stroke> changed = java.util.Set.copyOf(open.strokes());
    assertThat(
            Speller.spell(open, changed).bars().get(0).hands().stream()
                .flatMap(event -> event.chord().stream())
                .map(chord -> chord.notes().get(0).changed()))
        .containsExactly(true, true, true, true);
  }
}
