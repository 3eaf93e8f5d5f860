package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;

/** What is offered at a cursor, marked §, and what is not. */
class CompletionTest {
  private static List<String> asked(String marked) {
    return labels(marked, true);
  }

  private static List<String> unasked(String marked) {
    return labels(marked, false);
  }

  private static List<String> labels(String marked, boolean explicit) {
    return items(marked, explicit).stream().map(CompletionItem::label).toList();
  }

  private static List<CompletionItem> items(String marked, boolean explicit) {
    String text = marked.replace("§", "");
    MemoryFiles files =
        new MemoryFiles().put("a.tabor", text).put("b.tabor", "pattern other : rl\n");
    Compiled compiled = files.compiled("a.tabor");
    return Completion.at(compiled, marked.indexOf('§'), explicit, files);
  }

  private static final String TWO_BARS =
      "groove a\n  hihat : xx xx xx xx | xx xx xx xx\n  kick : x . x . | x . . x\nstep b \"B\"\n";

  @Test
  void statementsAreThoseOfTheSection() {
    assertThat(asked("§")).contains("title", "time", "groove", "kit").doesNotContain("climb");
    assertThat(asked("groove a\n  §"))
        .contains("hands", "kick", "pickup", "next", "step")
        .doesNotContain("title", "climb", "count-in", "split", "drop");
    assertThat(asked(TWO_BARS + "  §"))
        .contains("split", "drop")
        .doesNotContain("pickup", "rimshot");
    assertThat(asked("step a \"A\"\n  §")).doesNotContain("pickup", "time");
    assertThat(asked("chart c\n  §")).contains("climb", "count-in").doesNotContain("split");
    assertThat(asked("kit k like five-piece\n  §"))
        .contains("surface", "without")
        .doesNotContain("split");
    assertThat(asked("pattern p : rl\n  §")).contains("groove").doesNotContain("hands", "tempo");
  }

  @Test
  void countsInTheLessonsWords() {
    String said = "say threes trip let\nsay twos und\n" + TWO_BARS;
    assertThat(asked(said + "  add kick at §")).contains("2trip", "3let", "2&", "4und");
    assertThat(asked(said + "  accent hihat at §")).contains("2und", "2&").doesNotContain("2trip");
    assertThat(asked(said + "  add kick at every §")).contains("trip", "let", "und", "beat", "&");
    assertThat(asked(said + "  add kick at every t§")).contains("trip").doesNotContain("und");
    assertThat(asked(said + "  accent hihat at every §"))
        .contains("und", "beat")
        .doesNotContain("trip");
  }

  @Test
  void whatIsCountedWithIsOffered() {
    assertThat(asked("say §"))
        .contains("twos", "threes", "fours", "1-e-&-a", "1-trip-let", "1-la-li", "ta-ka-di-mi");
    assertThat(asked("say fours §")).contains("e", "ka").doesNotContain("trip", "&");
    assertThat(asked("say fours e §")).contains("&", "und", "et", "di").doesNotContain("e");
    assertThat(asked("say fours e und §")).contains("a", "mi");
    assertThat(asked("say fours e und e §")).isEmpty();
    assertThat(asked("say threes §")).contains("trip", "la", "ki").doesNotContain("ka");
    assertThat(asked("say threes trip §")).contains("let");
    assertThat(asked("say twos §")).contains("&", "und", "di");
  }

  @Test
  void theWordsOfTeachersStandWhereTheyBelong() {
    String sheet = TWO_BARS.replace("step b \"B\"\n", "sheet s \"S\" from a\n");
    assertThat(asked(sheet + "  §")).contains("each", "and", "goal", "add");
    assertThat(asked(TWO_BARS + "  §")).doesNotContain("each", "and");
    assertThat(asked(sheet + "  each §")).contains("add", "drop", "kick");
    assertThat(asked(sheet + "  each drop kick at §")).contains("1", "3", "4").doesNotContain("2&");
    assertThat(asked(sheet + "  each drop kick at 2 §")).contains("of");
    assertThat(asked(TWO_BARS + "  drop kick at 2 §")).doesNotContain("of");
    assertThat(asked("player p \"P\"\n  §"))
        .contains("on", "open-handed", "left-handed", "sections", "limits", "language")
        .doesNotContain("add", "title");
    assertThat(asked("language §")).containsExactlyInAnyOrder("de", "en", "es", "fr");
    assertThat(asked(sheet + "  each add kick at 2 3\nchart c\n  play §"))
        .contains("a", "s", "s-1", "s-2");
    assertThat(asked(sheet + "  each add kick at 2 3\nchart c\n  play a §"))
        .contains("each", "without", "fill", "for", "at", "s-2");
    assertThat(asked(sheet + "  each add kick at 2 3\nstep t from §")).contains("s-1", "a");
  }

