package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;

/** What {@code take}, {@code fill} and {@code bars} copy, and what they cannot. */
class CopyLinesTest {
  private static final String TWO = "groove a\n hands : Rl r . . | . l . R\n";
  private static final String ONES = "groove b\n left : s . . s | s . . s | s . . s\n";

  @ParameterizedTest
  @CsvSource(
      value = {
        // Bar by bar; the shorter one starts again, what stood there goes.
        "take hands from a| 0 R snare>, 1/8 L snare, 1/4 R snare | 1/4 L snare, 3/4 R snare>"
            + " | 0 R snare>, 1/8 L snare, 1/4 R snare",
        "take hands from a in bar 3| 0 L snare, 3/4 L snare | 0 L snare, 3/4 L snare"
            + " | 0 R snare>, 1/8 L snare, 1/4 R snare",
        // At a place only what stands there, in either section.
        "take hands from a at 4| 0 L snare | 0 L snare, 3/4 R snare> | 0 L snare",
        "take hands from a at 1& 2 in bars 1 to 2| 0 L snare, 1/8 L snare, 1/4 R snare, 3/4 L snare"
            + " | 0 L snare, 1/4 L snare, 3/4 L snare | 0 L snare, 3/4 L snare",
        // Only accents come, only accents go.
        "take hands from a where accented| 0 R snare>, 0 L snare, 3/4 L snare"
            + " | 0 L snare, 3/4 R snare>, 3/4 L snare | 0 R snare>, 0 L snare, 3/4 L snare",
        "take left from a| 1/8 L snare | 1/4 L snare | 1/8 L snare",
      },
      delimiter = '|',
      maxCharsPerColumn = 500)
  void takeReplacesBarByBar(String line, String first, String second, String third) {
    assertThat(Compact.lastOfFine(TWO + ONES + " " + line + "\n"))
        .isEqualTo(first.strip() + " | " + second.strip() + " | " + third.strip());
  }

  @Test
  void aSourceMayBeShorterLongerAndHaveAPickup() {
    assertThat(
            Compact.lastOfFine(
                "groove a\n kick : x . . . | . x . .\ngroove b\n hands : r\n"
                        .replace(": r\n", ": r . . .\n")
                    + " take kick from a\n"))
        .isEqualTo("0 R snare, 0 rf kick");
    String pickup = "groove a\n pickup 1 beat\n kick : xx | x . . .\n";
    assertThat(
            Compact.lastOfFine(
                pickup + "groove b\n pickup 1 beat\n hands : r | r . . .\n take kick from a\n"))
        .isEqualTo("3/4 R snare, 3/4 rf kick, 7/8 rf kick | 0 R snare, 0 rf kick");
  }

  @Test
  void placesThatNeitherSectionHasAreTold() {
    Diagnostic place = Compact.only(TWO + ONES + " take hands from a at 3\n", Severity.ERROR);
    assertThat(place.code().word()).isEqualTo("nothing-there");
    assertThat(place.message())
        .isEqualTo("neither this section nor “a” has such a stroke at this place");
    assertThat(place.spot().text()).isEqualTo("3");
    Diagnostic level =
        Compact.only(TWO + ONES + " take hands from a where ghosted\n", Severity.ERROR);
    assertThat(level.message())
        .isEqualTo("neither this section nor “a” has such a stroke like this");
    assertThat(level.spot().text()).isEqualTo("ghosted");
    assertThat(Compact.only(TWO + ONES + " take hands from a at 5\n", Severity.ERROR).message())
        .contains("no beat 5");
    assertThat(Compact.only(TWO + ONES + " take hands from a in bar 4\n", Severity.ERROR).message())
        .isEqualTo("“b” has only 3 bars");
    Diagnostic twice =
        Compact.only(
            "groove a\n left : ..s . . .\n right : ...s . . .\ngroove b\n kick : x . . .\n"
                + " take hands from a at 1a\n",
            Severity.ERROR);
    assertThat(twice.code().word()).isEqualTo("ambiguous-count");
  }

