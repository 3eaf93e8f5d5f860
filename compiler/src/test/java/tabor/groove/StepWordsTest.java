package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/**
 * What a step changed, in the words that a teacher would say it with; each pair of sections is
 * compared as it stands, whatever edits led from one to the other.
 */
class StepWordsTest {
  /** Parts as {@code limb surface: words; …}, limbs by {@code R L} for hands, {@code r l} feet. */
  private static Sketch sketch(String parts) {
    Sketch sketch = Sketch.groove("g");
    for (String part : parts.strip().split(" *; *", -1)) {
      String[] halves = part.split(": *", 2);
      String[] who = halves[0].split(" ", -1);
      Limb limb =
          switch (who[0]) {
            case "R" -> Limb.RIGHT_HAND;
            case "L" -> Limb.LEFT_HAND;
            case "r" -> Limb.RIGHT_FOOT;
            default -> Limb.LEFT_FOOT;
          };
      sketch.part(limb, who[1], halves[1]);
    }
    return sketch;
  }

  private static Changes changes(String was, String is) {
    return Changes.of(sketch(is).step(sketch(was).done()).done());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '#',
      value = {
        // where a limb plays
        "R hihat: x x x x          # R ride: x x x x         # right hand: now on the ride",
        "R hihat: x . x .; R floor: . x . x # R ride: x . x .; R floor: . x . x #"
            + " right hand: from the hi-hat to the ride",
        "R hihat: x . x .; R floor: . x . x # R ride: x . . .; R hihat: . . x .; R floor: . x . x #"
            + " right hand: to the ride on 1",
        "R hihat: x . x .; R tom1: . x . .; R floor: . . . x # R ride: x x x .; R floor: . . . x #"
            + " right hand: from the hi-hat and from the first tom to the ride",
        "R hihat: x x x x          # R ride: X X X X         # right hand: now on the ride,"
            + " accented",
        "R hihat: X X X X          # R ride: x x x x         # right hand: now on the ride",
        "R hihat: x x x x          # R ride: X x X x         # ride: accented on 1 and 3;"
            + " right hand: now on the ride",
        "R hihat: x x x x          # R hihat.open: x x x x   # hi-hat: now open",
        "R hihat: x x x x          # R hihat: x x x .; R hihat.open: . . . x # hi-hat: open on 4",
        // levels and ornaments
        "L snare: x x x x          # L snare: x x x g        # snare: ghosted on 4",
        "L snare: X X X X          # L snare: x x x x        # everything: plain",
        "L snare: X x X x; r kick: x x x x # L snare: X x x x; r kick: x x x x # snare: plain on 3",
        "L snare: 'x x 'x .        # L snare: 'x x x .       # snare: no flam on 3",
        "L snare: 'x . 'x .        # L snare: x . x .        # everything: no flam any more",
        "L snare: 'x x x .         # L snare: ''x x x .      # snare: drag on 1",
        "L snare: x x x .; r kick: x x . . # L snare: 'x 'x 'x .; r kick: x x . . #"
            + " snare: now with flams",
        "L snare: x/ x . .         # L snare: x~ x . .       # snare: buzzed on 1",
        "R hihat: x x x x; L snare: x x x x; r kick: x x . . #"
            + " R hihat: X X X X; L snare: X X X X; r kick: x x . . # hands: accented",
        "R hihat: x x x x; r kick: x x . .; l hihat.foot: . . x x #"
            + " R hihat: x x x x; r kick: X X . .; l hihat.foot: . . X X # feet: accented",
        "R hihat: x . x .; R tom1: . x . x; L snare: xx . xx . #"
            + " R hihat: X . X .; R tom1: . X . X; L snare: xx . xx . # right hand: accented",
        "R hihat: x. x. x. x.; L hihat: .x .x .x .x; r kick: x . . . #"
            + " R hihat: X. X. X. X.; L hihat: .x .x .x .x; r kick: x . . . # right hand: accented",
        "R hihat: x. . . .; L hihat: .x .x .x .x; r kick: x . . . #"
            + " R hihat: X. . . .; L hihat: .x .x .x .x; r kick: x . . . # hi-hat: accented on 1",
        "R hihat: x x x x; r kick: x . . . # R hihat: X X X X; r kick: X . . . #"
            + " everything: accented",
        // hands and feet
        "L snare: x x x x; R ride: xx xx . . # R snare: x x x x; R ride: .x .x . .; L ride: x. x. ."
            + " .# hands: the snare goes to the right, the ride goes to the left on 1 and 2",
        "L snare: x x x x          # L snare: x x x .; R snare: . . . X # hands: the snare goes to"
            + " the right on 4; snare: accented on 4",
        "r kick: x . x .; R ride: x x x x # l kick: x . x .; R ride: x x x x #"
            + " feet: the kick goes to the left",
        // other places
        "r kick: x . x .; R ride: x x x x # r kick: x . . x; R ride: x x x x # kick: from 3 to 4",
        "r kick: x . x . | x . x .; R ride: x x x x | x x x x #"
            + " r kick: x . x . | x . . x; R ride: x x x x | x x x x # kick: from 3 to 4 in bar 2",
        "r kick: x . x . | x . . .; R ride: x x x x | x x x x #"
            + " r kick: x . . . | x . . x; R ride: x x x x | x x x x #"
            + " kick: added on 4 in bar 2, left out on 3 in bar 1",
        "L snare: x x . .; R ride: x x x x # L snare: {xx} x . .; R ride: x x x x # snare: doubled"
            + " on 1",
        "L snare: x x . .; R ride: x x x x # L snare: {xxx} x . .; R ride: x x x x # snare: tripled"
            + " on 1",
        "L snare: x x . .; R ride: x x x x # L snare: {xxxx} x . .; R ride: x x x x #"
            + " snare: added on 1.1.2, 1.1.3 and 1.1.4",
        "L snare: x x . .; R ride: x x x x # L snare: x x g g; R ride: x x x x #"
            + " snare: added ghosted on 3 and 4",
        "L snare: x x . .; R ride: x x x x # L snare: x x g x; R ride: x x x x #"
            + " snare: added on 3 and 4",
        "L snare: x x x .; R ride: x x x x # L snare: x x . .; R ride: x x x x # snare: left out on"
            + " 3",
        "L snare: x x x .; R ride: x x x x # R ride: x x x x # snare: left out",
        // a part that turns
        "L snare: x . . xx         # L snare: xx x . .       # everything: moved a beat later",
        "L snare: x . . xx         # L snare: . xx x .       # everything: moved 2 beats later",
        "L snare: x . . xx         # L snare: . . xx x       # everything: moved a beat earlier",
        "R ride: x x x x; L snare: x . . xx # R ride: x x x x; L snare: .x . . .x #"
            + " snare: added on 1&, left out on 1 and 4",
        "R ride: x x . x; L snare: x . . .x; r kick: . . x . #"
            + " R ride: .x .x . .x; L snare: xx . . .; r kick: . . x . #"
            + " hands: moved an eighth later",
        "R ride: xx xx xx xx; r kick: x . .x .; l hihat.foot: . x . . #"
            + " R ride: xx xx xx xx; r kick: . x . .x; l hihat.foot: . . x . #"
            + " feet: moved a beat later",
        "R ride: x . .x .; L snare: . x . x; r kick: x . . . # R ride: . x . .x; L snare: . x . x;"
            + " r kick: x . . . # right hand: moved a beat later",
        "R tom1: x . .x .; L tom1: . x . x; R ride: . . x .; r kick: x . . . #"
            + " R tom1: . x . .x; L tom1: x . x .; R ride: . . x .; r kick: x . . . #"
            + " first tom: moved a beat later",
        "L snare: x . .x . | x x . . # L snare: x x . . | x . .x . # everything: moved a bar later",
        "L snare: x... .... .... .x.. # L snare: ...x .... .... ...x #"
            + " snare: added on 1a and 4a, left out on 1 and 4e",
        "L snare: x... .... .... ..x. # L snare: ...x .... .... ...x #"
            + " snare: added on 1a and 4a, left out on 1 and 4&",
        "R ride: xx xx xx xx; L snare: . x . x; r kick: x . x . #"
            + " R ride: xx xx xx xx; L snare: . .x . .x; r kick: .x . .x . #"
            + " everything: moved an eighth later",
        "R ride: x x x x; L snare: x . . . # R ride: x x x x; L snare: . x x . #"
            + " snare: added on 2 and 3, left out on 1",
        "R ride: x x . .; L snare: . . x . # R tom1: . . x .; L tom2: . . . x #"
            + " ride and snare: left out; first tom: added on 3; second tom: added on 4",
        "L snare: x... .x.. .... .... # L snare: ...x .... x... .... #"
            + " everything: moved 3 sixteenths later",
        "R ride: x x x x; L snare: . x . . # R ride: x x x x; L snare: . . x . # snare: from 2 to"
            + " 3",
        "R ride: xx x x x; L snare: . x . x # L ride: xx x x x; R snare: . x . x #"
            + " hands: right and left exchanged",
      })
  void saysWhatATeacherWould(String was, String is, String words) {
    assertThat(sorted(changes(was, is).text())).isEqualTo(sorted(words));
  }

