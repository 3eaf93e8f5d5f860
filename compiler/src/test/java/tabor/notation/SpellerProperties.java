package tabor.notation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Time;
import tabor.testing.RandomSections;

/** What holds for the spelling of every section. */
class SpellerProperties {
  @Provide
  net.jqwik.api.Arbitrary<Groove> grooves() {
    return RandomSections.grooves();
  }

  @Property(tries = 200)
  void everyVoiceFillsEveryBarWithoutAGap(@ForAll("grooves") Groove groove) {
    for (Bar bar : Speller.spell(groove).bars()) {
      for (Voice voice : Voice.values()) {
        Time at = bar.start();
        for (Event event : bar.events(voice)) {
          assertThat(event.start()).isEqualTo(at);
          assertThat(event.length().sign()).isPositive();
          boolean whole = event instanceof Event.Rest rest && rest.wholeBar();
          if (!whole) {
            assertThat(event.written().length().times(event.ratio())).isEqualTo(event.length());
          }
          at = event.end();
        }
        assertThat(at).isEqualTo(bar.start().plus(bar.length()));
      }
    }
  }

  private static String where(Stroke stroke) {
    return stroke.bar() + " " + stroke.limb();
  }

  @Property(tries = 200)
  void everyStrokeIsWrittenOnceWhereItIs(@ForAll("grooves") Groove groove) {
    List<Stroke> written = new ArrayList<>();
    Map<String, Voice> voices = new HashMap<>();
    for (Bar bar : Speller.spell(groove).bars()) {
      for (Voice voice : Voice.values()) {
        for (Event event : bar.events(voice)) {
          event
              .chord()
              .ifPresent(
                  chord -> {
                    for (Note note : chord.notes()) {
                      for (Stroke stroke : note.tieIn() ? List.<Stroke>of() : note.strokes()) {
                        assertThat(stroke.bar()).isEqualTo(bar.number());
                        assertThat(stroke.at()).isEqualTo(chord.start());
                        assertThat(voice)
                            .isIn(
                                Voice.of(stroke.limb()),
                                stroke.inLine() ? Voice.HANDS : Voice.of(stroke.limb()));
                        // A limb has one voice in a bar.
                        assertThat(voices.computeIfAbsent(where(stroke), none -> voice))
                            .isEqualTo(voice);
                        written.add(stroke);
                      }
                    }
                  });
        }
      }
    }
    // A roll that slashes cannot say is written stroke by stroke: see RollProperties.
    List<Stroke> missing = new ArrayList<>(groove.strokes());
    missing.removeAll(written);
    for (Stroke stroke : missing) {
      assertThat(RollWriting.isMeasured(stroke)).isTrue();
      assertThat(written)
          .anyMatch(
              one ->
                  one.bar() == stroke.bar()
                      && one.at().equals(stroke.at())
                      && one.limb() == stroke.limb()
                      && one.surface().equals(stroke.surface()));
    }
    written.removeAll(groove.strokes());
    for (Stroke one : written) {
      assertThat(missing).anyMatch(roll -> isPart(groove, one, roll));
    }
  }

  private static boolean isPart(Groove groove, Stroke one, Stroke roll) {
    Time at = groove.position(one);
    Time start = groove.position(roll);
    return one.surface().equals(roll.surface())
        && !at.before(start)
        && at.before(start.plus(roll.length()));
  }

  @Property(tries = 200)
  void tupletsAreWholeAndBeamsArePaired(@ForAll("grooves") Groove groove) {
    for (Bar bar : Speller.spell(groove).bars()) {
      for (Voice voice : Voice.values()) {
        checkTuplets(bar.events(voice));
        checkBeams(bar.events(voice));
      }
    }
  }

  @Property(tries = 200)
  void everyTieIsTakenUp(@ForAll("grooves") Groove groove) {
    for (Voice voice : Voice.values()) {
      Set<String> open = new HashSet<>();
      for (Bar bar : Speller.spell(groove).bars()) {
        for (Event event : bar.events(voice)) {
          Set<String> taken = new HashSet<>();
          Set<String> next = new HashSet<>();
          event
              .chord()
              .ifPresent(
                  chord -> {
                    for (Note note : chord.notes()) {
                      if (note.tieIn()) {
                        taken.add(note.surface().name());
                      }
                      if (note.tieOut()) {
                        next.add(note.surface().name());
                      }
                    }
                  });
          assertThat(taken).isEqualTo(open);
          open = next;
        }
      }
      assertThat(open).isEmpty();
    }
  }

  private static void checkTuplets(List<Event> events) {
    List<Tuplet> open = new ArrayList<>();
    for (Event event : events) {
      for (int i = 0; i < event.tuplets().size(); i++) {
        TupletPlace place = event.tuplets().get(i);
        if (place.first()) {
          assertThat(open).hasSize(i);
          open.add(place.tuplet());
        }
        assertThat(open.get(i)).isEqualTo(place.tuplet());
      }
      assertThat(open).hasSize(event.tuplets().size());
      for (int i = event.tuplets().size() - 1; i >= 0; i--) {
        if (event.tuplets().get(i).last()) {
          assertThat(open).hasSize(i + 1);
          open.remove(i);
        }
      }
    }
    assertThat(open).isEmpty();
  }

  private static void checkBeams(List<Event> events) {
    boolean[] open = new boolean[16];
    for (Event event : events) {
      event
          .chord()
          .ifPresent(
              chord -> {
                if (!chord.beams().isEmpty()) {
                  assertThat(chord.beams()).hasSize(chord.written().type().flags());
                }
                for (int level = 0; level < chord.beams().size(); level++) {
                  Beam beam = chord.beams().get(level);
                  boolean inside = beam == Beam.CONTINUE || beam == Beam.END;
                  assertThat(open[level]).isEqualTo(inside);
                  open[level] = beam == Beam.BEGIN || beam == Beam.CONTINUE;
                }
                for (int level = chord.beams().size(); level < open.length; level++) {
                  assertThat(open[level]).isFalse();
                }
              });
    }
    assertThat(open).containsOnly(false);
  }
}
