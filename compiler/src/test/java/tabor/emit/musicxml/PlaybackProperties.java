package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Section;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** What a player of the file plays is what the MIDI file plays. */
class PlaybackProperties {
  private static final Meter SEVEN =
      new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));
  private static final Meter SIX_IN_SIX =
      new Meter(6, 8, java.util.Collections.nCopies(6, Time.of(1, 8)));
  private static final Meter FOUR_IN_TWO = new Meter(4, 4, List.of(Time.of(1, 2), Time.of(1, 2)));

  private static final List<String> WORDS =
      List.of("x", ".", "xx", ".x", "x.", "xxx", "xxxx", "x..x", "x/", "x//", "x/x", "x-", "x/-");

  private static byte[] bytes(Section... sections) {
    Groove first = (Groove) sections[0];
    Lesson lesson = new Lesson("l", "L", null, first.setting(), List.of(sections));
    return MusicXml.bytes(lesson, section -> true);
  }

  /** Starts and surfaces of all measured strokes at a feel; two limbs on one surface are one. */
  private static List<String> performed(Groove groove, Feel feel) {
    Set<String> found = new LinkedHashSet<>();
    for (Sound sound : Performer.once(groove, groove.setting().tempo(), feel).sounds()) {
      found.add(sound.start() + " P1-" + sound.surface().name());
    }
    return new ArrayList<>(found);
  }

  @Provide
  Arbitrary<Groove> grooves() {
    Arbitrary<Meter> meters =
        Arbitraries.of(
            Meter.COMMON, Meter.of(3, 4), Meter.of(6, 8), SEVEN, SIX_IN_SIX, FOUR_IN_TWO);
    Arbitrary<Feel> feels =
        Arbitraries.of(
            Feel.STRAIGHT,
            new Feel(Feel.Unit.EIGHTHS, Time.of(2, 3)),
            new Feel(Feel.Unit.EIGHTHS, Time.of(62, 100)),
            new Feel(Feel.Unit.SIXTEENTHS, Time.of(58, 100)));
    Arbitrary<List<String>> words = Arbitraries.of(WORDS).list().ofSize(12);
    return Combinators.combine(meters, feels, words).as(PlaybackProperties::groove);
  }

  private static Groove groove(Meter meter, Feel feel, List<String> words) {
    int beats = meter.beatCount();
    return Sketch.groove("g")
        .meter(meter)
        .feel(feel)
        .part(Limb.RIGHT_HAND, "ride", String.join(" ", words.subList(0, beats)))
        .part(Limb.LEFT_HAND, "snare", String.join(" ", words.subList(beats, 2 * beats)))
        .done();
  }

  @Property(tries = 300)
  void swingAndTremolosArePlayedAsTheyAreHere(@ForAll("grooves") Groove groove) throws Exception {
    byte[] bytes = bytes(groove);
    Playback played = Playback.ofValid(bytes);
    Feel feel = groove.setting().feel();
    String text = new String(bytes, StandardCharsets.UTF_8);
    boolean straight = text.contains("(played straight by this file)");
    assertThat(played.everSwings()).isEqualTo(!feel.isStraight() && !straight);
    if (text.contains("other-technical")) {
      return; // a roll that slashes cannot say
    }
    if (straight) {
      assertThat(text).doesNotContain("<first>");
    } else {
      assertThat(played.strokes()).containsExactlyInAnyOrderElementsOf(performed(groove, feel));
    }
  }

  private static Groove eighths(String name, Meter meter) {
    Sketch sketch = Sketch.groove(name).meter(meter).swing(Feel.Unit.EIGHTHS, 62, 100);
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      sketch.word(1, beat, Limb.RIGHT_HAND, "ride", "xx");
    }
    return sketch.done();
  }

  private static boolean swings(Groove groove) throws Exception {
    return Playback.ofValid(bytes(groove)).everSwings();
  }

  @Example
  void swingIsWrittenOnlyWhereTheFormatCanSayIt() throws Exception {
    assertThat(swings(eighths("g", Meter.COMMON))).isTrue();
    assertThat(swings(eighths("g", SIX_IN_SIX))).isTrue();
    assertThat(swings(eighths("g", SEVEN))).isFalse();
    assertThat(swings(eighths("g", FOUR_IN_TWO))).isFalse();
    assertThat(swings(eighths("g", Meter.of(6, 8)))).isFalse();
    Groove sixteenths =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 62, 100)
            .part(Limb.RIGHT_HAND, "ride", "xxxx xx xx xx")
            .done();
    assertThat(swings(sixteenths)).isFalse();
    Groove half =
        Sketch.groove("g")
            .swing(Feel.Unit.SIXTEENTHS, 58, 100)
            .part(Limb.RIGHT_HAND, "hihat", "xxxx xxxx xxxx xxxx")
            .done();
    assertThat(swings(half)).isTrue();
  }

  /** A section after one whose swing cannot be said swings again, and stops where it must. */
  @Example
  void eachSectionSwingsOrNotByItself() throws Exception {
    Groove four = eighths("four", Meter.COMMON);
    Groove seven = eighths("seven", SEVEN);
    Playback played = Playback.ofValid(bytes(four, seven, four));
    List<String> wanted = new ArrayList<>();
    String[] places = {"0", "31/200", "1/4", "81/200", "1/2", "131/200", "3/4", "181/200"};
    for (String place : places) {
      wanted.add(place);
    }
    assertThat(played.strokes().subList(0, 8))
        .containsExactlyElementsOf(wanted.stream().map(p -> p + " P1-ride").toList());
    assertThat(played.strokes().subList(8, 14))
        .containsExactly(
            "1 P1-ride",
            "9/8 P1-ride",
            "5/4 P1-ride",
            "11/8 P1-ride",
            "3/2 P1-ride",
            "27/16 P1-ride");
    assertThat(played.strokes().get(15)).isEqualTo("203/100 P1-ride");
  }

  /** A note is no roll that goes on and another hand's stroke at once: the roll is written out. */
  @Example
  void aRollThatAnotherHandStrikesIntoIsPlayedToItsEnd() throws Exception {
    Groove groove =
        Sketch.groove("g")
            .part(Limb.RIGHT_HAND, "snare", "x/- . . .")
            .part(Limb.LEFT_HAND, "snare", ".x . . .")
            .done();
    assertThat(Playback.ofValid(bytes(groove)).strokes())
        .containsOnly("0 P1-snare", "1/16 P1-snare", "1/8 P1-snare", "3/16 P1-snare");
  }

  /** A diddle that is held a little beyond its slot, as after a shift, gets no stroke more. */
  @Example
  void aRollIsWrittenOutWithTheStrokesThatItHas() throws Exception {
    Slot sixteenth = new Slot(new Division(0, 1, 4), 1, List.of());
    Groove groove =
        Sketch.groove("g")
            .stroke(
                Sketch.stroke(
                    1,
                    Time.of(1, 16),
                    Time.of(1, 12),
                    Limb.RIGHT_HAND,
                    Kits.FIVE_PIECE.surfaces().get("snare"),
                    sixteenth,
                    Ornaments.NONE.with(Ornament.DIDDLE)))
            .done();
    assertThat(Playback.ofValid(bytes(groove)).strokes())
        .containsExactly("1/16 P1-snare", "3/32 P1-snare");
  }

  @Example
  void aTripletBesideSwungEighthsIsWrittenAsOne() throws Exception {
    Groove groove =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 2, 3)
            .part(Limb.RIGHT_HAND, "ride", "xx xx x x")
            .part(Limb.LEFT_HAND, "snare", "xxx . . .")
            .done();
    Playback played = Playback.ofValid(bytes(groove));
    assertThat(played.everSwings()).isTrue();
    assertThat(played.strokes())
        .contains("1/6 P1-ride", "1/6 P1-snare", "5/12 P1-ride")
        .containsExactlyInAnyOrderElementsOf(performed(groove, groove.setting().feel()));
  }
}