  @Test
  void whatFollowsIsWhatTheGrammarLetsFollow() {
    assertThat(asked("groove a\n  right §")).contains("plays", "play", "foot", ":");
    assertThat(asked("groove a\n  right plays ride §")).contains("ghosted", "at", "in", "where");
    assertThat(asked("groove a\n  right plays ride at 1 at §")).isEmpty();
    assertThat(asked("groove a\n  split left between snare §")).containsExactly("and");
    assertThat(asked(TWO_BARS + "  drop kick in §")).contains("bar", "bars", "last", "every");
    assertThat(asked(TWO_BARS + "  shift kick §")).contains("later", "earlier");
    assertThat(asked("groove a\n  dynamic §"))
        .containsExactlyInAnyOrder("pp", "p", "mp", "mf", "f", "ff");
    assertThat(asked("tempo dotted-s§")).containsExactly("dotted-sixteenth");
    assertThat(asked("groove a\n  add §")).doesNotContain("hands", "line", ":", "all");
    assertThat(asked(TWO_BARS + "  add kick plain§")).isEmpty();
  }

  @Test
  void placesAreThoseAtWhichTheLineFindsStrokes() {
    String bars = "groove a\n  hihat : x x x x | xx xx xx xx\n  kick : x . x . | x . . xx\n";
    assertThat(asked(bars + "  drop kick at every §"))
        .contains("beat", "&", "quarter", "eighth")
        .doesNotContain("e", "a");
    assertThat(asked(bars + "  drop hihat at 3 to §")).contains("3", "4&").doesNotContain("2");
    assertThat(asked(bars + "  drop kick at 4& in bar §")).containsExactly("2");
    assertThat(asked(bars + "  drop kick at 3 in §")).contains("bar").doesNotContain("last");
    assertThat(asked(bars + "  drop kick at 4& in §")).contains("last");
  }

  @Test
  void patternsAreThoseWhoseLettersThePartKnows() {
    String own = "pattern one : Rlk\npattern two : hhss\ngroove a\n  ";
    assertThat(asked(own + "line play §"))
        .contains("one", "paradiddle")
        .doesNotContain("two", "son-clave", "spread");
    assertThat(asked(own + "right play §"))
        .contains("two", "son-clave", "spread")
        .doesNotContain("one", "paradiddle");
    assertThat(asked(own + "hands play §"))
        .contains("paradiddle", "spread")
        .doesNotContain("one", "two");
  }

  @Test
  void surfacesAreThoseThatTheLimbAndTheVerbCanHave() {
    assertThat(asked("groove a\n  right plays §"))
        .contains("ride", "ride.bell")
        .doesNotContain("kick", "hihat.foot");
    assertThat(asked("groove a\n  feet play §")).contains("kick").doesNotContain("ride");
    assertThat(asked("groove a\n  split right foot between §"))
        .contains("kick", "hihat.foot")
        .doesNotContain("snare");
    assertThat(asked(TWO_BARS + "  drop §"))
        .contains("hihat", "kick", "hands", "all")
        .doesNotContain("cowbell", "snare");
    assertThat(asked(TWO_BARS + "  open §")).contains("hihat").doesNotContain("kick");
    assertThat(asked("on four-piece\ngroove a\n  §")).contains("tom1");
  }

  @Test
  void countsAreThoseThatAreThere() {
    assertThat(asked(TWO_BARS + "  drop kick at §")).containsExactly("1", "3", "4", "every");
    assertThat(asked(TWO_BARS + "  drop kick in bar 2 at §")).contains("4").doesNotContain("3");
    assertThat(asked(TWO_BARS + "  move kick from §")).containsExactly("1", "3", "4");
    assertThat(asked(TWO_BARS + "  move kick from 3 to §")).contains("3&", "2e");
    assertThat(asked(TWO_BARS + "  add snare at §")).contains("1", "1&", "1e", "4a");
    assertThat(asked(TWO_BARS + "  drop kick in bar §")).containsExactly("1", "2");
    assertThat(asked("time 3/4\ngroove a\n  snare : x x x\n  add kick at §")).doesNotContain("4");
  }

