package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is said about the thing under the cursor, marked §. */
class HoverTest {
  private static String at(String marked) {
    String text = marked.replace("§", "");
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    return Hover.at(files.compiled("a.tabor"), marked.indexOf('§'), files)
        .map(note -> plain(note.markdown()))
        .orElse("");
  }

  private static String plain(String markdown) {
    return markdown
        .replaceAll("(?m)^```.*\\R?", "")
        .replace("**", "")
        .replace("`", "")
        .replace("  \n", "\n")
        .strip();
  }

  private static final String FOUR =
      "groove a\n  kick : x . . . | . x . . | . . x . | . . . x\nstep b \"B\"\n";

  @Test
  void aCountInTheLessonsWordsSaysWhatItIs() {
    String said = "say threes trip let\n" + FOUR;
    assertThat(at(said + "  add kick at §2trip\n")).contains("2trip, that is 2&/3");
    assertThat(at(said + "  add kick at every §trip\n"))
        .contains("every trip, that is 1&/3 2&/3 3&/3 4&/3");
  }

  @Test
  void aCountSpeaksOfTheBarThatItsLineNames() {
    assertThat(at(FOUR + "  double kick at §2 in bar 2\n")).contains("2 in bar 2");
    assertThat(at(FOUR + "  double kick at §3\n")).contains("here bar 3");
    assertThat(at(FOUR + "  double kick at §4 in bars 2 4\n"))
        .contains("bars 2 4")
        .contains("here bar 4");
    assertThat(at(FOUR + "  dynamic f at §1 in bar 3\n")).contains("1 in bar 3");
    assertThat(at(FOUR + "  crescendo to f from 1 in bar 2 to §4\n")).contains("4 in bar 2");
  }

  @Test
  void aVariationSaysWhatItChanges() {
    String text =
        "groove a \"A\"\n  kick : r . . .\nsheet s \"S\" from a\n  each add kick at 2 3\n"
            + "chart c\n  play §s-2 s\n";
    assertThat(at(text)).contains("2 variations of a", "1 bar", "kick: added on 3");
    assertThat(at(text.replace("§", "").replace("s-2 s", "s-2 §s")))
        .contains("2 variations of a")
        .doesNotContain("added");
    assertThat(at(text.replace("§", "").replace("each add", "§each add"))).contains("variation");
  }

  @Test
  void aRepeatSignShowsTheBarsThatItStandsFor() {
    assertThat(at("groove a\n  kick : x . x . | §%\n")).contains("a, bar 2");
    assertThat(
            at(
                "groove a\n"
                    + "  kick : x . . . | . . . . | . . . . | x . . .\n"
                    + "  ostinato snare : . r . r | §%\n"))
        .contains("a, bars 2 4");
  }

  @Test
  void aSpreadWordShowsItsBeats() {
    assertThat(at("groove a\n  hands : rlr:§2 r l\n"))
        .contains("spreads over")
        .contains("1")
        .contains("2");
    assertThat(at("groove a\n  hands : r§lr:2 r l\n"))
        .contains("left hand")
        .containsPattern("1 .*2");
  }

  @Test
  void aLetterOfAnOstinatoNamesAllItsBars() {
    assertThat(at("groove a\n  snare : x . . . | x . . .\n  ostinato kick : §r . r .\n"))
        .contains("right foot, kick")
        .contains("bars 1 2");
  }

  @Test
  void aFootIsNoHand() {
    assertThat(at("groove a\n  kick : §x . x .\n")).contains("Tabor chose the foot");
    assertThat(at("groove a\n  snare : §x . x .\n")).contains("Tabor chose the hand");
    assertThat(at("groove a\n  right foot : §k . k .\n")).doesNotContain("Tabor chose");
  }

  @Test
  void signsAreExplained() {
    assertThat(at("groove a\n  snare : §'r . ''l .\n")).contains("flam");
    assertThat(at("groove a\n  snare : 'r . §''l .\n")).contains("drag");
    assertThat(at("groove a\n  snare : r§/ . l .\n")).contains("diddle");
    assertThat(at("groove a\n  snare : r . l§^ .\n")).contains("rimshot");
    assertThat(at("groove a\n  hands : r r r r | §%\n")).contains("bar before again");
  }

  @Test
  void aStatementTellsItsUsage() {
    assertThat(at(FOUR + "  §drop kick at 1\n"))
        .contains("drop TARGET AT")
        .contains("Leaves strokes out");
    assertThat(at(FOUR + "  snare §follows right foot in bar 2\n"))
        .contains("SURFACE follows LIMB")
        .contains("here it adds strokes at 2");
    assertThat(at("§tempo 90\n")).contains("Sets the speed");
    assertThat(at("chart c\n  §rest 2 bars\n")).contains("Leaves bars empty");
  }

  @Test
  void namesTellWhatTheyName() {
    assertThat(at("groove a \"First\"\n  hands : r r r r\nchart c\n  play §a\n"))
        .contains("First")
        .contains("1 bar of 4/4");
    assertThat(at(FOUR + "  add snare at 2\nchart c\n  play §b\n")).contains("snare");
    assertThat(at("groove a\n  hands play §paradiddle in sixteenths\n"))
        .contains("rudiment 16")
        .contains("RlrrLrll");
    assertThat(at("on §junior\n")).contains("snare");
    assertThat(at("groove a\n  §ride : r r r r\n")).contains("MIDI key 51").contains("a, bar 1");
  }
}
