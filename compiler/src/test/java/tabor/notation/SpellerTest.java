package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.notation.Event.Chord;
import tabor.notation.Note.Hihat;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** Spellings bar by bar, each read against the rules of docs/spelling.md. */
class SpellerTest {
  private static final Meter SIX_EIGHT = Meter.of(6, 8);
  private static final Meter IN_TWO = new Meter(4, 4, List.of(Time.of(1, 2), Time.of(1, 2)));

  private static String hands(Meter meter, String words) {
    Groove groove = Sketch.groove("g").meter(meter).part(RIGHT_HAND, "snare", words).done();
    return Speller.spell(groove).bars().stream()
        .map(bar -> ScoreText.events(bar.hands()))
        .collect(Collectors.joining(" | "));
  }

  @ParameterizedTest
  @CsvSource({
    "x x x x, q q q q",
    "x . . ., q rq+ rh+",
    ". . x ., rh+ q rq+",
    ". x . x, rq+ q rq+ q",
    "xxxx x.xx x..x xx.x, 16(( 16-- 16-- 16)) 8( 16-( 16)) 8.( 16)< 16(> 8- 16)<",
    "xxx. .xx. ..x. ...x, 16(( 16-) 8) r16+ 16(> 8) r8+ 8 r8.+ 16",
    "x......x . . ., 8.( r32+ 32)<< rq+ rh+",
    "xxxxxxxx . . ., 32((( 32--- 32--- 32-)) 32-(( 32--- 32--- 32))) rq+ rh+",
  })
  void plainBeatsNeedNoTuplet(String words, String spelling) {
    assertThat(hands(Meter.COMMON, words)).isEqualTo(spelling);
  }

  @ParameterizedTest
  @CsvSource({
    "xxx xxx, 8( 8- 8) 8( 8- 8)",
    "x.x .x., q 8 r8+ q",
    "x . , q. rq.+",
    "xxxxxx x....x, 16(( 16-- 16-- 16-- 16-- 16)) q r16+ 16",
    "xx xxxx, 2:3[ 8( 8) ] 4:3[ 8( 8- 8- 8) ]",
    "xxxxx x, 5:3[ 8( 8- 8- 8- 8) ] q.",
    "xxx:2, q q q",
    "xxxx:2, 2:3[ 8( 8) ] 2:3[ 8( 8) ]",
  })
  void dottedBeatsFallIntoThree(String words, String spelling) {
    assertThat(hands(SIX_EIGHT, words)).isEqualTo(spelling);
  }

  @ParameterizedTest
  @CsvSource({
    "xxx x.x xx. .xx, 3:2[ 8( 8- 8) ] *3:2[ q 8 ] *3:2[ 8 q ] *3:2[ r8+ 8( 8) ]",
    "xxxxx . . ., 5:4[ 16(( 16-- 16-- 16-- 16)) ] rq+ rh+",
    "xxxxxx . . ., 6:4[ 16(( 16-- 16-- 16-- 16-- 16)) ] rq+ rh+",
    "xxx:2 xxxxx:2, *3:2[ q q q ] 5:4[ 8( 8- 8- 8- 8) ]",
    "xxxxxx:2 . ., 3:2[ 8( 8- 8) ] 3:2[ 8( 8- 8) ] rh+",
    "xxx:4, *3:2[ h h h ]",
    "x:2 xx:2, h q q",
  })
  void otherDivisionsAreTuplets(String words, String spelling) {
    assertThat(hands(Meter.COMMON, words)).isEqualTo(spelling);
  }

  @Test
  void halvesOverThreePlainBeatsAreDotted() {
    assertThat(hands(Meter.of(3, 4), "xx:3 | xxxx:3 | x:3"))
        .isEqualTo("q. q. | 8.( 8.- 8.- 8.) | h.");
  }

  @ParameterizedTest
  @CsvSource({
    "7, 4", "9, 8", "10, 8", "11, 8", "12, 8", "13, 8", "15, 8", "17, 16",
  })
  void tupletsHaveTheirUsualNumber(int strokes, long normal) {
    Score score =
        Speller.spell(
            Sketch.groove("g").part(RIGHT_HAND, "snare", "x".repeat(strokes) + " x x x").done());
    Tuplet tuplet = score.bars().get(0).hands().get(0).tuplets().get(0).tuplet();
    assertThat(tuplet.actual()).isEqualTo(strokes);
    assertThat(tuplet.normal()).isEqualTo(normal);
  }

