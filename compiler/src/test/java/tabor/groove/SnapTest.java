package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Limb;
import tabor.rhythm.CountNames;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** Swung eighths beside a triplet, in thirds of a beat. */
class SnapTest {
  private static Sketch ride(String words) {
    return Sketch.groove("g")
        .swing(Feel.Unit.EIGHTHS, 62, 100)
        .part(Limb.RIGHT_HAND, "ride", words);
  }

  private static Groove beside(String words) {
    return ride(words).part(Limb.LEFT_HAND, "snare", "xxx . . .").done();
  }

  /** Place and length of each stroke of the ride in the first bar, in beats. */
  private static String shown(Groove groove) {
    return groove.strokes().stream()
        .filter(stroke -> stroke.limb() == Limb.RIGHT_HAND)
        .map(stroke -> stroke.at().times(4) + "+" + stroke.length().times(4))
        .collect(Collectors.joining(" "));
  }

  @ParameterizedTest
  @CsvSource({
    "xx . . .,      0+2/3 2/3+1/3",
    ".x . . .,      2/3+1/3",
    "x. . . .,      0+2/3",
    "x- x . .,      0+1 1+1",
    "{xx}x . . .,   0+1/3 1/3+1/3 2/3+1/3",
    "x{xx} . . .,   0+2/3 2/3+1/6 5/6+1/6",
    "{xxx}x . . .,  0+2/9 2/9+2/9 4/9+2/9 2/3+1/3",
    "xx xx . .,     0+2/3 2/3+1/3 1+1/2 3/2+1/2",
    "xxxx . . .,    0+1/4 1/4+1/4 1/2+1/4 3/4+1/4",
    "x . . .,       0+1",
    "xxxxxx . . .,  0+1/6 1/6+1/6 1/3+1/6 1/2+1/6 2/3+1/6 5/6+1/6",
    "xxx . . .,     0+1/3 1/3+1/3 2/3+1/3",
    "xxxx:2 . .,    0+2/3 2/3+1/3 1+1/2 3/2+1/2",
    "xxx:2 . .,     0+2/3 2/3+2/3 4/3+2/3",
  })
  void wordsOfTwoStandWithTheTriplet(String words, String places) {
    assertThat(shown(beside(words))).isEqualTo(places);
  }

  @Test
  void aHoldEndsWithWhatEndsIt() {
    Groove groove = ride("x -x . .").part(Limb.LEFT_HAND, "snare", ". xxx . .").done();
    assertThat(shown(groove)).isEqualTo("0+5/3 5/3+1/3");
  }

