package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
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
class ChangeWordsTest {
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
            + " right hand: from the hi-hat and first tom to the ride",
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
        .satisfies(stroke -> assertThat(moved.isChanged(stroke)).isTrue());
    Changes hands = changes("L snare: x x x x", "R snare: x x x .; R snare: . . . X");
    assertThat(hands.strokes())
        .singleElement()
        .satisfies(stroke -> assertThat(stroke.level()).isEqualTo(Level.ACCENT));
    Groove step = sketch("R hihat: x x x x").done();
    assertThat(Changes.of(step).isChanged(step.strokes().get(0))).isFalse();
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

  // Places in words, read back.

  @Provide
  Arbitrary<List<List<Integer>>> places() {
    Arbitrary<List<Integer>> bar =
        Arbitraries.integers()
            .between(0, 15)
            .set()
            .ofMaxSize(4)
            .map(s -> List.copyOf(new TreeSet<>(s)));
    Arbitrary<List<Integer>> beats = Arbitraries.of(List.of(0, 4, 8, 12), List.of(2, 6, 10, 14));
    // Few different bars, so that some are alike.
    return Arbitraries.oneOf(bar, beats)
        .list()
        .ofSize(2)
        .flatMap(
            two ->
                Arbitraries.of(List.<List<Integer>>of(List.of(), two.get(0), two.get(1)))
                    .list()
                    .ofMinSize(1)
                    .ofMaxSize(12));
  }

  @Property
  void placesInWordsLeadBackToThem(@ForAll("places") List<List<Integer>> bars) {
    Sketch sketch = Sketch.groove("g").bars(bars.size());
    TreeSet<String> there = new TreeSet<>();
    for (int bar = 1; bar <= bars.size(); bar++) {
      for (int at : bars.get(bar - 1)) {
        char[] word = "....".toCharArray();
        word[at % 4] = 'x';
        sketch.word(bar, at / 4, Limb.LEFT_HAND, "snare", new String(word));
        there.add(bar + ":" + at);
      }
    }
    if (there.isEmpty()) {
      return;
    }
    Groove groove = sketch.done();
    PlaceWords.of(groove, groove.strokes())
        .filter(words -> !words.matches(".* in \\d+ bars.*"))
        .ifPresent(words -> assertThat(read(words, bars.size())).as(words).isEqualTo(there));
  }

  /** Reads {@code on every beat and &, 1e and 2e in bars 2 to 4, on 3 in bar 1}. */
  private static TreeSet<String> read(String words, int all) {
    TreeSet<String> places = new TreeSet<>();
    for (String phrase : words.split("(^|, )on ", -1)) {
      if (phrase.isEmpty()) {
        continue;
      }
      String[] halves = phrase.split(" in ", 2);
      List<Integer> bars = bars(halves.length == 1 ? "" : halves[1], all);
      boolean every = false;
      for (String count : halves[0].split(", | and ", -1)) {
        if (count.startsWith("every ")) {
          every = true;
        }
        String name = count.replace("every ", "");
        boolean numbered = Character.isDigit(name.charAt(0));
        every &= !numbered;
        String syllable = numbered ? name.substring(1) : name.replace("beat", "");
        int in = Arrays.asList("", "e", "&", "a").indexOf(syllable);
        for (int beat = 0; beat < 4; beat++) {
          if (every || name.charAt(0) - '1' == beat) {
            for (int bar : bars) {
              places.add(bar + ":" + (beat * 4 + in));
            }
          }
        }
      }
    }
    return places;
  }

  private static List<Integer> bars(String words, int all) {
    List<Integer> bars = new ArrayList<>();
    if (words.startsWith("every ")) {
      int step = Integer.parseInt(words.replaceAll("\\D", ""));
      assertThat(words).isEqualTo("every " + ordinal(step) + " bar");
      for (int bar = step; bar <= all; bar += step) {
        bars.add(bar);
      }
    } else if (words.contains(" to ")) {
      String[] ends = words.replace("bars ", "").split(" to ", -1);
      for (int bar = Integer.parseInt(ends[0]); bar <= Integer.parseInt(ends[1]); bar++) {
        bars.add(bar);
      }
    } else if (words.isEmpty()) {
      for (int bar = 1; bar <= all; bar++) {
        bars.add(bar);
      }
    } else {
      for (String bar : words.replaceFirst("bars? ", "").split(", | and ", -1)) {
        bars.add(Integer.valueOf(bar));
      }
    }
    return bars;
  }

