package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.resolve.Options;
import tabor.testing.RudimentTable;

/** The stickings of the table are read from a file of their own, not from the built-in patterns. */
class RudimentFinderTest {
  /** Rolls of single strokes look the same when they go round: told apart below by their rests. */
  private static final Set<String> SINGLES =
      Set.of("single-stroke-roll", "single-stroke-four", "single-stroke-seven");

  static List<RudimentTable.Row> rows() {
    return RudimentTable.rows();
  }

  private static Groove groove(String source) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("test.tabor"), source, Options.NONE);
    assertThat(compiled.diagnostics())
        .as(source)
        .noneMatch(d -> d.code().severity().word().equals("error"));
    return compiled.lesson().grooves().get(0);
  }

  /** A place of the table as a letter of a hands part. */
  private static String written(String token) {
    int small = 0;
    char letter = ' ';
    int strokes = 0;
    for (int i = 0; i < token.length(); i++) {
      char c = token.charAt(i);
      if (c == 'r' || c == 'l') {
        small++;
      } else if (c == 'R' || c == 'L') {
        letter = Character.toLowerCase(c);
        strokes++;
      }
    }
    String sign =
        token.contains(">")
            ? String.valueOf(Character.toUpperCase(letter))
            : String.valueOf(letter);
    return "'".repeat(small) + sign + (strokes == 2 ? "/" : "") + (token.contains("z") ? "~" : "");
  }

  private static String word(String tokens) {
    StringBuilder word = new StringBuilder();
    for (String token : tokens.split(" ", -1)) {
      word.append(written(token));
    }
    return word.toString();
  }

  private static List<String> names(Groove groove) {
    return RudimentFinder.find(groove).stream().map(RudimentFinder.Found::name).toList();
  }

  private static String spoken(String name) {
    return name.startsWith("single-paradiddle") ? name.substring("single-".length()) : name;
  }

  @ParameterizedTest
  @MethodSource("rows")
  void bothLeadsGoingRound(RudimentTable.Row row) {
    if (SINGLES.contains(row.name())) {
      return;
    }
    // Both leads in turn, as even places of one bar each; twice, so that short ones are enough.
    String right = word(row.right());
    String left = word(row.left());
    Groove section =
        groove(
            "tempo 40\ngroove g\n hands : "
                + right
                + ":2 "
                + left
                + ":2 | "
                + right
                + ":2 "
                + left
                + ":2\n");
    assertThat(names(section)).as(right + " " + left).isNotEmpty().containsOnly(spoken(row.name()));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void onceWithRests(RudimentTable.Row row) {
    if (Set.of("single-stroke-roll", "double-stroke-open-roll", "flam-tap", "single-drag-tap")
        .contains(row.name())) {
      return; // these are repeated to be heard as what they are
    }
    Groove section = groove("tempo 40\ngroove g\n hands : " + word(row.right()) + ":2 . .\n");
    assertThat(names(section)).as(row.right()).containsExactly(spoken(row.name()));
  }

  /** One stroke by the other hand, one grace note more or less: something else, or nothing. */
  @ParameterizedTest
  @MethodSource("rows")
  void nearMissesHaveNotItsName(RudimentTable.Row row) {
    String[] tokens = row.right().split(" ", -1);
    for (int i = 0; i < tokens.length; i++) {
      for (String other : others(tokens[i])) {
        String[] changed = tokens.clone();
        changed[i] = other;
        String played = String.join(" ", changed);
        if (tokens.length == 1 && other.equals(swapped(tokens[0]))) {
          continue; // the other hand alone is the other lead
        }
        String words = word(played);
        Groove section = groove("tempo 40\ngroove g\n hands : " + words + ":2 . .\n");
        assertThat(names(section)).as(played).doesNotContain(spoken(row.name()));
      }
    }
  }

  /** The token with the hands exchanged. */
  private static String swapped(String token) {
    StringBuilder other = new StringBuilder();
    for (int i = 0; i < token.length(); i++) {
      char c = token.charAt(i);
      int at = "rlRL".indexOf(c);
      other.append(at < 0 ? c : "lrLR".charAt(at));
    }
    return other.toString();
  }

  /** What is nearly the token: the other hand, one grace note more, one less. */
  private static List<String> others(String token) {
    List<String> others = new ArrayList<>(List.of(swapped(token)));
    if (!token.contains("z") && !token.startsWith("RR") && !token.startsWith("LL")) {
      String grace = token.contains("R") ? "l" : "r";
      int graces = token.length() - token.replaceAll("[rl]", "").length();
      if (graces < 2) {
        others.add(grace + token);
      }
      if (graces > 0) {
        others.add(token.substring(1));
      }
    }
    return others;
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "rlrr lrll . .,paradiddle",
        "Rlrr Lrll Rlrr Lrll,paradiddle",
        "{rr}{ll}{rr}{ll} {rr}{ll}{rr}{ll} . .,double-stroke-open-roll",
        "r/l/r. l/r/l. . .,five-stroke-roll",
        "{rr}{ll}r. {ll}{rr}l. . .,five-stroke-roll",
        "rlrl rlrl rlrl rlrl,single-stroke-roll",
        "rrl rrl . .,",
        "rlr l . .,single-stroke-four",
        // near misses
        "rlrl rrll . .,",
        "rlrl rrll rlrl rrll,",
        "rllr lrrl rllr lrrl,",
        "rr lr ll rl,",
        "rrlr llrl rrlr llrl,",
        "rrrl rrrl . .,",
        "rlrr rlrl . .,",
        "{rr}{ll}{rr}. l . .,",
        "r/l/r/. l . .,",
        "r/l/r/l . . .,seven-stroke-roll",
        "{rr}{ll}{rr}l . . .,seven-stroke-roll",
        "{rr}{ll}{rr}{ll} r . .,nine-stroke-roll",
        "'rlrl . . .,flam",
        "'rlr l . .,flam-accent",
        "'rlr 'lrl . .,flam-accent",
        "'rl 'rl . .,flam",
        "rlrr l . .,paradiddle",
        "rlrlrr lrlrll . .,double-paradiddle",
        "rlrrll rlrrll . .,paradiddle-diddle",
        "rlrl rlrr lrlr lrll,triple-paradiddle",
      })
  void howeverItIsWritten(String words, String name) {
    List<String> names = names(groove("groove g\n hands : " + words + "\n"));
    if (name == null) {
      assertThat(names).isEmpty();
    } else {
      assertThat(names).containsOnly(name);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "r. rr r. rr,.l .. .. ..",
    "rrrr rrrr,.... ....",
    "r.rr .... r.rr ....,.l.. .... .l.. ....",
    "r.r. r.r. r.r. r.r.,.l.l .l.l .l.l .l.l",
  })
  void timeWithSomethingAgainstItIsNone(String ride, String snare) {
    String rest = ride.split(" ").length == 2 ? " . ." : "";
    String lines = " ride : " + ride + rest + "\n snare : " + snare + rest + "\n";
    assertThat(names(groove("tempo 60\ngroove g\n" + lines))).isEmpty();
  }

  @Test
  void acrossTheKit() {
    Groove section =
        groove(
            "groove g\n"
                + " right plays ride\n"
                + " left plays snare\n"
                + " hands : rlrr lrll rlrr lrll\n"
                + " kick : x x x x\n");
    List<RudimentFinder.Found> found = RudimentFinder.find(section);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).throughout()).isTrue();
    assertThat(found.get(0).name()).isEqualTo("paradiddle");
  }

  /** A name needs the hands' line on drums; from drum to cymbal it must fill the section. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "right plays floor | left plays snare | rlrr lrll . . | paradiddle",
        "right plays tom1  | left plays tom2  | rlrr lrll . . | paradiddle",
        "right plays ride  | left plays snare | rlrr . . .    | ",
        "right plays ride  | left plays snare | rlrr lrll rlrr lrll | paradiddle",
        "right plays ride  | left plays snare | rlrr lrll . . | ",
        "right plays ride  | left plays snare | rlrr lrll r r | ",
        "right plays ride  | left plays snare | rlrr lrll rlrr lrlr | ",
        "right plays ride  | left plays snare | {rr}{ll}{rr}{ll} {rr}{ll}{rr}{ll} . . | ",
        "right plays crash | left plays crash2 | rlrl rlrl rlrl rlrl | ",
      })
  void onDrumsOrThroughout(String right, String left, String hands, String name) {
    List<String> names =
        names(groove("groove g\n " + right + "\n " + left + "\n hands : " + hands + "\n"));
    assertThat(names).isEqualTo(name == null ? List.of() : List.of(name));
  }

  @Test
  void anotherStrokeOfAHandBetweenBreaksIt() {
    String parts = "groove g\n hands : rlrr lrll . .\n";
    assertThat(names(groove(parts))).containsExactly("paradiddle");
    assertThat(names(groove(parts + " ride : .r.. .... . .\n"))).isEmpty();
    assertThat(names(groove("groove g\n hands : rl.r lrll . .\n left : ..t. . . .\n"))).isEmpty();
  }

  @Test
  void handsTogetherAreNoRudiment() {
    assertThat(names(groove("groove g\n hihat : rr rr rr rr\n snare : . l . l\n"))).isEmpty();
  }

  @Test
  void theRestOfABarIsLeftAlone() {
    Groove section = groove("groove g\n hands : rlrr lrll r l | r . r . \n");
    List<RudimentFinder.Found> found = RudimentFinder.find(section);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).first().bar()).isEqualTo(1);
    assertThat(FindingWords.count(section, found.get(0).first())).isEqualTo("1");
    assertThat(FindingWords.count(section, found.get(0).last())).isEqualTo("2a");
  }
}