  private static String sorted(String words) {
    return String.join("; ", new TreeSet<>(List.of(words.split("; ", -1))));
  }

  @Test
  void strokesThatChangedAreMarkedAndOthersAreNot() {
    Changes moved = changes("R hihat: x x x x", "R hihat: x x . x; R ride: . . x .");
    assertThat(moved.strokes())
        .singleElement()
        .satisfies(stroke -> assertThat(stroke.surface().name()).isEqualTo("ride"))
        .satisfies(stroke -> assertThat(moved.strokes().contains(stroke)).isTrue());
    Changes hands = changes("L snare: x x x x", "R snare: x x x .; R snare: . . . X");
    assertThat(hands.strokes())
        .singleElement()
        .satisfies(stroke -> assertThat(stroke.level()).isEqualTo(Level.ACCENT));
    Groove step = sketch("R hihat: x x x x").done();
    assertThat(Changes.of(step).strokes().contains(step.strokes().get(0))).isFalse();
    assertThat(step.isStep()).isFalse();
    assertThat(sketch("R hihat: x").step(step).done().isStep()).isTrue();
  }

  /** A roll that lasts longer is another roll; a plain stroke sounds the same however long. */
  @Test
  void onlyTheLengthOfARollIsHeard() {
    assertThat(changes("L snare: x// . . .", "L snare: x// - . .").strokes()).hasSize(1);
    assertThat(changes("L snare: x . . .", "L snare: x - . .").strokes()).isEmpty();
    assertThat(changes("L snare: x// . . .", "L snare: x// . . .").strokes()).isEmpty();
  }

