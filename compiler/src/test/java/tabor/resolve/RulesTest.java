package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.resolve.Compact.last;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Time;

/** What each rule of the notation makes of a few strokes, worked out by hand. */
class RulesTest {
  private record Rule(String name, String text, String strokes) {}

  private static Rule rule(String name, String text, String strokes) {
    return new Rule(name, text, strokes);
  }

  @TestFactory
  Stream<DynamicTest> rules() {
    return all().stream()
        .map(
            rule ->
                DynamicTest.dynamicTest(
                    rule.name(),
                    () -> {
                      assertThat(Compact.problems(rule.text())).as("problems").isEmpty();
                      assertThat(last(rule.text())).isEqualTo(rule.strokes());
                    }));
  }

  private static List<Rule> all() {
    return List.of(
        rule(
            "a word is a beat",
            "groove g\n hands : r . rlr .\n",
            "0 R snare, 1/2 R snare, 7/12 L snare, 2/3 R snare"),
        rule(
            "a word may spread over beats",
            "groove g\n hands : rlr:2 r r\n",
            "0 R snare, 1/6 L snare, 1/3 R snare, 1/2 R snare, 3/4 R snare"),
        rule(
            "a group shares its slot, also within another",
            "groove g\n hands : r{l{rl}} . . .\n",
            "0 R snare, 1/8 L snare, 3/16 R snare, 7/32 L snare"),
        rule(
            "levels and ornaments",
            "tempo 60\ngroove g\n hands : R(l) 'r. r/ l~\n",
            "0 R snare>, 1/8 L snare(), 1/4 R snare+flam, 1/2 R snare+diddle, 3/4 L snare+buzz"),
        rule(
            "the hi-hat opens under the stick, splashes under the foot",
            "groove g\n hihat : r= . . .\n hihat.foot : . . x= .\n",
            "0 R hihat.open, 1/2 lf hihat.splash"),
        rule(
            "a part left out of a system is silent, and % repeats that silence",
            "groove g\n hihat : r . . .\n kick : x . . .\nnext\n hihat : r . . .\nnext\n"
                + " hihat : % \n kick : %\n",
            "0 R hihat, 0 rf kick | 0 R hihat | 0 R hihat"),
        rule(
            "an ostinato goes round, over systems too",
            "groove g\n hihat : r . . . | .  . . .\nnext\n hihat : . . . r | . . . .\n"
                + " ostinato kick : x . . . | . x . .\n",
            "0 R hihat, 0 rf kick | 1/4 rf kick | 0 rf kick, 3/4 R hihat | 1/4 rf kick"),
        rule(
            "a pickup has the last beats of a bar",
            "groove g\n pickup 1 beat\n hands : rl | r . . .\n",
            "3/4 R snare, 7/8 L snare | 0 R snare"),
        rule(
            "x in a limb's part is what the limb plays",
            "groove g\n left plays tom1\n left : x s . .\n",
            "0 L tom1, 1/4 L snare"),
        rule(
            "plays without a place holds for what comes below, but not for lettered parts",
            "groove g\n hands : r . . .\n right plays ride\n right : . s . .\n hands : . . r .\n",
            "0 R ride, 1/4 R snare, 1/2 R ride"),
        rule(
            "plays ghosted leaves accents alone",
            "groove g\n hands : Rr . . .\nstep s\n right plays floor ghosted\n",
            "0 R floor>, 1/8 R floor()"),
        rule(
            "an ornament that the new surface cannot take falls away",
            "groove g\n hands : r^ . 'l .\nstep s\n right plays ride\n",
            "0 R ride, 1/2 L snare+flam"),
        rule(
            "split deals out in order of time",
            "groove g\n"
                + " hands : l.l. l... . .\n"
                + "step s\n"
                + " split left between tom1 and tom2 and floor\n",
            "0 L tom1, 1/8 L tom2, 1/4 L floor"),
        rule(
            "adding onto a stroke sets its level if one is named",
            "groove g\n kick : x . x .\nstep s\n add kick at 1 2\n add kick accented at 3\n",
            "0 rf kick, 1/4 rf kick, 1/2 rf kick>"),
        rule(
            "after with, left is a foot for a foot surface",
            "groove g\n kick : x . . .\nstep s\n add kick with left at 1&\n",
            "0 rf kick, 1/8 lf kick"),
        rule(
            "add reads every as the count would",
            "groove g\n hands : rlr r . .\nstep s\n add kick at every &\n",
            "0 R snare, 1/12 L snare, 1/12 rf kick, 1/6 R snare, 1/4 R snare, 3/8 rf kick,"
                + " 5/8 rf kick, 7/8 rf kick"),
        rule(
            "drop takes a range, both ends included",
            "groove g\n hands : rlrl rlrl . .\nstep s\n drop hands at 1e to 2\n",
            "0 R snare, 5/16 L snare, 3/8 R snare, 7/16 L snare"),
        rule(
            "where narrows to a level",
            "groove g\n hands : Rlrl . . .\nstep s\n ghost hands at every & where plain\n"
                + " drop right where accented\n",
            "1/16 L snare, 1/8 R snare(), 3/16 L snare"),
        rule(
            "double makes a group in the slot; a count takes the whole of it",
            "tempo 60\n"
                + "groove g\n"
                + " hands : r.l. . . .\n"
                + "step s\n"
                + " double left at 1&\n"
                + " accent left at 1&\n"
                + " ghost left at 1&.2\n",
            "0 R snare, 1/8 L snare>, 5/32 L snare()"),
        rule(
            "the ornaments of a doubled stroke stay with the first",
            "tempo 50\ngroove g\n hands : 'r... . . .\nstep s\n double right at 1\n",
            "0 R snare+flam, 1/32 R snare"),
        rule(
            "a bare beat has the whole beat as its slot",
            "groove g\n hands : . . . .\n add kick at 2\n double kick at 2\n",
            "1/4 rf kick, 3/8 rf kick"),
        rule(
            "follows adds wherever the limb strikes, and nothing twice",
            "groove g\n hands : rlrl . . .\n kick : x . . .\nstep s\n kick follows right\n",
            "0 R snare, 0 rf kick, 1/16 L snare, 1/8 R snare, 1/8 rf kick, 3/16 L snare"),
        rule(
            "move acts in every bar that has the stroke",
            "groove g\n kick : x . x . | x . . .\nstep s\n move kick from 3 to 3&\n",
            "0 rf kick, 5/8 rf kick | 0 rf kick"),
        rule(
            "shift turns the strokes round within the section, the pickup left alone",
            "groove g\n pickup 1 beat\n hands : r | l . . . | . . . r\n"
                + " shift hands later by 1 beat\n",
            "3/4 R snare | 0 R snare, 1/4 L snare"),
        rule(
            "shift earlier",
            "groove g\n hands : rl . . .\n shift hands earlier by 1 eighth\n",
            "0 L snare, 7/8 R snare"),
        rule(
            "swap hands: the sounds stay, also for what each plays from there on",
            "groove g\n right plays ride\n hands : rl . . .\n swap hands\n hands : . r . .\n",
            "0 L ride, 1/8 R snare, 1/4 R snare"),
        rule(
            "only drops everything else",
            "groove g\n hands : rl . . .\n kick : x . . .\n only left, kick\n",
            "0 rf kick, 1/8 L snare"),
        rule(
            "take goes bar by bar, a short source starts again",
            "groove a\n hands : l . . .\ngroove b\n hands : . r . . | . r . .\n"
                + " kick : x . . . | . . . .\n take hands from a in bar 2\n",
            "0 rf kick, 1/4 R snare | 0 L snare"),
        rule(
            "take reads its places in the source",
            "groove a\n"
                + " hands : rlr . . .\n"
                + "groove b\n"
                + " hands : l..l . . .\n"
                + " take hands from a at 1a\n",
            "0 L snare, 1/6 R snare, 3/16 L snare"),
        rule(
            "fill takes its own bars one after another, from a count on",
            "groove f\n hands : . . . r | . . . l\ngroove g\n kick : x x x x\nstep s\n bars 3\n"
                + " fill f in bars 1 3 from 4\n",
            "0 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 R snare | 0 rf kick, 1/4 rf kick, 1/2 rf"
                + " kick, 3/4 rf kick | 0 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 L snare"),
        rule(
            "a fill that is only a pickup takes the bar's last beats",
            "groove f\n pickup 1 beat\n hands : rl\ngroove g\n kick : x x x x | x x x x\n"
                + " fill f in bar 2\n",
            "0 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick | 0 rf kick, 1/4 rf kick, 1/2 rf"
                + " kick, 3/4 R snare, 7/8 L snare"),
        rule(
            "take keeps the second place of a group in a range",
            "groove a\n snare : {rl}ll . . .\ngroove b\n snare : . . . .\n kick : x . . .\n"
                + " take snare from a at 1.1.2 to 1.3\n",
            "0 rf kick, 1/24 L snare, 1/12 L snare, 1/6 L snare"),
        rule(
            "so does accent",
            "groove a\n snare : {rl}ll . . .\n accent snare at 1.1.2 to 1.2\n",
            "0 R snare, 1/24 L snare>, 1/12 L snare>, 1/6 L snare"),
        rule(
            "and drop",
            "groove a\n snare : {rl}ll . . .\n drop snare at 1.1.2 to 1.3\n",
            "0 R snare"),
        rule(
            "a range ends at its place, not with the group that begins before it",
            "groove a\n snare : {rlrl} . . .\n accent snare at 1 to 1&\n",
            "0 R snare>, 1/16 L snare>, 1/8 R snare>, 3/16 L snare"),
        rule(
            "an added beat keeps the division named",
            "groove g\n hands : . . . .\n add kick at 2/3\n double kick at 2\n",
            "1/4 rf kick, 7/24 rf kick"),
        rule(
            "where is judged over the whole edit",
            "groove g\n hands : r L r L\n ghost hands at 1 2 3 4 where plain\n",
            "0 R snare(), 1/4 L snare>, 1/2 R snare(), 3/4 L snare>"),
        rule(
            "every slot goes by each stroke's own division",
            "groove g\n hands : rlrll rlrl r .\n accent hands at every .5\n",
            "0 R snare, 1/20 L snare, 1/10 R snare, 3/20 L snare, 1/5 L snare>, 1/4 R snare,"
                + " 5/16 L snare, 3/8 R snare, 7/16 L snare, 1/2 R snare"),
        rule(
            "every value goes by the bar alone",
            "groove g\n time 5/8\n kick : . . . . .\n add kick at every quarter\n",
            "0 rf kick, 1/4 rf kick"),
        rule(
            "a under swung eighths is the last third where nothing divides the beat",
            "feel swing eighths as triplets\ngroove g\n kick : . . . .\n add kick at 2a 3a/4\n",
            "5/12 rf kick, 11/16 rf kick"),
        rule(
            "a rimshot on the snare passes over the cross-stick",
            "groove g\n left : s . n .\n rimshot snare\n",
            "0 L snare+rimshot, 1/2 L snare.cross"),
        rule(
            "a place read alike by several divisions is read by the coarsest",
            "groove g\n hands : rlrlrlrl . . .\n kick : xxxx . . .\n add hihat.foot at 1a\n"
                + " double hihat.foot at 1a\n",
            "0 R snare, 0 rf kick, 1/32 L snare, 1/16 R snare, 1/16 rf kick, 3/32 L snare,"
                + " 1/8 R snare, 1/8 rf kick, 5/32 L snare, 3/16 R snare, 3/16 rf kick,"
                + " 3/16 lf hihat.foot, 7/32 L snare, 7/32 lf hihat.foot"),
        rule(
            "bars in a step repeats from the first bar, or cuts",
            "groove g\n kick : x . . . | . x . .\nstep s\n bars 3\nstep t\n bars 1\n bars 2\n",
            "0 rf kick | 0 rf kick"),
        rule(
            "a part in a step replaces what its subject matches",
            "groove g\n hands : rl . . .\n kick : x . . .\nstep s\n left : . s . .\n",
            "0 R snare, 0 rf kick, 1/4 L snare"),
        rule(
            "a step starts from the section named",
            "groove a\n kick : x . . .\ngroove b\n kick : . x . .\nstep s from a\n accent kick\n",
            "0 rf kick>"),
        rule(
            "stand-ins are followed, and edits name what is written",
            "kit k\n without tom2 plays tom1\n without tom1 plays floor\ngroove g\n on k\n"
                + " right : m . . .\nstep s\n accent tom2\n",
            "0 R floor>"),
        rule(
            "a left-handed kit mirrors the player at the very end",
            "kit k\n left-handed\ngroove g\n on k\n hands : r . . .\n kick : x . . .\nstep s\n"
                + " accent right\n",
            "0 L snare>, 0 lf kick"),
        rule(
            "a letter taken over by a later one",
            "kit k\n letter s = tom1\n letter q = snare\ngroove g\n on k\n right : sq . . .\n",
            "0 R tom1, 1/8 R snare"),
        rule(
            "left-lead mirrors a pattern",
            "pattern p : Rl.\ngroove g\n bars 1\n time 3/8\n hands play p left-lead in eighths\n",
            "0 L snare>, 1/8 R snare"),
        rule(
            "an evenly spread pattern",
            "groove g\n kick plays spread 3 over 8 in eighths\n",
            "0 rf kick, 3/8 rf kick, 3/4 rf kick"),
        rule(
            "open strokes on a struck surface add nothing",
            "groove g\n hihat : r . . .\n hihat : X x . .\n",
            "0 R hihat>, 1/4 R hihat"),
        rule(
            "tempo and feel are read in the meter's beat",
            "time 12/8\ngroove g\n hands : rl rlr r .\n",
            "0 R snare, 3/16 L snare, 3/8 R snare, 1/2 L snare, 5/8 R snare, 3/4 R snare"));
  }

