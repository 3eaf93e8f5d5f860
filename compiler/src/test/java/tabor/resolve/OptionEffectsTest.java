package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;

/** What is told of a lesson that is played on another kit or open-handed. */
class OptionEffectsTest {
  private static Compiled compile(String text, Options options) {
    return new Compiler(Loader.NONE).compile(Path.of("o.tabor"), text, options);
  }

  private static List<Diagnostic> told(String text, Options options) {
    return compile(text, options).diagnostics().stream()
        .filter(one -> one.code() == Code.PLAYED_DIFFERENTLY)
        .toList();
  }

  private static Options on(String kit) {
    return new Options(kit, false, false, null, null);
  }

  private static Options open(boolean leftHanded) {
    return new Options(null, leftHanded, true, null, null);
  }

  @Test
  void whatAnotherKitMovesIsToldWithItsCounts() {
    String text = "groove g\n right : mm . b .\n kick : x . . .\n";
    List<Diagnostic> told = told(text, on("four-piece"));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).message())
        .isEqualTo("on the kit “four-piece”: second tom now on the floor tom at 1 1&");
    assertThat(told.get(0).help())
        .isEqualTo("a kit of your own says where it goes instead: without SURFACE plays SURFACE");
    assertThat(told.get(0).spot().text()).isEqualTo("groove g");
    Groove groove = compile(text, on("four-piece")).lesson().grooves().get(0);
    assertThat(Compact.of(groove)).isEqualTo("0 R floor, 0 rf kick, 1/8 R floor, 1/2 R ride.bell");
    assertThat(told(text, Options.NONE)).isEmpty();
    assertThat(told("on four-piece\n" + text, Options.NONE))
        .as("the lesson's own kit is no surprise")
        .isEmpty();
  }

  @Test
  void eachSurfaceThatMovesIsNamed() {
    assertThat(told("groove g\n right : m . c .\n", on("junior")).get(0).message())
        .isEqualTo(
            "on the kit “junior”: second tom now on the floor tom at 1; crash now on the"
                + " ride at 3");
    assertThat(
            told("groove g\n right : m . d .\n left : . h . .\n", on("practice-pad"))
                .get(0)
                .message())
        .contains(
            "second tom now on the snare at 1; ",
            "hi-hat now on the snare at 2; ",
            "ride now on the snare at 3");
  }

  @Test
  void manyCountsAreCounted() {
    String eight = "groove g\n right : mm mm mm mm\n";
    assertThat(told(eight, on("four-piece")).get(0).message()).endsWith("at 1 1& 2 2& 3 3& 4 4&");
    assertThat(told("groove g\n right : mm mm mmm mm\n", on("four-piece")).get(0).message())
        .endsWith("at 9 counts");
    assertThat(told("groove g\n right : m . . . | m . . .\n", on("four-piece")).get(0).message())
        .as("the same count in every bar")
        .endsWith("at 1");
  }

  @Test
  void aStepTellsOnlyWhatIsItsOwn() {
    String text = "groove g\n right : m . . .\nstep s\n add tom2 at 3\nstep t\n accent tom2 at 1\n";
    List<Diagnostic> told = told(text, on("four-piece"));
    assertThat(told)
        .extracting(Diagnostic::message)
        .containsExactly(
            "on the kit “four-piece”: second tom now on the floor tom at 1",
            "on the kit “four-piece”: second tom now on the floor tom at 3");
  }

  @Test
  void openHandedSaysWhichHandTakesWhat() {
    String text = "groove g\n right : h h h h\n left : . s . s\n kick : x . x .\n";
    List<Diagnostic> told = told(text, open(false));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).message())
        .isEqualTo(
            "open-handed: hi-hat now with the left hand at 1 2 3 4; snare now with the right"
                + " hand at 2 4");
    assertThat(told.get(0).help()).isNull();
    Groove groove = compile(text, open(false)).lesson().grooves().get(0);
    assertThat(Compact.of(groove)).contains("1/4 R snare", "1/4 L hihat");
  }

  @Test
  void aLeftHandedPlayerIsMirroredInTheWordsToo() {
    String text = "groove g\n right : h h h h\n left : . s . s\n";
    assertThat(told(text, open(true)).get(0).message())
        .isEqualTo(
            "open-handed: hi-hat now with the right hand at 1 2 3 4; snare now with the left"
                + " hand at 2 4");
  }

  @Test
  void whereNothingChangesNothingIsSaid() {
    assertThat(told("groove g\n snare : . l . l\n ride : r r r r\n", open(false))).isEmpty();
    assertThat(told("groove g\n left : h h h h\n kick : x . . .\n", open(false))).isEmpty();
  }
}
