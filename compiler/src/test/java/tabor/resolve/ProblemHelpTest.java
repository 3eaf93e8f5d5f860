package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;

/** What messages say beyond their code: the bar that they mean, help, and fixes. */
class ProblemHelpTest {
  @Test
  void nearNamesAreOfferedWithTheirFix() {
    Diagnostic unknown =
        Compact.compile("groove g\n hands play paradidle in triplets\n").diagnostics().get(0);
    assertThat(unknown.help()).contains("paradiddle");
    assertThat(unknown.fixes().get(0).edits().get(0).text()).isEqualTo("paradiddle");
  }

  @Test
  void bothReadingsOfAnAmbiguousCountAreOffered() {
    Diagnostic ambiguous =
        Compact.compile("groove g\n left : ..s . . .\n right : ...s . . .\n accent hands at 1a\n")
            .diagnostics()
            .get(0);
    assertThat(ambiguous.fixes().stream().map(f -> f.edits().get(0).text()))
        .containsExactly("1a/3", "1a/4");
  }

  @Test
  void aPatternWithoutItsNoteValueIsNoSurface() {
    for (String name : List.of("paradiddle", "mine")) {
      String start = "pattern mine : rlrr\ngroove g\n hands play ";
      List<Diagnostic> told = Compact.compile(start + name + "\n").diagnostics();
      Diagnostic unknown = told.get(told.size() - 1);
      assertThat(unknown.help()).contains("is a pattern", "hands play " + name + " in sixteenths");
      String fixed = unknown.fixes().get(0).edits().get(0).text();
      assertThat(Compact.compile(start + fixed + "\n").diagnostics())
          .noneMatch(one -> one.severity() == Severity.ERROR);
      assertThat(Compact.compile(start + name + " at 1\n").diagnostics())
          .allMatch(one -> one.fixes().isEmpty());
    }
  }

  @Test
  void whoeverNamesNoKitLearnsWhichThereAre() {
    for (String text :
        List.of(
            "on drums\ngroove g\n kick : x . . .\n", "groove g\n on drums\n kick : x . . .\n")) {
      assertThat(first(text).help())
          .isEqualTo("the built-in kits are five-piece, four-piece, junior, practice-pad");
    }
  }

  @Test
  void oneBarIsOne() {
    assertThat(first("groove g\n kick : x . . .\n snare : x . . . | x . . .\n").message())
        .isEqualTo("this part has 2 bars, but there is 1 bar above");
  }

  @Test
  void placesWhereAPartIsExpectedAreMovedBehindIt() {
    String groove = "groove g\n hands : rlrl rlrl rlrl rlrl\nstep s\n ";
    for (List<String> said :
        List.of(
            List.of("accent backbeats", "all at 2 4"),
            List.of("ghost upbeats", "all at every &"),
            List.of("drop offbeats", "all at every &"),
            List.of("accent downbeats", "all at every beat"))) {
      Diagnostic unknown = first(groove + said.get(0) + "\n");
      assertThat(unknown.help()).endsWith(said.get(1));
      String verb = said.get(0).substring(0, said.get(0).indexOf(' ') + 1);
      String fixed = verb + unknown.fixes().get(0).edits().get(0).text();
      assertThat(fixed).endsWith(said.get(1));
      assertThat(Compact.compile(groove + fixed + "\n").diagnostics()).isEmpty();
    }
    // With places of its own the line says something else that nobody can guess.
    assertThat(first(groove + "accent backbeats at 1\n").fixes()).isEmpty();
  }

  private static Diagnostic first(String text) {
    return Compact.compile(text).diagnostics().get(0);
  }

  @Test
  void messagesNameTheBarTheyMean() {
    Diagnostic length = first("groove g\n hands : r l r l | r l r | r l r l\n");
    assertThat(length.message()).startsWith("bar 2 has 3 beats");
    assertThat(length.place().bar()).isEqualTo(2);
    Diagnostic there =
        first("groove g\n kick : x . . . | . x . .\nstep s\n accent kick at 1 in bar 2\n");
    assertThat(there.help()).isEqualTo("in bar 2 it is played at 2");
    Diagnostic elsewhere =
        first(
            "groove g\n kick : x . . . | . . . . | x . . .\nstep s\n accent kick at 1 in bar 2\n");
    assertThat(elsewhere.help()).isEqualTo("it is played in bars 1 3");
  }

  @Test
  void theNearestCountsAreOffered() {
    Diagnostic drop = first("groove g\n kick : x .x . x\nstep s\n drop kick at 2\n");
    assertThat(drop.fixes().get(0).edits().get(0).text()).isEqualTo("2&");
  }