  @Test
  void aTakeThatGoesWrongChangesNothing() {
    for (String line :
        List.of(
            "take hands from a at 1 3",
            "take hands from a where ghosted",
            "take hands from a at 1 5",
            "take hands from a in bar 4",
            "take hands from a at 1 2 5")) {
      assertThat(Compact.last(TWO + ONES + " " + line + "\n"))
          .as(line)
          .isEqualTo("0 L snare, 3/4 L snare | 0 L snare, 3/4 L snare | 0 L snare, 3/4 L snare");
    }
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "take kick from none; there is no section “none” above",
        "fill none in bar 1; there is no section “none” above",
        "take kick from s; “s” is a sheet, not a groove or a step",
        "fill s in bar 1; “s” is a sheet, not a groove or a step",
      },
      delimiter = ';')
  void theSourceIsAGrooveOrAStep(String line, String message) {
    String text =
        "groove a\n"
            + " kick : x . . .\n"
            + "sheet s from a\n"
            + " each add kick at 2 3\n"
            + "groove b\n"
            + " kick : x . . .\n"
            + " "
            + line
            + "\n";
    assertThat(Compact.only(text, Severity.ERROR).message()).isEqualTo(message);
  }

  @Test
  void whatTheKitDoesNotKnowCannotBeCopied() {
    String text =
        "kit k\n"
            + " surface gong letter g key 52\n"
            + "groove a\n"
            + " on k\n"
            + " right : g . . .\n"
            + "groove b\n"
            + " kick : x . . .\n";
    for (String line : List.of("take all from a", "fill a in bar 1")) {
      Diagnostic told = Compact.only(text + " " + line + "\n", Severity.ERROR);
      assertThat(told.code().word()).isEqualTo("missing-surface");
      assertThat(told.message())
          .isEqualTo("“a” plays the gong, which the kit “five-piece” does not know");
    }
  }

  @Test
  void aFillTakesBarsFromACountOn() {
    String fill =
        "groove f\n hands : rl rl r l | . . . lr\ngroove g\n kick : xx x x x | xx x x x\n";
    assertThat(Compact.lastOfFine(fill + " fill f in bar 2 from 3\n"))
        .isEqualTo(
            "0 rf kick, 1/8 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick | 0 rf kick, 1/8 rf"
                + " kick, 1/4 rf kick, 1/2 R snare, 3/4 L snare");
    assertThat(Compact.lastOfFine(fill + " fill f in bars 1 2\n"))
        .isEqualTo(
            "0 R snare, 1/8 L snare, 1/4 R snare, 3/8 L snare, 1/2 R snare, 3/4 L snare"
                + " | 3/4 L snare, 7/8 R snare");
    assertThat(Compact.lastOfFine(fill + " fill f in last bar from 4&\n"))
        .as("read in the fill, which has nothing there")
        .isEqualTo(
            "0 rf kick, 1/8 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick"
                + " | 0 rf kick, 1/8 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick");
  }

  @Test
  void aFillThatGoesWrongChangesNothing() {
    String fill = "groove f\n hands : r l r l\ngroove g\n kick : x . . . | x . . .\n";
    for (String line : List.of("fill f in bar 3", "fill f in bar 2 from 5")) {
      assertThat(Compact.only(fill + " " + line + "\n", Severity.ERROR).code().word())
          .isEqualTo("count-outside-bar");
      assertThat(Compact.last(fill + " " + line + "\n")).isEqualTo("0 rf kick | 0 rf kick");
    }
  }

  @Test
  void metersMustBeTheSame() {
    String waltz = "groove a\n time 3/4\n kick : x . .\ngroove b\n kick : x . . . | x . . .\n";
    Diagnostic told = Compact.only(waltz + " take kick from a in bar 2\n", Severity.ERROR);
    assertThat(told.message()).isEqualTo("“a” is in 3/4, bar 2 of this section in 4/4");
    assertThat(told.place().bar()).isEqualTo(2);
    assertThat(Compact.last(waltz.replace("x . .\n", "x x .\n") + " take kick from a in bar 2\n"))
        .as("nothing is taken")
        .isEqualTo("0 rf kick | 0 rf kick");
    assertThat(
            Compact.only(
                    "groove a\n"
                        + " time 4/4 in 2\n"
                        + " kick : x .\n"
                        + "groove b\n"
                        + " kick : x . . .\n"
                        + " take kick from a\n",
                    Severity.ERROR)
                .message())
        .isEqualTo("“a” is in 4/4 in 2, bar 1 of this section in 4/4");
    assertThat(
            Compact.only(
                    "groove a\n"
                        + " kick : x . . .\n"
                        + "groove b\n"
                        + " time 4/4 in 2\n"
                        + " kick : x .\n"
                        + " take kick from a\n",
                    Severity.ERROR)
                .message())
        .isEqualTo("“a” is in 4/4, bar 1 of this section in 4/4 in 2");
    assertThat(
            Compact.only(
                    "groove a\n"
                        + " time 3/4\n"
                        + " pickup 1 beat\n"
                        + " kick : x\n"
                        + "groove b\n"
                        + " kick : x . . .\n"
                        + " fill a in bar 1\n",
                    Severity.ERROR)
                .code()
                .word())
        .isEqualTo("bar-length");
  }

  @Test
  void barsOfAStepRepeatWholeRoundsOfTheMeters() {
    String turns = "groove a\n time 4/4 3/4\n kick : x . . . | . x .\nstep s\n bars ";
    assertThat(Compact.lastOfFine(turns + "4\n"))
        .isEqualTo("0 rf kick | 1/4 rf kick | 0 rf kick | 1/4 rf kick");
    assertThat(Compact.lastOfFine(turns + "3\n")).isEqualTo("0 rf kick | 1/4 rf kick | 0 rf kick");
    assertThat(Compact.lastOfFine(turns + "1\n")).isEqualTo("0 rf kick");
    Diagnostic told =
        Compact.only("groove a\n time 4/4 3/4\n kick : x . . .\nstep s\n bars 2\n", Severity.ERROR);
    assertThat(told.code().word()).isEqualTo("bar-length");
    assertThat(told.message()).isEqualTo("bar 2 is in 3/4, but would repeat bar 1 in 4/4");
    assertThat(told.place().bar()).isEqualTo(2);
  }

  @Test
  void copiesAreOfTheLineThatBringsThem() {
    var groove =
        Compact.compile(TWO + "groove b\n kick : x . . . | . x . .\n take hands from a\n")
            .lesson()
            .grooves()
            .get(1);
    assertThat(groove.strokes().stream().filter(s -> s.limb().isHand()))
        .allMatch(stroke -> stroke.spot().text().equals("take hands from a"));
  }

  @Test
  void openStrokesComeOpenAndThoseTakenByLimbFixed() {
    String source = "groove a\n snare : x . . .\ngroove b\n hihat : . x . .\n";
    assertThat(Compact.lastOfFine(source + " take snare from a\nstep s\n hihat : x . . .\n"))
        .isEqualTo("0 R hihat, 0 L snare");
    assertThat(Compact.lastOfFine(source + " take right from a\nstep s\n hihat : x . . .\n"))
        .isEqualTo("0 R snare, 0 L hihat");
  }

  @Test
  void barsOfALongerSourceAreTakenByTheirNumbers() {
    String three = "groove a\n kick : x . . . | . x . . | . . x .\n";
    assertThat(
            Compact.lastOfFine(
                three
                    + "groove b\n bars 5\n ostinato hihat.foot : . . . x\n take kick from a in bars"
                    + " 2 to 5\n"))
        .isEqualTo(
            "3/4 lf hihat.foot | 1/4 rf kick, 3/4 lf hihat.foot | 1/2 rf kick, 3/4 lf hihat.foot"
                + " | 0 rf kick, 3/4 lf hihat.foot | 1/4 rf kick, 3/4 lf hihat.foot");
  }

  /** A count with two readings stops the line, whatever its other places are. */
  @Test
  void aTakeWithAnUnclearPlaceChangesNothing() {
    assertThat(
            Compact.last(
                "groove a\n left : ..s . . .\n right : ...s . . s\ngroove b\n kick : x . . .\n"
                    + " take hands from a at 1a 4\n"))
        .isEqualTo("0 rf kick");
  }

  /** The count that a fill begins from is read by the strokes of the fill. */
  @Test
  void theFirstCountOfAFillIsReadInTheFill() {
    assertThat(
            Compact.lastOfFine(
                "groove f\n"
                    + " hands : r rll r l\n"
                    + "groove g\n"
                    + " kick : x x x x\n"
                    + " fill f in bar 1 from 2a\n"))
        .isEqualTo("0 rf kick, 1/4 rf kick, 5/12 L snare, 1/2 R snare, 3/4 L snare");
  }

  /** Surfaces go by their names: what sounds is this section's kit. */
  @Test
  void theSurfaceIsTheOneOfThisKit() {
    String kits =
        "kit k\n surface gong letter g key 52\nkit m\n surface gong letter g key 57\n"
            + "groove a\n on k\n right : g . . .\ngroove b\n on m\n kick : . x . .\n";
    for (String line : List.of("take all from a", "fill a in bar 1")) {
      assertThat(Compact.compile(kits + " " + line + "\n").lesson().grooves().get(1).strokes())
          .as(line)
          .filteredOn(stroke -> stroke.surface().name().equals("gong"))
          .singleElement()
          .satisfies(stroke -> assertThat(stroke.surface().key()).isEqualTo(57));
    }
  }
}