  @Test
  void holdsLengthenAcrossWordsBarLinesAndSystems() {
    Groove groove =
        Compact.compile("groove g\n hands : r~- . . l~ | - . . .\nnext\n hands : r~ . . .\n")
            .lesson()
            .grooves()
            .get(0);
    assertThat(groove.strokes().stream().map(s -> s.length().toString()))
        .containsExactly("1/4", "1/2", "1/4");
  }

  @Test
  void aPatternAloneMakesTheSectionAsLongAsItNeeds() {
    assertThat(bars("groove g\n hands play paradiddle in triplets\n")).isEqualTo(2);
    assertThat(bars("pattern p : rlrlr\ngroove g\n hands play p in eighths\n")).isEqualTo(5);
    assertThat(
            bars(
                "pattern p : rlr\ngroove g\n hands play p in eighths\n"
                    + " ostinato kick : x . . . | . . . .\n"))
        .isEqualTo(6);
    assertThat(bars("groove g\n time 3/4\n hands play tresillo in quarter-triplets\n"))
        .isEqualTo(16);
  }

  private static int bars(String text) {
    return Compact.compile(text).lesson().grooves().get(0).bars();
  }

  @Test
  void stepsAreCalledByTheirNumber() {
    var lesson = Compact.compile("groove a\n hands : r\nstep \"x\"\nstep \"y\"\n").lesson();
    assertThat(lesson.grooves().stream().map(Groove::name))
        .containsExactly("a", "step-2", "step-3");
  }