  @Test
  void aLongerStepGoesOnAsTheBaseDid() {
    String two = "L snare: x . . . | . x . .";
    assertThat(changes(two, two + " | x . . . | . x . .").text()).isEqualTo("now 4 bars");
    assertThat(changes(two, two + " | x . . . | . . x .").words())
        .containsExactly("now 4 bars", "snare: from 2 to 3 in bar 4");
    assertThat(changes(two, "L snare: x . . .").text()).isEqualTo("now 1 bar");
  }

  @Test
  void aBarThatIsAnotherMusicIsOnlyNamed() {
    String time = "R ride: xx xx xx xx";
    Changes fill =
        changes(
            time + " | xx xx xx xx",
            time + " | xx . . .; R tom1: . | . xx . .; R floor: . | . . xx xx; L snare: . | . xx");
    assertThat(fill.words()).containsExactly("bar 2: new from 2 on");
    // Fewer than half of many: told one by one.
    Changes some =
        changes(
            "R ride: xxxx xxxx xxxx xxxx | xxxx xxxx xxxx xxxx",
            "R ride: xxxx xxxx xxxx xxxx | xxxx xxxx xxxx xxxx; r kick: . . . . | xx xx x .");
    assertThat(some.words()).containsExactly("kick: added on 1, 1&, 2, 2& and 3 in bar 2");
    Changes gone = changes(time + " | " + "xx xx xx xx", time + " | xx x . .");
    assertThat(gone.words()).containsExactly("ride: left out on 2&, 3, 3&, 4 and 4& in bar 2");
    assertThat(gone.gone()).isEqualTo(5);
  }