  /** A hook points into the innermost tuplet that it stands in. */
  @ParameterizedTest
  @CsvSource({
    "{{xxx}{xx}x}x . . .",
    "x{x{xxx}x} . . .",
    "x{x.x} x{x.x} . .",
  })
  void hooksPointInside(String words) {
    Groove groove = Sketch.groove("g").part(RIGHT_HAND, "snare", words).done();
    List<Event> events = Speller.spell(groove).bars().get(0).hands();
    for (int i = 0; i < events.size(); i++) {
      List<TupletPlace> tuplets = events.get(i).tuplets();
      if (events.get(i).chord().isEmpty() || tuplets.isEmpty()) {
        continue;
      }
      TupletPlace inner = tuplets.get(tuplets.size() - 1);
      for (Beam beam : events.get(i).chord().get().beams()) {
        if (beam == Beam.FORWARD_HOOK) {
          assertThat(inner.last()).as("%d of %s", i, words).isFalse();
        } else if (beam == Beam.BACKWARD_HOOK) {
          assertThat(inner.first()).as("%d of %s", i, words).isFalse();
        }
      }
    }
  }

  @Test
  void likeCellsHaveLikeHooks() {
    String[] cells = hands(Meter.COMMON, "{{xxx}{xx}x}x {{xxx}{xx}x}x . .").split("rh", -1);
    String both = cells[0].strip();
    assertThat(both.substring(0, both.length() / 2).strip())
        .isEqualTo(both.substring(both.length() / 2).strip());
    assertThat(both).contains("<").doesNotContain(">");
  }

