package tabor.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.resolve.Options;
import tabor.testing.Files;

class LikenessProperties {
  private static final int PLACES = 32;

  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  private static List<Groove> grooves(String source) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("test.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson().grooves();
  }

  /** A hi-hat that goes on, and a kick at some of the sixteenths of two bars. */
  private static Groove kick(List<Boolean> places) {
    StringBuilder kick = new StringBuilder();
    for (int i = 0; i < PLACES; i++) {
      kick.append(i == PLACES / 2 ? " | " : i % 4 == 0 ? " " : "");
      kick.append(places.get(i) ? 'x' : '.');
    }
    return grooves(
            "tempo 40\ngroove g\n  hihat : xx xx xx xx | xx xx xx xx\n  kick  :" + kick + "\n")
        .get(0);
  }

  @Property(tries = 60)
  void everySectionIsLikeItself(@ForAll("files") String text) {
    for (Groove groove : grooves(text)) {
      Likeness same = Likeness.of(groove, groove);
      boolean feet = groove.strokes().stream().anyMatch(s -> s.surface().name().equals("kick"));
      boolean hands = groove.strokes().stream().anyMatch(s -> s.limb().isHand());
      assertThat(same.kick()).isEqualTo(feet ? 0 : null);
      assertThat(same.hands()).isEqualTo(hands ? 0 : null);
    }
  }

  @Property(tries = 60)
  void bothWaysItIsAsFar(@ForAll("files") String text) {
    List<Groove> all = grooves(text);
    for (Groove one : all) {
      for (Groove other : all) {
        assertThat(Likeness.of(one, other)).isEqualTo(Likeness.of(other, one));
      }
    }
  }

  /** More strokes, fewer, or the same number elsewhere. */
  @Property(tries = 120)
  void soManyChangedStrokesAreSoFar(@ForAll @IntRange(max = 7) int changes, @ForAll long seed) {
    Random random = new Random(seed);
    List<Boolean> places = new ArrayList<>();
    for (int i = 0; i < PLACES; i++) {
      places.add(i < 12);
    }
    Collections.shuffle(places, random);
    List<Integer> struck = new ArrayList<>();
    List<Integer> free = new ArrayList<>();
    for (int i = 0; i < PLACES; i++) {
      (places.get(i) ? struck : free).add(i);
    }
    Groove before = kick(places);
    int way = random.nextInt(3);
    for (int i = 0; i < changes; i++) {
      if (way != 0) {
        places.set(struck.get(i), false);
      }
      if (way != 1) {
        places.set(free.get(i), true);
      }
    }
    assertThat(Likeness.of(before, kick(places))).isEqualTo(new Likeness(changes, 0));
  }

  @Property(tries = 40)
  void aBarTwiceIsTheBar(@ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder bar = new StringBuilder();
    for (int i = 0; i < 16; i++) {
      bar.append(i % 4 == 0 ? " " : "").append(i == 0 || random.nextBoolean() ? 'x' : '.');
    }
    String head = "tempo 40\ngroove g\n  kick :";
    Groove once = grooves(head + bar + "\n").get(0);
    Groove thrice = grooves(head + bar + " |" + bar + " |" + bar + "\n").get(0);
    assertThat(Likeness.of(once, thrice)).isEqualTo(new Likeness(0, null));
  }
}