  @Test
  void namesAreThoseThatExist() {
    String text = "groove a\n  hands : r r r r\npattern p : rl\nstep b \"B\"\n";
    assertThat(asked(text + "chart c\n  play §")).contains("a", "b").doesNotContain("p", "c");
    assertThat(asked(text + "step d from §")).containsExactly("a", "b");
    assertThat(asked(text + "  take kick from §")).containsExactly("a");
    assertThat(asked(text + "  hands play §")).contains("p", "paradiddle", "son-clave", "spread");
    assertThat(asked("use \"b.tabor\"\ngroove a\n  hands play o§")).containsExactly("other");
    assertThat(asked("use \"§")).containsExactly("b.tabor");
    assertThat(asked("on §")).containsExactly("five-piece", "four-piece", "junior", "practice-pad");
    assertThat(asked("groove n§")).isEmpty();
  }

  @Test
  void nothingIsOfferedInTextsAndComments() {
    assertThat(asked("# on §")).isEmpty();
    assertThat(asked("title \"on §\"")).isEmpty();
    assertThat(asked("step two \"Two\"§")).isEmpty();
    assertThat(unasked("step two \"Two\" §")).isEmpty();
    assertThat(asked("step two \"Two\" §")).containsExactly("from");
  }

  @Test
  void unaskedNothingIsOfferedBehindACompleteWord() {
    assertThat(unasked("groove a\n  right plays snare§")).isEmpty();
    assertThat(asked("groove a\n  right plays snare§")).contains("snare", "snare.cross");
    assertThat(unasked("groove a\n  right plays snar§")).contains("snare", "snare.cross");
    assertThat(unasked(TWO_BARS + "  drop kick at 1§")).isEmpty();
    assertThat(unasked("groove a\n  §")).isEmpty();
    assertThat(unasked("groove a\n  right plays ride §")).isEmpty();
    assertThat(unasked("groove a\n  right plays §")).isNotEmpty();
  }

  @Test
  void lettersAreOfferedOnlyWhenAskedFor() {
    assertThat(unasked("groove a\n  right : h§")).isEmpty();
    assertThat(asked("groove a\n  right : §")).contains("d", "h", "s", "x").doesNotContain("k");
    assertThat(asked("groove a\n  right foot : §")).contains("k").doesNotContain("d");
    assertThat(asked("groove a\n  hands : r§")).contains("r", "l", "b").doesNotContain("d", "%");
    assertThat(asked("groove a\n  hands : r r r r | §")).contains("%");
  }

  @Test
  void anItemTakesThePlaceOfTheWordBegun() {
    CompletionItem bell = find(items("groove a\n  right plays ri§\n", true), "ride.bell");
    assertThat(apply("groove a\n  right plays ri\n", bell))
        .isEqualTo("groove a\n  right plays ride.bell\n");
    CompletionItem inside = find(items("groove a\n  right plays ri§de\n", true), "ride.bell");
    assertThat(apply("groove a\n  right plays ride\n", inside))
        .isEqualTo("groove a\n  right plays ride.bell\n");
    CompletionItem letter = find(items("groove a\n  hands : r rl§\n", true), "b");
    assertThat(letter.replaced().length()).isEqualTo(2);
    assertThat(apply("groove a\n  hands : r rl\n", letter))
        .isEqualTo("groove a\n  hands : r rlb\n");
  }

  private static CompletionItem find(List<CompletionItem> items, String label) {
    return items.stream().filter(item -> item.label().equals(label)).findFirst().orElseThrow();
  }

  static String apply(String text, CompletionItem item) {
    return TextEdit.apply(List.of(new TextEdit(item.replaced(), item.text())), text);
  }

  @Test
  void aStatementComesWithItsUsage() {
    CompletionItem split = find(items("groove a\n  snare : x x x x\n  spl§", true), "split");
    assertThat(split.detail()).startsWith("split LIMB");
    assertThat(split.documentation()).contains("in turn");
  }
}
