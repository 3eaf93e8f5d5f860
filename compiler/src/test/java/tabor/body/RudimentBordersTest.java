package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.resolve.Options;

/**
 * Where a rudiment begins and ends: the rules in words are those of docs/body.md, the results were
 * read off the rows by hand.
 */
class RudimentBordersTest {
  private static String where(Groove groove, Stroke stroke) {
    return (groove.bars() == 1 ? "" : stroke.bar() + ":") + FindingWords.count(groove, stroke);
  }

  private static String found(String lines) {
    return found("4/4", lines);
  }

  private static String found(String meter, String lines) {
    String source = "tempo 30\ntime " + meter + "\ngroove g\n" + lines + "\n";
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("t.tabor"), source, Options.NONE);
    assertThat(compiled.diagnostics())
        .as(source)
        .noneMatch(d -> d.code().severity().word().equals("error"));
    Groove groove = compiled.lesson().grooves().get(0);
    StringBuilder all = new StringBuilder();
    for (RudimentFinder.Found found : RudimentFinder.find(groove)) {
      all.append(all.isEmpty() ? "" : ", ")
          .append(found.name())
          .append(' ')
          .append(where(groove, found.first()))
          .append('-')
          .append(where(groove, found.last()))
          .append(found.throughout() ? " throughout" : "");
    }
    return all.toString();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '"',
      value = {
        // One cycle needs a border before it: a rest, slower strokes, another rudiment, the
        // start.
        "rlrr . . . ; paradiddle 1-1a",
        ". rlrr . . ; paradiddle 2-2a",
        "rl rlrr . . ; paradiddle 2-2a",
        ".... ...l rlrr . ; -",
        "llrr rlrr . . ; -",
        "rl.l rlrr . . ; -",
        "rlrr lrrr . . ; -",
        // Several cycles need none, from a beat on.
        "llrr rlrr lrll . ; paradiddle 2-3a",
        "rlrl rlrr lrll rlrl ; paradiddle 2-3a",
        "rlrl rlrr lrll rlrl | rlrr lrlr . . ; paradiddle 1:2-1:3a",
        "rlrl rlrlrr lrllrl . ; -",
        "rlrl rlrr lrlr . ; -",
        ". . . llrr | rlrr lrll . . ; paradiddle 2:1-2:2a",
        ". . . llrr | rlrr l . . ; -",
        ". . . llrr | . rlrr lrll . ; paradiddle 2:2-2:3a",
        // One cycle needs a border after it, too: a rest, or one last stroke on the beat; two
        // need none.
        "rlrr l . . ; paradiddle 1-1a",
        "rlrr l.l. . . ; paradiddle 1-1a",
        "rlrr llll . . ; -",
        "rlr rl. . . ; -",
        "rlr r.. . . ; paradiddle 1-2",
        "rlr r.l . . ; paradiddle 1-2",
        "rlrr llrrll . . ; -",
        "rlrr lrll rrll r.r. ; paradiddle 1-2a",
        // Another rudiment is a border.
        "rlrr lrll 'rlr 'lrl ; paradiddle 1-2a, flam-accent 3-4a",
        "rlrr 'rl 'rl . ; paradiddle 1-1a, flam 2-2, flam 3-3",
        "'rlrr rlrr rlrr . ; flam-paradiddle 1-1a, paradiddle 2-2a, paradiddle 3-3a",
        "rlrl rrll rlrr . ; -",
        "rlrr lrll rlrl rlrl ; paradiddle 1-2a, single-stroke-roll 3-4a",
        "rlrr lrll rlrr l ; paradiddle 1-3a",
        // The most strokes have a name: a longer roll goes before two paradiddles in its way,
        // even after a flam ...
        ". 'l rlr rlr | llr rll rrl lrr ; flam 1:2-1:2, double-stroke-open-roll 2:1-2:4a",
        "r 'l rlr rlr | llr rll rrl lrr ; flam 1:2-1:2, double-stroke-open-roll 2:1-2:4a",
        // ... but not if the double paradiddle before them has a name only with them.
        "rlr lrr lrl lrl | rrl lrr llr rll ; double-paradiddle 1:1-1:2a, paradiddle 1:3-2:1&",
        // Plain strokes off the beat have their letters by chance; others have them not.
        ".rlr r . . ; -",
        ".rl rr . . ; -",
        ".'rl r . . ; flam-accent 1&-2",
        "r.r/l/ r . . ; -",
        "..r/l/ r/l/rl . . ; ten-stroke-roll 1&-2a",
        // Single and double strokes at one speed, from eight on; pressed ones from four on.
        "rlrl rlr . . ; -",
        "rlrl rlrl . . ; single-stroke-roll 1-2a throughout",
        "rlrl rlrl r . ; single-stroke-roll 1-3",
        "rlrl rlrlrl r . ; -",
        "rlrl rlrl rlrlrl r ; single-stroke-roll 1-3",
        "{rr}{ll}{rr}{ll} . . . ; double-stroke-open-roll 1-1a.2 throughout",
        "{rr}{ll}{rr} . . . ; -",
        "{rr}{ll}{rr}{ll} rrll rrll . ; double-stroke-open-roll 1-1a.2, double-stroke-open-roll"
            + " 2-3a",
        "rrll rrll r.r. l.l. ; double-stroke-open-roll 1-2a",
        "r~l~r~l~ . . . ; multiple-bounce-roll 1-1a throughout",
        "r~l~r~ . . . ; -",
        "r~l~ r~ l~ . ; -",
        // Rolls of a number of strokes: no double of that speed before or after.
        "r/l/r. . . . ; five-stroke-roll 1-1&",
        "{rr}r/l/r. . . . ; -",
        "r/l/r/l/ r/l/r/l/ r . ; seventeen-stroke-roll 1-3",
        "r/l/r/l/ r/l/r/l/ r l ; seventeen-stroke-roll 1-3",
        "r/l/r/l/ rl.. . . ; ten-stroke-roll 1-2e",
        "r/l/r/l/ r/l/rl . . ; double-stroke-open-roll 1-2e",
        ". r/lrr . . ; single-dragadiddle 2-2a",
        "l/r/lrr . . . ; -",
        ". r/lrr/ . . ; -",
        // They follow each other at once or after up to three empty places.
        "r/l/r l/r/l r/l/r l/r/l ; five-stroke-roll 1-4a throughout",
        "r/l/r... l/r/l... . . ; five-stroke-roll 1-2.3",
        "r/l/r.... l/r/l.... . . ; five-stroke-roll 1-1.3, five-stroke-roll 2-2.3",
        // So do rudiments with grace notes; those without keep time.
        "'rlrr 'lrll . . ; flam-paradiddle 1-2a",
        "'rlrr. 'lrll. . . ; flam-paradiddle 1-2.4",
        "'rlr... 'lrl... . . ; flam-accent 1-2.3",
        "'rlr.... 'lrl.... . . ; flam-accent 1-1.3, flam-accent 2-2.3",
        "rlrr. lrll. . . ; paradiddle 1-1.4, paradiddle 2-2.4",
        // Four and seven single strokes with a rest of two places before and after; more are
        // neither.
        "rlr l . . ; single-stroke-four 1-2",
        "rlr lrl r . ; single-stroke-seven 1-3",
        "rlr lrl r l ; single-stroke-seven 1-3",
        "rlr l.r . . ; single-stroke-four 1-2",
        "rlr lr. . . ; -",
        ". rlr l . ; single-stroke-four 2-3",
        "rlrl. r . . ; single-stroke-four 1-1.4",
        "rlrl r . . ; -",
        "...l. rlrl. . . ; single-stroke-four 2-2.4",
        "....l rlrl. . . ; -",
        // Places of two lengths: the doubles equally fast, and nothing faster; no place longer
        // than four.
        "r.l/r/ l . . ; six-stroke-roll 1-2",
        "r...l/r/l. . . . ; six-stroke-roll 1-1a",
        "rll rrl . . ; six-stroke-roll 1-2a",
        "rl.l.r.r.l.. . . . ; -",
        "r.ll r.r. l . ; -",
        "r''r...lrr . . . ; drag-paradiddle-1 1-1.8 throughout",
        "r''r....lrr . . . ; drag 1.2-1.2",
        "r. ''rlrr . . ; drag-paradiddle-1 1-2a throughout",
        "r''r''rlrr . . . ; drag-paradiddle-2 1-1.6 throughout",
        "''r''rlrl . . . ; double-ratamacue 1-1.5 throughout",
        // Grace notes
        "'r'l'r'l . . . ; flam 1-1a throughout",
        "'r . . . ; flam 1-1 throughout",
        "'rl'lr . . . ; inverted-flam-tap 1-1a",
        "'r'l 'r'l 'r'l 'r'l ; flam 1-4& throughout",
        "'rr 'll . . ; flam-tap 1-2&",
        "'rr . . . ; flam 1-1",
        "''rl ''lr . . ; single-drag-tap 1-2&",
        "''rl . . . ; drag 1-1",
      })
  void aRudimentStands(String hands, String names) {
    assertThat(found(" hands : " + hands)).as(hands).isEqualTo(names.equals("-") ? "" : names);
  }

  /** The hands do nothing else if the shape goes round the loop and ends where it can go on. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '"',
      value = {
        "1/4; snare; rlrr; paradiddle 1-1a throughout",
        "2/4; snare; rlrr lrll; paradiddle 1-2a throughout",
        "3/4; snare; rlrr lrll rlrr; paradiddle 1-3a",
        "3/4; snare; rlrrll rlrrll rlrrll; paradiddle-diddle 1-3.6 throughout",
        "2/4; snare; rlrl rlrl; single-stroke-roll 1-2a throughout",
        "2/4; snare; rlr lrl; -",
        "2/4; snare; rlrlr lrlrl; single-stroke-roll 1-2.5 throughout",
        "2/4; snare; rlrlr lrlr; -",
        "3/4; snare; rlr lrl rlr; single-stroke-roll 1-3a",
        "1/4; snare; r/l/; -",
        "1/4; snare; r/l/r/l/; double-stroke-open-roll 1-1a throughout",
        "1/4; snare; r~l~; -",
        "1/4; snare; r~l~r~l~; multiple-bounce-roll 1-1a throughout",
        "1/4; snare; 'r; flam 1-1 throughout",
        "1/4; snare; r/l/r.; five-stroke-roll 1-1& throughout",
        "2/4; snare; r/l/r. .; five-stroke-roll 1-1&",
        "2/4; snare; r/l/r l/r/l; five-stroke-roll 1-2a throughout",
        // Between drums and cymbals: four places or more, twice or more.
        "1/4; ride; rlrr; -",
        "2/4; ride; rlrr lrll; paradiddle 1-2a throughout",
        "4/4; ride; rlrr lrll rlrr lrll; paradiddle 1-4a throughout",
        "3/4; ride; rlrr lrll rlrr; -",
        "4/4; ride; 'rlr 'lrl 'rlr 'lrl; flam 2-2, flam 4-4",
        "2/4; ride; r/l/r. l/r/l.; -",
        "2/4; ride; rlrl rlrl; -",
      })
  void itFillsTheLoop(String meter, String right, String hands, String names) {
    String lines = " right plays " + right + "\n left plays snare\n hands : " + hands;
    assertThat(found(meter, lines)).isEqualTo(names.equals("-") ? "" : names);
  }

  /** All its strokes are on drums: a stroke on a cymbal or on the hi-hat breaks it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '"',
      value = {
        "tom1; paradiddle 1-2a",
        "floor; paradiddle 1-2a",
        "crash; -",
        "ride; -",
        "hihat; -",
      })
  void itStandsOnDrums(String surface, String names) {
    for (int at = 0; at < 8; at++) {
      StringBuilder snare = new StringBuilder("rlrrlrll");
      StringBuilder other = new StringBuilder("........");
      other.setCharAt(at, snare.charAt(at));
      snare.setCharAt(at, '.');
      String found = found(" snare : " + beats(snare) + "\n " + surface + " : " + beats(other));
      assertThat(found).as("%s at %s", surface, at).isEqualTo(names.equals("-") ? "" : names);
    }
  }

  private static String beats(StringBuilder letters) {
    return letters.substring(0, 4) + " " + letters.substring(4) + " . .";
  }

  /** The last strokes of a roll are the first of what comes next; where that begins it ends. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "rlrl rlrl rlrr lrll ; single-stroke-roll 1-2a, paradiddle 3-4a",
        "lrlr lrlr lrll rlrr ; single-stroke-roll 1-2a, paradiddle 3-4a",
        "rlrl rlrl rlrl rlrl | rlrr lrll rlrr lrll ;"
            + " single-stroke-roll 1:1-1:4a, paradiddle 2:1-2:4a",
        "rlrl rlrl rlrl rlrl | rlrl rrlr lrll rlrr ;"
            + " single-stroke-roll 1:1-1:4a, double-paradiddle 2:1-2:3a, paradiddle 2:4-2:4a",
        // A rest after the one cycle, or nothing that begins on a beat.
        "rlrl rlrl rlrr . ; single-stroke-roll 1-2a, paradiddle 3-3a",
        "rlrl rlrl rlrl rrlr | lrlr lrlr . . ; single-stroke-roll 1:1-1:4, single-stroke-roll"
            + " 2:1-2:2a",
        // Doubles at the end of a roll of doubles.
        "rrll rrll rrll rrll ; double-stroke-open-roll 1-4a throughout",
      })
  void aRollEndsWhereSomethingElseBegins(String hands, String rudiments) {
    String bars = hands.contains("|") ? "  bars 2\n" : "";
    assertThat(found(bars + "  hands : " + hands)).isEqualTo(rudiments);
  }
}
