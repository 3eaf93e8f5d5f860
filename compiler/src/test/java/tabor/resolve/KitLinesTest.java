package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limits;
import tabor.kit.Position;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;

/** What section 5 of the notation says of kits. */
class KitLinesTest {
  private static final String BEAT = "groove g\n on k\n kick : x . . .\n";

  private static Kit kit(String lines) {
    Compiled compiled = Compact.compile("kit k\n" + lines + BEAT);
    assertThat(compiled.diagnostics()).as(lines).isEmpty();
    return compiled.lesson().grooves().get(0).setting().kit();
  }

  private static Diagnostic only(String text) {
    List<Diagnostic> all = Compact.compile(text).diagnostics();
    assertThat(all).as(text).hasSize(1);
    return all.get(0);
  }

  @Test
  void aSurfaceOfItsOwn() {
    Surface gong = kit(" surface gong letter g key 52 staff a5 head x\n").surface("gong");
    assertThat(gong.key()).isEqualTo(52);
    assertThat(gong.place()).isEqualTo(new StaffPlace('A', 5));
    assertThat(gong.head()).isEqualTo(Surface.Head.X);
    assertThat(gong.sort()).isEqualTo(Surface.Sort.OWN);
    assertThat(
            Compact.last(
                "kit k\n surface gong letter g key 52\ngroove g\n on k\n right : g . . .\n"))
        .isEqualTo("0 R gong");
  }

  @Test
  void whatIsNotSaidOfASurfaceIsPlain() {
    Kit kit = kit(" surface gong key 52\n");
    assertThat(kit.surface("gong").place()).isEqualTo(new StaffPlace('B', 4));
    assertThat(kit.surface("gong").head()).isEqualTo(Surface.Head.NORMAL);
    assertThat(kit.letters()).isEqualTo(Kits.FIVE_PIECE.letters());
  }

  @Test
  void aStandardSurfaceMayBeWrittenAnew() {
    Kit kit = kit(" without tom2 plays floor\n surface tom2 key 48 staff e5\n");
    assertThat(kit.surface("tom2").key()).isEqualTo(48);
    assertThat(kit.surface("tom2").canRimshot()).as("still a tom").isTrue();
    assertThat(kit.lacks("tom2")).as("there is one now").isFalse();
  }

  @Test
  void aSurfaceNeedsAKey() {
    Diagnostic told = only("kit k\n surface gong letter g\n" + BEAT);
    assertThat(told.message()).isEqualTo("the surface “gong” has no key");
    assertThat(told.help()).contains("key 52");
  }

  @Test
  void atMostSoManySurfaces() {
    int standard = Kits.FIVE_PIECE.surfaces().size();
    String most =
        IntStream.rangeClosed(1, 128 - standard)
            .mapToObj(i -> " surface bell-" + i + " key 56\n")
            .collect(Collectors.joining());
    assertThat(kit(most).surfaces()).hasSize(128);
    Diagnostic told = only("kit k\n" + most + " surface gong key 52\n" + BEAT);
    assertThat(told.code().word()).isEqualTo("too-long");
    assertThat(told.message()).isEqualTo("a kit has at most 128 surfaces");
  }

  @Test
  void placesStandLeftAndRight() {
    Kit kit =
        kit(
            " place ride 70 cm 45 degrees right\n place crash 60 cm 30 degrees left 110 cm high\n"
                + " place kick 50 cm 0 degrees\n");
    assertThat(kit.positions())
        .containsEntry("ride", new Position(70, 45, 75))
        .containsEntry("crash", new Position(60, -30, 110))
        .containsEntry("kick", new Position(50, 0, 75))
        .hasSize(3);
  }

  @Test
  void limitsOfTheKit() {
    assertThat(kit(" limits hands 3 to 4\n").limits().get("").hands())
        .isEqualTo(new Limits.Range(3, 4));
  }

  @Test
  void aKitLikeAnotherTakesItOver() {
    Kit kit =
        Compact.compile(
                "kit hall\n left-handed\n without tom1 plays floor\n letter q = china\n"
                    + "kit k like hall\n without crash\n"
                    + BEAT)
            .lesson()
            .grooves()
            .get(0)
            .setting()
            .kit();
    assertThat(kit.leftHanded()).isTrue();
    assertThat(kit.lacks("tom1")).isTrue();
    assertThat(kit.lacks("crash")).isTrue();
    assertThat(kit.letter('q').name()).isEqualTo("china");
    Diagnostic unknown = only("kit k like five-pice\n" + BEAT);
    assertThat(unknown.code().word()).isEqualTo("unknown-name");
    assertThat(unknown.help()).contains("five-piece");
  }

  @Test
  void unknownSurfacesAreTold() {
    for (String line :
        List.of(
            "letter q = snar",
            "without snar",
            "without tom1 plays snar",
            "place snar 50 cm 0 degrees")) {
      Diagnostic told = only("kit k\n " + line + "\n" + BEAT);
      assertThat(told.code().word()).as(line).isEqualTo("unknown-name");
      assertThat(told.help()).as(line).contains("snare");
    }
  }

  @Test
  void standInsAreOfOneKind() {
    Diagnostic hand = only("kit k\n without tom1 plays kick\n" + BEAT);
    assertThat(hand.help()).isEqualTo("name another hand surface");
    Diagnostic foot = only("kit k\n without kick plays snare\ngroove g\n on k\n right : s . . .\n");
    assertThat(foot.help()).isEqualTo("name another foot surface");
  }

  @Test
  void chainsOfStandInsAreNoCircle() {
    String chain =
        "kit k\n without crash2 plays china\n without china plays splash\n without splash plays"
            + " crash\ngroove g\n on k\n crash2 : r . . .\n";
    assertThat(Compact.compile(chain).diagnostics()).isEmpty();
    assertThat(Compact.last(chain)).isEqualTo("0 R crash");
    Diagnostic circle =
        only(
            "kit k\n without crash2 plays china\n without china plays splash\n"
                + " without splash plays crash2\n"
                + BEAT);
    assertThat(circle.code().word()).isEqualTo("missing-surface");
    assertThat(circle.message()).contains("go in a circle");
    assertThat(only("kit k\n without china plays china\n" + BEAT).message()).contains("circle");
  }

  @Test
  void aStepOnAnotherKitLooksItsNamesUpAnew() {
    String own =
        "kit k\n"
            + " surface gong letter g key 52\n"
            + " surface tom1 key 60 head diamond\n"
            + "groove g\n"
            + " right : t . . .\n"
            + " left plays tom1\n"
            + "step s\n"
            + " on k\n";
    Groove step = Compact.compile(own + " left : . x . .\n").lesson().grooves().get(1);
    assertThat(step.strokes()).extracting(stroke -> stroke.surface().key()).containsExactly(60, 60);
  }

  @Test
  void whatTheOtherKitDoesNotKnowIsToldOnceForEachSurface() {
    String text =
        "kit k\n surface gong letter g key 52\n surface bell letter j key 53\ngroove g\n on k\n"
            + " right : gg gg j .\nstep s\n on five-piece\n drop gong\nstep t from g\n"
            + " on five-piece\n on four-piece\n";
    List<Diagnostic> all = Compact.compile(text).diagnostics();
    assertThat(all)
        .extracting(Diagnostic::message)
        .contains(
            "the kit “five-piece” does not know the gong that the step before plays",
            "the kit “five-piece” does not know the bell that the step before plays");
    assertThat(Compact.problems(text))
        .contains("8 missing-surface", "12 missing-surface")
        .doesNotContain("11 missing-surface");
  }
}