  @Test
  void repeatedBarsAreKnownUntilAnEditMakesThemDifferent() {
    var grooves =
        Compact.compile(
                "groove g\n hihat : rr rr rr rr | %\n kick : x . . . | %\n"
                    + "step s\n add kick at 3 in bar 2\n")
            .lesson()
            .grooves();
    assertThat(grooves.get(0).repeats()).containsExactly(2);
    assertThat(grooves.get(1).repeats()).isEmpty();
  }

  @Test
  void aClimbEndsExactlyWhereItSays() {
    Chart chart =
        Compact.compile(
                "groove g\n kick : x . . .\nchart c\n climb g from 60 to 75 by 10 every 2 times\n"
                    + " climb g from 80 to 70 by 4 every 2 bars\n")
            .lesson()
            .charts()
            .get(0);
    Chart.Climb up = (Chart.Climb) chart.items().get(0);
    Chart.Climb down = (Chart.Climb) chart.items().get(1);
    assertThat(up.tempi().stream().map(t -> t.perMinute()))
        .containsExactly(Time.of(60), Time.of(70), Time.of(75));
    assertThat(down.tempi().stream().map(t -> t.perMinute()))
        .containsExactly(Time.of(80), Time.of(76), Time.of(72), Time.of(70));
    assertThat(down.times()).isEqualTo(2);
  }