  @Test
  void whatConcernsTheWholeSectionComesFirst() {
    Groove swung = Sketch.groove("g").swing(Feel.Unit.EIGHTHS, 2, 3).tempo(90).bars(2).done();
    Groove straight = Sketch.groove("g").tempo(100).bars(2).step(swung).done();
    assertThat(Changes.of(straight).words()).containsExactly("tempo now 100", "straight again");
    assertThat(Changes.of(Sketch.groove("g").bars(2).step(straight).done()).words())
        .containsExactly("tempo now 90");
    Groove loud =
        Sketch.groove("g")
            .tempo(100)
            .bars(2)
            .mark(2, Time.ZERO, Loudness.F)
            .hairpin(new Loudness.Hairpin(true, 1, Time.ZERO, 2, Time.ZERO, Loudness.F))
            .hairpin(new Loudness.Hairpin(false, 2, Time.ZERO, 2, Time.of(1, 2), Loudness.P))
            .step(straight)
            .done();
    assertThat(Changes.of(loud).words())
        .containsExactly(
            "f in bar 2", "crescendo to f from bar 1 to 2", "diminuendo to p in bar 2");
    assertThat(Changes.of(likeLoud(loud)).words()).isEmpty();
    Groove one = Sketch.groove("g").mark(1, Time.ZERO, Loudness.PP).step(bare()).done();
    assertThat(Changes.of(one).words()).containsExactly("pp");
  }

  private static Groove bare() {
    return Sketch.groove("g").done();
  }

  private static Groove likeLoud(Groove loud) {
    Sketch same = Sketch.groove("g").tempo(100).bars(2).step(loud);
    loud.marks().forEach(mark -> same.mark(mark.bar(), mark.at(), mark.loudness()));
    loud.hairpins().forEach(same::hairpin);
    return same.done();
  }

  @Test
  void beatsThatAreUnequalAreNotCounted() {
    Meter seven = new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));
    Groove base = sketch("L snare: xx . .").meter(seven).done();
    assertThat(base.meter()).isEqualTo(seven);
    Groove was = Sketch.groove("g").meter(seven).part(Limb.LEFT_HAND, "snare", "xx . .").done();
    Groove is =
        Sketch.groove("g").meter(seven).part(Limb.LEFT_HAND, "snare", ". xx .").step(was).done();
    assertThat(Changes.of(is).text()).isEqualTo("everything: moved a quarter later");
  }

  @Test
  void anotherPlayerOrKitIsSaid() {
    Groove base = sketch("R ride: x x x x; L tom2: . x . x").done();
    Groove step =
        Sketch.groove("g")
            .kit(Kits.named("four-piece").orElseThrow())
            .part(Limb.RIGHT_HAND, "ride", "x x x x")
            .part(Limb.LEFT_HAND, "floor", ". x . x")
            .step(base)
            .done();
    assertThat(Changes.of(step).words()).containsExactly("on the four-piece kit");
  }

  @Test
  void aSectionIsCalledByItsTitle() {
    assertThat(Sketch.groove("slow").done().caption()).isEqualTo("slow");
    assertThat(Sketch.groove("slow").title(" ").done().caption()).isEqualTo("slow");
    assertThat(Sketch.groove("slow").title("Slow and steady").done().caption())
        .isEqualTo("Slow and steady");
  }

  @Test
  void tooManyPlacesAreCounted() {
    Changes added =
        Changes.of(
            sketch("L snare: x.x. xx.. x..x .x..; R ride: x x x x")
                .step(sketch("R ride: x x x x").done())
                .done());
    assertThat(added.text()).isEqualTo("snare: added in 7 places");
  }
}