  /** A name that is none is read where a chart line says how often. */
  @Test
  void whatLooksLikeHowOftenIsSaidWithANumber() {
    String chart = "groove money\n hands : rl rl rl rl\nchart c\n play money ";
    for (String[] pair :
        new String[][] {
          {"x4", "how often is said with a number: 4 times", "4 times"},
          {"x1", "how often is said with a number: 1 time", "1 time"},
          {"twice", "how often is said with a number: 2 times", "2 times"},
          {"once", "how often is said with a number: 1 time", "1 time"}
        }) {
      Diagnostic unknown = first(chart + pair[0] + "\n");
      assertThat(unknown.code().word()).isEqualTo("unknown-name");
      assertThat(unknown.help()).isEqualTo(pair[1]);
      assertThat(unknown.fixes().get(0).edits().get(0).text()).isEqualTo(pair[2]);
    }
    assertThat(first(chart + "twelve\n").help())
        .isEqualTo("how often is said with a number: 12 times or 12 bars");
    assertThat(first(chart + "times\n").help()).isEqualTo("a number stands before it: 4 times");
    assertThat(first(chart + "then money\n").help())
        .isEqualTo("sections follow one another without a word between them");
    assertThat(first(chart + "x0\n").help()).startsWith("a section is named as in its heading");
    assertThat(first(chart + "mony\n").help()).isEqualTo("did you mean “money”?");
  }

  @Test
  void wordsOfTheTradePointToOurs() {
    for (String[] pair :
        new String[][] {
          {"bass", "kick"},
          {"sd", "snare"},
          {"hh", "hihat"},
          {"bd", "kick"},
          {"hat", "hihat"},
          {"floor-tom", "floor"},
          {"bombo", "kick"},
          {"caisse-claire", "snare"},
          {"standtom", "floor"},
          {"links", "left"},
          {"r", "right"},
          {"s", "snare"}
        }) {
      Diagnostic unknown = first("groove g\n " + pair[0] + " : x . x .\n");
      assertThat(unknown.fixes()).hasSize(1);
      assertThat(unknown.fixes().get(0).edits().get(0).text()).isEqualTo(pair[1]);
    }
    assertThat(first("groove g\n trumpet : x . x .\n").help()).contains("kick", "snare", "floor");
  }

  @Test
  void strokesWrittenApartOrInOneWordAreOfferedAsBeats() {
    for (String wrong : List.of("x x x x x x x x", "xxxxxxxx")) {
      Diagnostic length = first("groove g\n hihat : " + wrong + "\n");
      assertThat(length.fixes().get(0).edits().get(0).text()).isEqualTo("xx xx xx xx");
    }
  }

  @Test
  void barLinesBetweenBeatsAreToldOnceAndTakenOut() {
    String text = "groove g\n hihat : | xx | x. | xx | .x | xx | xx | xx | x |\n";
    assertThat(Compact.problems(text)).containsExactly("2 bar-length");
    Diagnostic length = first(text);
    assertThat(length.help()).startsWith("bar lines stand between bars, not between beats");
    assertThat(length.fixes().get(0).edits().get(0).text()).isEqualTo("xx x. xx .x | xx xx xx x");
    assertThat(Compact.problems("groove g\n hihat : xx | xx | xx\n")).hasSize(3);
    assertThat(Compact.problems("groove g\n hihat : xx | xx | % | xx\n")).hasSize(3);
  }

  @Test
  void aForgottenBarLineIsOfferedBeforeTheCut() {
    Diagnostic length = first("groove g\n hihat : xx xx xx xx xx xx xx xx\n");
    assertThat(length.fixes().get(0).title()).isEqualTo("set the bar line");
    assertThat(length.fixes().get(0).edits().get(0).text()).isEqualTo(" |");
  }

  @Test
  void longBeatsAreExplainedAndGroupsOffered() {
    Diagnostic length = first("groove g\n time 5/4 in 3+2\n snare : r l r l r\n");
    assertThat(length.help()).contains("2 long beats", "grouped 3+2");
    assertThat(length.fixes().get(0).edits().get(0).text()).isEqualTo(" grouped ");
  }

  @Test
  void theOpenHiHatHasASign() {
    Diagnostic letter = first("groove g\n hihat : xo . . .\n");
    assertThat(letter.fixes().get(0).edits().get(0).text()).isEqualTo("x=");
  }

  @Test
  void aPartOfOneBarIsOfferedAsAnOstinato() {
    Diagnostic count = first("groove g\n bars 4\n snare : . x . x\n");
    assertThat(count.fixes().get(0).edits().get(0).text()).isEqualTo("ostinato ");
  }

  @Test
  void aRepeatAfterNextStandsWhereItsBarIsWritten() {
    String text = "groove g\n hands : (R)l r . .\nnext\n hands : %\n";
    var compiled = Compact.compile(text);
    for (var stroke : compiled.lesson().grooves().get(0).strokes()) {
      assertThat("rl").contains(stroke.spot().text().toLowerCase(java.util.Locale.ROOT));
    }
  }

  @Test
  void aBuzzOfOneHandThatIsHeldTooLongDeservesAHint() {
    assertThat(Compact.hints("groove g\n snare : r~ - - .\n")).containsExactly("2 held-drum");
    assertThat(Compact.hints("groove g\n snare : r~ - . .\n")).isEmpty();
    assertThat(Compact.hints("groove g\n snare : b~ - - .\n")).isEmpty();
  }
}