  @Test
  void eachDivisionOfABeatHasItsOwnCounts() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "xxx x x x")
            .part(RIGHT_FOOT, "kick", "xxxx x x x")
            .done();
    List<java.util.Map<Time, String>> rows = Speller.spell(groove).bars().get(0).counts();
    assertThat(rows).hasSize(2);
    assertThat(String.join(" ", rows.get(0).values())).isEqualTo("1 & a 2 3 4");
    assertThat(String.join(" ", rows.get(1).values())).isEqualTo("1 e & a");
  }

  @Test
  void divisionsThatAgreeShareARowOfCounts() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "xx xxxx x .x")
            .part(RIGHT_FOOT, "kick", "xxxx x.x. x x")
            .done();
    List<java.util.Map<Time, String>> rows = Speller.spell(groove).bars().get(0).counts();
    assertThat(rows).hasSize(1);
    assertThat(String.join(" ", rows.get(0).values())).isEqualTo("1 e & a 2 e & a 3 4 &");
  }

  @ParameterizedTest
  @CsvSource({
    "x{xxx} . . ., 8( 3:2[ 16-( 16-- 16)) ] rq+ rh+",
    "{xxx}{xxx} . . ., 3:2[ 16(( 16-- 16-) ] 3:2[ 16-( 16-- 16)) ] rq+ rh+",
    "{xx}{xx} . . ., 16(( 16-- 16-- 16)) rq+ rh+",
    "{xx}{xx}{xx} . . ., 3:2[ 16(( 16-) 16-( 16-) 16-( 16)) ] rq+ rh+",
    "x{xxx}x . . ., *3:2[ 8( 3:2[ 16-( 16-- 16-) ] 8) ] rq+ rh+",
    "x{x{xx}}x . . ., 3:2[ 8( 16-> 32-(( 32-)) 8) ] rq+ rh+",
    "x{xxxxx}x . . ., *3:2[ 8( 5:4[ 32-(( 32--- 32--- 32--- 32-)) ] 8) ] rq+ rh+",
  })
  void groupsNest(String words, String spelling) {
    assertThat(hands(Meter.COMMON, words)).isEqualTo(spelling);
  }

  @ParameterizedTest
  @CsvSource({
    "x . x~ -, q rq+ h",
    "x x~ - -, q q ~h",
    "x~ - - -, w",
    "x~... . . x~.x~., 16 r16+ r8+ rq+ rq+ 16(( r16+ 16)) r16+",
    ". . . x~ | - . . ., rh+ rq+ q | ~q rq+ rh+",
    ". . x~ -.x, rh+ q *3:2[ ~8( r8+ 8) ]",
  })
  void rollsLastAsLongAsTheyRoll(String words, String spelling) {
    assertThat(hands(Meter.COMMON, words)).isEqualTo(spelling);
  }

  @Test
  void heldCymbalsAreWrittenAsLongAsTheyAreHeld() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "crash", "x - . x- | - - - - | x-.. . x -")
            .part(LEFT_HAND, "snare", ". . . . | . . . . | . . . .x")
            .part(RIGHT_FOOT, "kick", "x - . . | . . . . | . . . .")
            .done();
    assertThat(
            Speller.spell(groove).bars().stream()
                .map(bar -> ScoreText.events(bar.hands()))
                .toList())
        .containsExactly("h rq q", "~w", "q rq q ~8( 8)");
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).feet())).isEqualTo("q rq rh");
  }

  @ParameterizedTest
  @CsvSource({
    "xxxx xxxxxxxx, 8( 8- 8- 8) 16(( 16-- 16-- 16-) 16-( 16-- 16-- 16))",
    "x..x..x. xxx, 8.( 8.- 8) *3:2[ q q q ]",
    ".x x, rq+ q h",
  })
  void halfNoteBeats(String words, String spelling) {
    assertThat(hands(IN_TWO, words)).isEqualTo(spelling);
  }

  @Test
  void unequalAndShortBeats() {
    Meter grouped = new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));
    assertThat(hands(grouped, "xx xx xxx | x . . | . xxx xx"))
        .isEqualTo("8( 8) 8( 8) 8( 8- 8) | q rq+ rq.+ | rq+ 3:2[ 8( 8- 8) ] 2:3[ 8( 8) ]");
    assertThat(hands(Meter.of(7, 8), "x x x x x x x")).isEqualTo("8( 8) 8( 8) 8( 8- 8)");
    assertThat(hands(Meter.of(5, 8), "x xx x x x")).isEqualTo("8( 16-( 16)) 8( 8- 8)");
    Meter inSix = new Meter(6, 8, Collections.nCopies(6, Time.of(1, 8)));
    assertThat(hands(inSix, "x xx x . . x")).isEqualTo("8( 16-( 16-) 8) r8+ r8+ 8");
  }

  @Test
  void differentDivisionsOfOneBeatMeetOnTheirLeastCommonGrid() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "ride", "xxx xxx . x")
            .part(LEFT_HAND, "snare", "xxxx xx . x.x.")
            .done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands()))
        .isEqualTo("12:8[ 16.(( 32--< 16-- 16-- 32--> 16.)) ] 6:4[ 8( 16-( 16-) 8) ] rq+ 8( 8)");
  }

  @Test
  void aCoarserStrokeLeavesATupletAlone() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "ride", "xxx . . .")
            .part(LEFT_HAND, "snare", "x . . .")
            .done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands()))
        .isEqualTo("3:2[ 8( 8- 8) ] rq+ rh+");
  }

  @Test
  void aSpanThatMeetsTheBeatBetweenFallsIntoBeats() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "ride", "xxx:2 . .")
            .part(LEFT_HAND, "snare", ". x . .")
            .done();
    assertThat(ScoreText.events(Speller.spell(groove).bars().get(0).hands()))
        .isEqualTo("*3:2[ q 8 ] *3:2[ 8 q ] rh+");
  }

  @Test
  void restsAreSharedWhereBothVoicesRest() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "x . x . | x x x x | . . . .")
            .part(RIGHT_FOOT, "kick", "x . . x | . . . . | . . . .")
            .done();
    assertThat(ScoreText.of(Speller.spell(groove)))
        .isEqualTo(
            """
            1 hands q rq+ q rq
            1 feet  q rq? rq q
            2 hands q q q q
            2 feet  R
            3 hands R+
            3 feet  R?
            """);
  }

  @Test
  void pickupsStartWhereTheirBeatsStand() {
    Score score =
        Speller.spell(
            Sketch.groove("g").pickup(2).part(RIGHT_HAND, "snare", ". .x | x . . .").done());
    Bar pickup = score.bars().get(0);
    assertThat(pickup.isPickup()).isTrue();
    assertThat(pickup.start()).isEqualTo(Time.of(1, 2));
    assertThat(pickup.length()).isEqualTo(Time.of(1, 2));
    assertThat(ScoreText.events(pickup.hands())).isEqualTo("rq+ r8+ 8");
    assertThat(pickup.hands().get(2).start()).isEqualTo(Time.of(7, 8));
    assertThat(score.bars()).hasSize(2);
  }

  @Test
  void hihatSignsStandWhereTheEarNeedsThem() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "hihat", "xx .x xx .x")
            .part(LEFT_HAND, "hihat.open", ". x . x")
            .part(LEFT_FOOT, "hihat.foot", "x . . .x")
            .done();
    List<Hihat> signs =
        chords(Speller.spell(groove)).stream().map(chord -> chord.notes().get(0).hihat()).toList();
    assertThat(signs)
        .containsExactly(
            Hihat.NONE,
            Hihat.NONE,
            Hihat.OPEN,
            Hihat.CLOSED,
            Hihat.NONE,
            Hihat.NONE,
            Hihat.OPEN,
            Hihat.NONE);
  }

  @Test
  void countsAndStickingsFollowTheStrokes() {
    Score score =
        Speller.spell(
            Sketch.groove("g")
                .part(RIGHT_HAND, "ride", "x.x. xxx xx xxxxx")
                .part(LEFT_HAND, "snare", ".x.. . x .")
                .part(RIGHT_FOOT, "kick", "x .x . .")
                .done());
    assertThat(chords(score).stream().map(Chord::count))
        .containsExactly("1", "e", "&", "2", "&", "a", "3", "&", "4", "", "", "", "");
    assertThat(chords(score).stream().map(Chord::sticking))
        .containsExactly("R", "L", "R", "R", "R", "R", "B", "R", "R", "R", "R", "R", "R");
    List<String> below =
        score.bars().get(0).feet().stream()
            .flatMap(event -> event.chord().stream())
            .map(chord -> chord.count() + "/" + chord.sticking())
            .toList();
    assertThat(below).containsExactly("/", "&/");
  }

  @Test
  void feetAreNamedWhereTheyDoNotPlayTheirOwnPedals() {
    Score score =
        Speller.spell(
            Sketch.groove("g")
                .part(RIGHT_FOOT, "kick", "x. x. . .")
                .part(LEFT_FOOT, "kick", ".x .x . .")
                .done());
    assertThat(
            score.bars().get(0).feet().stream()
                .flatMap(event -> event.chord().stream())
                .map(Chord::sticking))
        .containsExactly("R", "L", "R", "L");
  }

  @Test
  void slashesSayHowFastAMeasuredRollIs() {
    Score score =
        Speller.spell(
            Sketch.groove("g").part(RIGHT_HAND, "snare", "x/x// x/x/x/x/ x// x/xx").done());
    assertThat(
            chords(score).stream()
                .map(chord -> chord.written().type().flags() + chord.notes().get(0).slashes()))
        // an eighth in two is sixteenths, in four thirty-seconds; a quarter in four sixteenths
        .containsExactly(2, 3, 3, 3, 3, 3, 2, 2, 1, 1);
  }

  @Test
  void bothHandsOnOneSurfaceShareAHead() {
    Groove groove =
        Sketch.groove("g")
            .part(RIGHT_HAND, "snare", "X . . .")
            .part(LEFT_HAND, "snare", "x . . .")
            .part(LEFT_HAND, "floor", ". x . .")
            .done();
    Set<Stroke> changed = Set.of(groove.strokes().get(2));
    List<Chord> chords = chords(Speller.spell(groove, changed));
    assertThat(chords.get(0).notes()).hasSize(1);
    Note both = chords.get(0).notes().get(0);
    assertThat(both.strokes()).hasSize(2);
    assertThat(both.accent()).isTrue();
    assertThat(both.changed()).isFalse();
    assertThat(chords.get(1).notes().get(0).changed()).isTrue();
  }

  private static List<Chord> chords(Score score) {
    return score.bars().stream()
        .flatMap(bar -> bar.hands().stream())
        .flatMap(event -> event.chord().stream())
        .toList();
  }
}
