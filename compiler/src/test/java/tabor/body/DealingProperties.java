package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.resolve.Options;

/** What holds of the hands in any section, whatever the weights. */
class DealingProperties {
  private static final List<String> HAND_SURFACES =
      List.of("hihat", "ride", "snare", "tom1", "floor", "crash", "ride.bell", "snare.cross");

  /** Parts of one bar for the hands, and the feet's. */
  record Parts(List<String> hands, List<String> feet, int tempo) {}

  @Provide
  Arbitrary<Parts> parts() {
    Arbitrary<String> beat =
        Arbitraries.of(".", "x", "xx", "x.xx", "xxxx", ".x", "..x.", "xxx", "x.x", "(x)", "X");
    Arbitrary<String> bar = beat.list().ofSize(4).map(beats -> String.join(" ", beats));
    Arbitrary<List<String>> hands =
        Combinators.combine(
                Arbitraries.of(HAND_SURFACES).list().uniqueElements().ofMinSize(1).ofMaxSize(3),
                bar.list().ofSize(3))
            .as(
                (surfaces, bars) -> {
                  List<String> lanes = new ArrayList<>();
                  for (int i = 0; i < surfaces.size(); i++) {
                    lanes.add(" " + surfaces.get(i) + " : " + bars.get(i) + "\n");
                  }
                  return lanes;
                });
    Arbitrary<List<String>> feet =
        bar.list()
            .ofSize(2)
            .map(bars -> List.of(" kick : " + bars.get(0), " hihat.foot : " + bars.get(1)))
            .map(lanes -> lanes.stream().map(lane -> lane.replace("(x)", "x") + "\n").toList());
    return Combinators.combine(hands, feet, Arbitraries.integers().between(50, 160)).as(Parts::new);
  }

  private static Groove groove(String head, List<String> lanes) {
    return grooves(head + String.join("", lanes)).get(0);
  }

  private static List<Groove> grooves(String text) {
    return new Compiler(Loader.NONE)
        .compile(Path.of("hands.tabor"), text, Options.NONE)
        .lesson()
        .grooves();
  }

  private static List<String> hands(Groove groove) {
    return strokes(groove.strokes().stream().filter(s -> s.limb().isHand()).toList());
  }

  private static List<String> strokes(List<Stroke> strokes) {
    return strokes.stream()
        .map(s -> s.bar() + " " + s.at() + " " + s.limb() + " " + s.surface().name())
        .toList();
  }

  private static String head(Parts parts) {
    return "tempo " + parts.tempo() + "\ngroove g\n bars 1\n";
  }

  @Property(tries = 200)
  void feetNeverChangeAHand(@ForAll("parts") Parts parts) {
    List<String> all = new ArrayList<>(parts.hands());
    all.addAll(parts.feet());
    assertThat(hands(groove(head(parts), all)))
        .isEqualTo(hands(groove(head(parts), parts.hands())));
  }

  @Property(tries = 200)
  void theOrderOfThePartsDoesNotMatter(@ForAll("parts") Parts parts) {
    List<String> all = new ArrayList<>(parts.hands());
    all.addAll(parts.feet());
    List<String> turned = new ArrayList<>(all);
    Collections.reverse(turned);
    assertThat(strokes(groove(head(parts), turned).strokes()))
        .isEqualTo(strokes(groove(head(parts), all).strokes()));
  }

  @Property(tries = 100)
  void aLeftHandedPlayerIsTheMirror(@ForAll("parts") Parts parts) {
    List<String> all = new ArrayList<>(parts.hands());
    all.addAll(parts.feet());
    Groove right = groove(head(parts), all);
    List<String> kit = new ArrayList<>(all);
    kit.add("kit lefty like five-piece\n left-handed\n");
    Groove left = groove("on lefty\n" + head(parts), kit);
    List<Stroke> mirrored =
        right.strokes().stream()
            .map(s -> s.by(s.limb().other(), s.dealt()))
            .sorted(Stroke.ORDER)
            .toList();
    assertThat(left.setting().kit().leftHanded()).isTrue();
    assertThat(strokes(left.strokes())).isEqualTo(strokes(mirrored));
  }

  /** Writing out what was dealt, and dealing that, changes nothing; nor does a step. */
  @Property(tries = 100)
  void writtenHandsAreNeverDealtAgain(@ForAll("parts") Parts parts) {
    Groove dealt = groove(head(parts), parts.hands());
    List<String> written = new ArrayList<>();
    for (String surface : HAND_SURFACES) {
      for (Limb limb : List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND)) {
        String letter = limb.isRight() ? "r" : "l";
        StringBuilder beats = new StringBuilder();
        for (int beat = 0; beat < 4; beat++) {
          beats.append(' ');
          for (int twelfth = 0; twelfth < 12; twelfth++) {
            tabor.rhythm.Time at = tabor.rhythm.Time.of(beat * 12L + twelfth, 48);
            boolean struck =
                dealt.strokes().stream()
                    .anyMatch(
                        s ->
                            s.limb() == limb
                                && s.at().equals(at)
                                && s.surface().name().equals(surface));
            beats.append(struck ? letter : ".");
          }
        }
        written.add(" " + surface + " :" + beats + "\n");
      }
    }
    String steps = "step slower\n tempo 40\nstep quicker\n tempo 200\n accent hands\n";
    String text = head(parts) + String.join("", written) + (dealt.strokes().isEmpty() ? "" : steps);
    for (Groove groove : grooves(text)) {
      assertThat(hands(groove)).isEqualTo(hands(dealt));
    }
  }
}