  @Test
  void aChartsTempoComesFromTheNearestPlace() {
    Chart chart =
        Compact.compile(
                "tempo 90\ngroove g\n tempo 100\n kick : x . . .\nchart c\n play g\n tempo 60\n"
                    + " play g\n play g at tempo 70\n")
            .lesson()
            .charts()
            .get(0);
    assertThat(chart.items().stream().map(i -> ((Chart.Play) i).turns().get(0).tempo().perMinute()))
        .containsExactly(Time.of(100), Time.of(60), Time.of(70));
  }

  @Test
  void theLastOfADoubledStrokeKeepsTheHold() {
    Groove groove =
        Compact.compile("groove g\n ride : r - . .\n double ride at 1\n").lesson().grooves().get(0);
    assertThat(groove.strokes().stream().map(s -> s.length().toString()))
        .containsExactly("1/8", "3/8");
  }

  @Test
  void showListsWhatIsShownAndLeavesTheMarksUnlessItSaysSo() {
    assertThat(shown("show counts")).isEqualTo("true false true");
    assertThat(shown("show none")).isEqualTo("false false false");
    assertThat(shown("show no-changes")).isEqualTo("true true false");
    assertThat(shown("show sticking no-changes")).isEqualTo("false true false");
    assertThat(shown("show none\nshow changes")).isEqualTo("false false true");
  }

  private static String shown(String header) {
    var setting =
        Compact.compile(header + "\ngroove g\n kick : x . . .\n")
            .lesson()
            .grooves()
            .get(0)
            .setting();
    return setting.showCounts() + " " + setting.showSticking() + " " + setting.showChanges();
  }
}
