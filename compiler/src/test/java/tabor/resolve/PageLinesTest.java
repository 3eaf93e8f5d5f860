package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Part;
import tabor.groove.PracticeLog;

/** What section 4 of the page on teaching says of the printed page. */
class PageLinesTest {
  private static final String BEAT = " hihat : rr rr rr rr\n kick : x . . .\n";

  private static PageNotes page(String text) {
    Compiled compiled = Compact.compile(text);
    assertThat(compiled.diagnostics()).as(text).isEmpty();
    var grooves = compiled.lesson().grooves();
    return grooves.get(grooves.size() - 1).page();
  }

  private static Diagnostic only(String text) {
    List<Diagnostic> all = Compact.compile(text).diagnostics();
    assertThat(all).as(text).hasSize(1);
    return all.get(0);
  }

  @Test
  void ofEachKindTheInnermostCounts() {
    assertThat(page("groove g\n" + BEAT)).isEqualTo(PageNotes.NONE);
    String header = "page a4\npage 4 bars a line\n";
    assertThat(Compact.compile(header + "groove g\n" + BEAT).lesson().extras().wishes())
        .isEqualTo(new PageWishes(PageWishes.Paper.A4, false, 4, null));
    assertThat(page("groove g\n page 2 bars a line\n page letter\n" + BEAT).wishes())
        .isEqualTo(new PageWishes(PageWishes.Paper.LETTER, false, 2, null));
    assertThat(
            page("groove g\n page large\n page 3 columns\n" + BEAT + "step s\n page 2 columns\n")
                .wishes())
        .as("a step has the wishes of its section")
        .isEqualTo(new PageWishes(null, true, null, 2));
  }

  @Test
  void aNewPageGoalsAndTextsBelongToTheirSectionAlone() {
    String text =
        "groove g\n page new\n goal \"Even ghosts\"\n goal \"At 90\"\n teacher \"Slow.\"\n" + BEAT;
    PageNotes page = page(text);
    assertThat(page.newPage()).isTrue();
    assertThat(page.goals()).containsExactly("Even ghosts", "At 90");
    assertThat(page.teacher()).containsExactly("Slow.");
    PageNotes step = page(text + "step s\n accent kick\n");
    assertThat(step.newPage()).isFalse();
    assertThat(step.goals()).isEmpty();
    assertThat(step.teacher()).isEmpty();
    assertThat(page("groove g\n page new\n page large\n" + BEAT).newPage()).isTrue();
    assertThat(page("groove g\n page large\n" + BEAT).newPage()).isFalse();
  }

  @Test
  void aChartHasThemToo() {
    Compiled compiled =
        Compact.compile(
            "groove g\n" + BEAT + "chart c\n goal \"[right] foot\"\n page new\n play g\n");
    assertThat(compiled.diagnostics()).isEmpty();
    PageNotes page = compiled.lesson().charts().get(0).page();
    assertThat(page.newPage()).isTrue();
    assertThat(page.goals()).containsExactly("right foot");
  }

  @Test
  void textsSpeakOfTheHandsOfTheKit() {
    PageNotes page =
        page(
            "kit k\n left-handed\ngroove g\n on k\n goal \"[right] hand\"\n teacher \"[Left]\"\n"
                + BEAT);
    assertThat(page.goals()).containsExactly("left hand");
    assertThat(page.teacher()).containsExactly("Right");
  }

  @Test
  void partsAreLeftEmptyForTheStudent() {
    PageNotes page = page("groove g\n blank kick, hihat\n blank left foot\n" + BEAT);
    assertThat(page.blankSticking()).isFalse();
    assertThat(page.blankParts())
        .extracting(Part::words)
        .containsExactly("kick", "hihat", "left foot");
    PageNotes sticking = page("groove g\n blank sticking\n" + BEAT);
    assertThat(sticking.blankSticking()).isTrue();
    assertThat(sticking.blankParts()).isEmpty();
    assertThat(page("groove g\n blank sticking\n blank kick\n" + BEAT).blankSticking()).isTrue();
  }

  @Test
  void aPartIsLimbsASurfaceOrAPiece() {
    assertThat(limbs("hands")).isEqualTo("LEFT_HAND RIGHT_HAND");
    assertThat(limbs("feet")).isEqualTo("LEFT_FOOT RIGHT_FOOT");
    assertThat(limbs("all")).isEqualTo("LEFT_FOOT LEFT_HAND RIGHT_FOOT RIGHT_HAND");
    assertThat(limbs("left")).isEqualTo("LEFT_HAND");
    assertThat(limbs("kick")).isEmpty();
    Part piece = page("groove g\n blank hihat\n" + BEAT).blankParts().get(0);
    assertThat(piece.wholePiece()).isTrue();
    Part zone = page("groove g\n blank hihat.open\n" + BEAT).blankParts().get(0);
    assertThat(zone.wholePiece()).isFalse();
    assertThat(zone.surface().name()).isEqualTo("hihat.open");
  }

  private static String limbs(String words) {
    return String.join(
        " ",
        page("groove g\n blank " + words + "\n" + BEAT).blankParts().get(0).limbs().stream()
            .map(Enum::name)
            .sorted()
            .toList());
  }

  @Test
  void anUnknownPartIsTold() {
    Diagnostic told = only("groove g\n blank kik\n" + BEAT);
    assertThat(told.code().word()).isEqualTo("unknown-name");
    assertThat(told.help()).contains("kick");
  }

  @Test
  void emptyStavesTakeThePlaceOfParts() {
    PageNotes page = page("groove g\n blank 4 bars\n");
    assertThat(page.blankBars()).isEqualTo(4);
    for (String part : List.of(" kick : x . . .\n", " hands play paradiddle in sixteenths\n")) {
      Diagnostic below = only("groove g\n blank 1 bar\n" + part);
      assertThat(below.code().word()).isEqualTo("syntax");
      assertThat(below.message()).startsWith("empty staves stand in place of parts");
      assertThat(below.spot().text()).isEqualTo(part.strip());
      assertThat(below.labels().get(0).spot().text()).contains("blank 1 bar");
      Diagnostic above = only("groove g\n" + part + " blank 1 bar\n");
      assertThat(above.spot().text()).isEqualTo("blank 1 bar");
      assertThat(above.labels().get(0).spot().text()).contains(part.strip());
    }
  }

  @Test
  void aWritersLinesAreThePagesLines() {
    assertThat(page("groove g\n kick : x . . . | x . . .\nnext\n kick : x . . .\n").lineStarts())
        .containsExactly(3);
  }

  @Test
  void theLogOfTheHeader() {
    var extras =
        Compact.compile("goal \"Loud\"\nteacher \"Bring sticks.\"\nlog 4 weeks\ngroove g\n" + BEAT)
            .lesson()
            .extras();
    assertThat(extras.log()).isEqualTo(new PracticeLog(4, PracticeLog.Unit.WEEKS));
    assertThat(extras.goals()).containsExactly("Loud");
    assertThat(extras.teacher()).containsExactly("Bring sticks.");
  }
}