  @Test
  void nothingSnapsWithoutSwungEighthsOrWithoutATriplet() {
    Groove straight =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "ride", "xx . . .")
            .part(Limb.LEFT_HAND, "snare", "xxx . . .")
            .done();
    assertThat(shown(straight)).isEqualTo("0+1/2 1/2+1/2");
    Groove sixteenths =
        Sketch.groove("g")
            .swing(Feel.Unit.SIXTEENTHS, 2, 3)
            .part(Limb.RIGHT_HAND, "ride", "xx . . .")
            .part(Limb.LEFT_HAND, "snare", "xxx . . .")
            .done();
    assertThat(shown(sixteenths)).isEqualTo("0+1/2 1/2+1/2");
    assertThat(shown(ride("xx . . .").done())).isEqualTo("0+1/2 1/2+1/2");
    Groove elsewhere = ride("xx . . .").part(Limb.LEFT_HAND, "snare", ". xxx . .").done();
    assertThat(shown(elsewhere)).isEqualTo("0+1/2 1/2+1/2");
  }

  @Test
  void dottedBeatsDoNotSnap() {
    Groove groove =
        Sketch.groove("g")
            .meter(Meter.of(6, 8))
            .swing(Feel.Unit.EIGHTHS, 2, 3)
            .part(Limb.RIGHT_HAND, "ride", "xx .")
            .part(Limb.LEFT_HAND, "snare", "xxx .")
            .done();
    assertThat(shown(groove)).isEqualTo("0+3/4 3/4+3/4");
  }

  @Test
  void strokesThatMeetAreOneTheLouder() {
    Groove groove = ride(".X . . .").part(Limb.RIGHT_HAND, "ride", "xxx . . .").done();
    assertThat(shown(groove)).isEqualTo("0+1/3 1/3+1/3 2/3+1/3");
    assertThat(groove.strokes().get(2).level()).isEqualTo(Level.ACCENT);
  }

  /** Counted where it is shown, named and edited as it was written. */
  @Test
  void itIsCountedAsTheTripletAndNamedAsItWasWritten() {
    Groove groove = beside("{xx}x . . .");
    Snap snap = Snap.of(groove);
    String counted =
        groove.strokes().stream()
            .filter(stroke -> stroke.limb() == Limb.RIGHT_HAND)
            .map(stroke -> CountNames.of(snap.slot(stroke), groove.meter()).toString())
            .collect(Collectors.joining(" "));
    assertThat(counted).isEqualTo("1 1& 1a");
    String named =
        groove.strokes().stream()
            .filter(stroke -> stroke.limb() == Limb.RIGHT_HAND)
            .map(stroke -> CountNames.of(stroke.slot(), groove.meter()).toString())
            .collect(Collectors.joining(" "));
    assertThat(named).isEqualTo("1 1.1.2 1&");
  }

  @ParameterizedTest
  @CsvSource({
    "xx . . .",
    "{xx}x . . .",
    "x{xx} . . .",
    "{xxx}x . . .",
    "x{x{xx}} . . .",
    "{{xx}xx}x . . .",
    "{xxxx}x . . .",
    "{xxxxxx}x . . .",
    "{x{xx}xx}x . . .",
    "{x{xxx}x}x . . .",
    "{{xx}x}{xx} . . ."
  })
  void theSlotThatItIsCountedInLeadsToItsPlaceAndBack(String words) {
    Groove written = ride(words).done();
    Groove shown = beside(words);
    Snap snap = Snap.of(shown);
    for (int i = 0; i < written.strokes().size(); i++) {
      Stroke was = written.strokes().get(i);
      Stroke is =
          shown.strokes().stream()
              .filter(stroke -> stroke.limb() == Limb.RIGHT_HAND)
              .toList()
              .get(i);
      assertThat(snap.slot(is).place(shown.meter())).isEqualTo(is.at());
      assertThat(snap.slotLength(is)).isEqualTo(is.length());
      assertThat(snap.written(is)).isEqualTo(was);
    }
  }

  @Test
  void aTripletThatComesInAStepChangesNothingElse() {
    Groove base = ride("xx xx . .").done();
    Groove step = ride("xx xx . .").part(Limb.LEFT_HAND, "snare", "xxx . . .").step(base).done();
    Changes changes = Changes.of(step);
    assertThat(changes.text()).isEqualTo("snare: added on 1, 1& and 1a");
    assertThat(changes.strokes()).hasSize(3).isSubsetOf(step.strokes());
    Groove gone = ride("xx xx . .").step(step).done();
    assertThat(Changes.of(gone).text()).isEqualTo("snare: left out");
  }

  @Test
  void whatAStepChangesInASnappedBeatIsFoundAmongItsStrokes() {
    Groove base = beside("xx . . .");
    Groove step = ride("xX . . .").part(Limb.LEFT_HAND, "snare", "xxx . . .").step(base).done();
    Changes changes = Changes.of(step);
    assertThat(changes.text()).isEqualTo("ride: accented on 1&");
    assertThat(changes.strokes())
        .singleElement()
        .satisfies(stroke -> assertThat(stroke.at()).isEqualTo(Time.of(1, 6)));
  }

  @Test
  void theLouderIsKeptWhicheverWasWrittenFirst() {
    Groove groove = ride("xxX . . .").part(Limb.RIGHT_HAND, "ride", ".x . . .").done();
    assertThat(shown(groove)).isEqualTo("0+1/3 1/3+1/3 2/3+1/3");
    assertThat(groove.strokes().get(2).level()).isEqualTo(Level.ACCENT);
  }

  /** What is held into a beat that snaps ends where the stroke that ends it is shown. */
  @Test
  void aHoldOverTheBarLineEndsThereToo() {
    Groove half =
        ride(". . . x | .x . . .").part(Limb.LEFT_HAND, "snare", ". . . . | xxx . . .").done();
    Stroke first = half.strokes().get(0);
    Stroke held = first.moved(1, first.at(), Time.of(3, 8), first.slot());
    Groove over =
        ride(". . . . | .x . . .")
            .part(Limb.LEFT_HAND, "snare", ". . . . | xxx . . .")
            .stroke(held)
            .done();
    assertThat(shown(over)).startsWith("3+5/3 ");
    Groove quarter =
        ride(". . . . | .x . . .")
            .part(Limb.LEFT_HAND, "snare", ". . . . | xxx . . .")
            .stroke(first.moved(1, first.at(), Time.of(5, 16), first.slot()))
            .done();
    assertThat(shown(quarter)).startsWith("3+5/4 ");
  }

  @Test
  void aPlaceIsInsideABeatThatSnapsOrNot() {
    Groove groove =
        ride("x x x x | x xx x x").part(Limb.LEFT_HAND, "snare", ". . . . | . xxx . .").done();
    Snap snap = Snap.of(groove);
    assertThat(snap.isSnapped(2, Time.of(1, 4))).isTrue();
    assertThat(snap.isSnapped(2, Time.of(3, 8))).isTrue();
    assertThat(snap.isSnapped(2, Time.of(1, 2))).isFalse();
    assertThat(snap.isSnapped(1, Time.of(1, 4))).isFalse();
    // A distance of a bar and a beat from the first line.
    assertThat(snap.isSnapped(1, Time.of(5, 4))).isTrue();
    assertThat(Snap.of(ride("xx x x x").done()).isSnapped(1, Time.ZERO)).isFalse();
  }

  /** Only the beats in which a part divides in three snap, also in a word over several. */
  @Test
  void theOtherBeatsOfAWordStay() {
    Groove groove = ride("xxxx:2 xx x").part(Limb.LEFT_HAND, "snare", ". xxx . .").done();
    assertThat(shown(groove)).isEqualTo("0+1/2 1/2+1/2 1+2/3 5/3+1/3 2+1/2 5/2+1/2 3+1");
    Groove triplets = ride("xx xx x x").part(Limb.LEFT_HAND, "snare", "xxxxxx:2 . .").done();
    assertThat(shown(triplets)).isEqualTo("0+2/3 2/3+1/3 1+2/3 5/3+1/3 2+1 3+1");
  }

  @Test
  void theSlotOfAHeldStrokeIsAsLongAsItIsShown() {
    Groove groove = ride("x -x . .").part(Limb.LEFT_HAND, "snare", "xxx xxx . .").done();
    Snap snap = Snap.of(groove);
    Stroke second = groove.strokes().get(groove.strokes().size() - 1);
    assertThat(snap.slotLength(second).times(4)).isEqualTo(Time.of(1, 3));
    Groove even = ride("xx . . .").part(Limb.LEFT_HAND, "snare", "xxx . . .").done();
    Stroke first =
        even.strokes().stream().filter(s -> s.limb() == Limb.RIGHT_HAND).findFirst().orElseThrow();
    assertThat(Snap.of(even).slotLength(first).times(4)).isEqualTo(Time.of(2, 3));
  }
}
