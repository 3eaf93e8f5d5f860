package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Stroke;

/** Who strikes what under a swing: hands go by where strokes meet, and by the page otherwise. */
class SwungHandsProperties {
  private static final List<String> FEELS =
      List.of(
          "feel swing eighths as triplets",
          "feel swing eighths 62%",
          "feel swing sixteenths 58%",
          "feel swing eighths 50%");

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("swung.tabor"), text, Options.NONE);
  }

  /** What is wrong, without where in the text: that moves with the line of the feel. */
  private static List<String> told(String text) {
    return compiled(text).diagnostics().stream()
        .map(d -> d.code() + " " + d.spot().text() + " " + d.message() + " " + d.place())
        .toList();
  }

  /** A word of so many slots. */
  private static Arbitrary<String> word(String letters, int slots) {
    return Arbitraries.of(letters.chars().mapToObj(c -> String.valueOf((char) c)).toList())
        .list()
        .ofSize(slots)
        .map(all -> String.join("", all));
  }

  private static Arbitrary<String> bar(String letters, Integer... slots) {
    return Arbitraries.of(slots)
        .flatMap(many -> word(letters, many))
        .list()
        .ofSize(4)
        .map(words -> String.join(" ", words));
  }

  /** Parts of eighths and sixteenths, some for a named hand and some open. */
  @Provide
  Arbitrary<String> even() {
    Arbitrary<String> lane =
        Arbitraries.of("snare rl.", "ride x.", "hihat xX.", "right hs.", "hands rlx.", "kick x.")
            .flatMap(
                kind -> {
                  String[] words = kind.split(" ", -1);
                  return bar(words[1], 1, 2, 4).map(bar -> "  " + words[0] + " : " + bar + "\n");
                });
    return lane.list()
        .ofMinSize(1)
        .ofMaxSize(4)
        .map(lanes -> "groove g\n" + lanes.stream().distinct().collect(Collectors.joining()));
  }

  @Property(tries = 300)
  void evenBeatsAreAsHardSwungAsStraight(
      @ForAll("even") String groove, @ForAll @IntRange(min = 40, max = 260) int tempo) {
    String head = "tempo " + tempo + "\n";
    List<String> straight = told(head + groove);
    for (String feel : FEELS) {
      assertThat(told(head + feel + "\n" + groove)).as(feel + "\n" + groove).isEqualTo(straight);
    }
  }

  /** One row of written hands and one that leaves them open, in twos and threes. */
  @Provide
  Arbitrary<String> mixed() {
    return Combinators.combine(
            bar("rl.", 2, 3), bar("x.", 2, 3), Arbitraries.of("ride", "hihat", "floor", "snare"))
        .as(
            (hands, open, surface) ->
                "tempo 50\nfeel swing eighths as triplets\ngroove g\n  right : h . . .\n  next\n"
                    + "  hands : "
                    + hands
                    + "\n  "
                    + surface
                    + " : "
                    + open
                    + "\n");
  }

  @Property(tries = 300)
  void anOpenStrokeTakesTheHandThatIsFreeWhereItIsStruck(@ForAll("mixed") String text) {
    Compiled compiled = compiled(text);
    assertThat(compiled.diagnostics())
        .as(text)
        .extracting(Diagnostic::code)
        .doesNotContain(Code.LIMB_CONFLICT, Code.THREE_HANDS);
    List<Stroke> strokes = compiled.lesson().grooves().get(0).strokes();
    for (Stroke one : strokes) {
      assertThat(strokes)
          .as(text)
          .filteredOn(other -> other != one)
          .noneMatch(
              other ->
                  other.bar() == one.bar()
                      && other.at().equals(one.at())
                      && other.limb() == one.limb());
    }
  }

  /** Both names of the place are the same: that of the stroke that the message stands at. */
  @Test
  void aConflictIsToldAtOneCount() {
    List<Diagnostic> told =
        compiled(
                "feel swing eighths as triplets\ngroove g\n  right : hhh hhh hhh hhh\n"
                    + "  right : .s .s .s .s\n")
            .diagnostics();
    assertThat(told).extracting(Diagnostic::code).contains(Code.LIMB_CONFLICT);
    assertThat(told)
        .filteredOn(d -> d.code() == Code.LIMB_CONFLICT)
        .allSatisfy(d -> assertThat(d.message()).contains(" at " + d.place().count()));
  }
}