  private static String ordinal(int n) {
    return switch (n) {
      case 2 -> "2nd";
      case 3 -> "3rd";
      default -> n + "th";
    };
  }

  /** The places of one stroke on 1 in each of these bars. */
  private static String inBars(int all, int... bars) {
    Sketch sketch = Sketch.groove("g").bars(all);
    for (int bar : bars) {
      sketch.word(bar, 0, Limb.LEFT_HAND, "snare", "x");
    }
    Groove groove = sketch.done();
    return PlaceWords.of(groove, groove.strokes()).orElse("too many");
  }

  @Test
  void barsAreNamedShortly() {
    assertThat(inBars(12, 4, 8, 12)).isEqualTo("on 1 in every 4th bar");
    assertThat(inBars(14, 4, 8, 12)).isEqualTo("on 1 in every 4th bar");
    assertThat(inBars(16, 4, 8, 12)).isEqualTo("on 1 in bars 4, 8 and 12");
    assertThat(inBars(12, 4, 8)).isEqualTo("on 1 in bars 4 and 8");
    assertThat(inBars(6, 2, 4, 6)).isEqualTo("on 1 in every 2nd bar");
    assertThat(inBars(63, 21, 42, 63)).isEqualTo("on 1 in every 21st bar");
    assertThat(inBars(66, 22, 44, 66)).isEqualTo("on 1 in every 22nd bar");
    assertThat(inBars(69, 23, 46, 69)).isEqualTo("on 1 in every 23rd bar");
    assertThat(inBars(33, 11, 22, 33)).isEqualTo("on 1 in every 11th bar");
    assertThat(inBars(36, 12, 24, 36)).isEqualTo("on 1 in every 12th bar");
    assertThat(inBars(39, 13, 26, 39)).isEqualTo("on 1 in every 13th bar");
    assertThat(inBars(9, 2, 3, 4)).isEqualTo("on 1 in bars 2 to 4");
    assertThat(inBars(9, 1, 2, 3, 4, 5, 6, 7)).isEqualTo("on 1 in bars 1 to 7");
    assertThat(inBars(9, 1, 2, 4, 5, 7, 8)).isEqualTo("on 1 in bars 1, 2, 4, 5, 7 and 8");
    assertThat(inBars(9, 1, 2, 4, 5, 6, 7, 8)).isEqualTo("on 1 in 7 bars");
    assertThat(inBars(4, 1, 2, 3, 4)).isEqualTo("on 1");
    assertThat(inBars(4, 3)).isEqualTo("on 1 in bar 3");
  }

  @Test
  void thePickupIsNoNumber() {
    Groove pickup =
        Sketch.groove("g").pickup(1).part(Limb.LEFT_HAND, "snare", "x | x . . .").done();
    assertThat(PlaceWords.of(pickup, pickup.strokes().subList(0, 1)))
        .contains("on 4 in the pickup");
    assertThat(PlaceWords.barNames(List.of(0))).isEqualTo("the pickup");
  }

  /** A list that nobody would read is not made. */
  @Test
  void tooManyPlacesAreOnlyCounted() {
    Groove six = Sketch.groove("g").part(Limb.LEFT_HAND, "snare", "x.x. xx.. x..x .").done();
    assertThat(PlaceWords.of(six, six.strokes())).contains("on 1, 1&, 2, 2e, 3 and 3a");
    Groove seven = Sketch.groove("g").part(Limb.LEFT_HAND, "snare", "x.x. xx.. x..x .x..").done();
    assertThat(PlaceWords.of(seven, seven.strokes())).isEmpty();
    Changes added =
        Changes.of(
            sketch("L snare: x.x. xx.. x..x .x..; R ride: x x x x")
                .step(sketch("R ride: x x x x").done())
                .done());
    assertThat(added.text()).isEqualTo("snare: added in 7 places");
  }
}
