package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Which line each mistake is reported at, by which code, and that nothing else is. */
class ProblemsTest {
  private record Case(String name, String text, List<String> problems) {}

  private static Case at(String name, String text, String... problems) {
    return new Case(name, text, List.of(problems));
  }

  @TestFactory
  Stream<DynamicTest> problems() {
    return all().stream()
        .map(
            one ->
                DynamicTest.dynamicTest(
                    one.name(),
                    () ->
                        assertThat(Compact.problems(one.text()))
                            .as(one.text())
                            .isEqualTo(one.problems())));
  }

  private static final String BEAT = "groove g\n hands : rlrl r . .\n kick : x . x .\n";

  private static List<Case> all() {
    return List.of(
        at(
            "each wrong bar",
            "groove g\n kick : x x x | x x x x | x\n",
            "2 bar-length",
            "2 bar-length"),
        at(
            "a pickup with too many beats",
            "groove g\n pickup 1 beat\n kick : x x | x x x x\n",
            "3 bar-length"),
        at("a pickup as long as a bar", "groove g\n pickup 4 beats\n kick : x x x x\n", "2 syntax"),
        at("bars above", "groove g\n bars 2\n kick : x x x x\n", "3 bar-count"),
        at("bars below", "groove g\n kick : x x x x\n bars 2\n", "3 bar-count"),
        at(
            "bars over systems",
            "groove g\n bars 3\n kick : x x x x\nnext\n kick : x x x x\n",
            "5 bar-count"),
        at(
            "a step's part is as long as the section",
            BEAT + "step s\n kick : x . x . | x . x .\n",
            "5 bar-count"),
        at(
            "an ostinato before what it does not fit",
            "groove g\n ostinato kick : x x x x | x . . .\n hands : r . . .\n",
            "3 bar-count"),
        at(
            "a broken part counts as fitting",
            "groove g\n hands : r{l . .\n kick : x . x . | x . x .\n",
            "2 syntax"),
        at(
            "nothing is missed where a line is broken",
            "groove g\n hands : r{l . .\nstep s\n accent hands at 2\n",
            "2 syntax"),
        at("a hold at the start", "groove g\n hands : - . . .\n", "2 nothing-there"),
        at("a hold after silence", "groove g\n hands : r . - .\n", "2 nothing-there"),
        at(
            "a repeat after the pickup",
            "groove g\n pickup 1 beat\n kick : x | %\n",
            "3 nothing-there"),
        at("an unknown kit", "on five\n" + BEAT, "1 unknown-name"),
        at(
            "an unknown kit of a section",
            "groove g\n on hall\n kick : x . x .\n",
            "2 unknown-name"),
        at("a step with nothing before it", "step s\n accent kick\n", "1 unknown-name"),
        at(
            "a section is named only below its heading",
            "groove a\n kick : x . . .\n take kick from b\ngroove b\n kick : x . . .\n",
            "3 unknown-name"),
        at("in charts anywhere", "chart c\n play b\ngroove b\n kick : x . . .\n"),
        at(
            "a chart cannot be played",
            BEAT + "chart c\n play g\nchart d\n play c\n",
            "7 unknown-name"),
        at("patterns anywhere", "groove g\n hands play p in eighths\npattern p : rlrlrlrl\n"),
        at("a rudiment's name is taken", "pattern paradiddle : rl\n" + BEAT, "1 duplicate-name"),
        at("a built-in kit's name is taken", "kit junior\n" + BEAT, "1 duplicate-name"),
        at("charts and grooves share names", BEAT + "chart g\n play g\n", "4 duplicate-name"),
        at(
            "unused",
            "pattern p : rl\nkit k\n without tom2\n" + BEAT,
            "1 unused-name",
            "2 unused-name"),
        at(
            "a file of patterns and kits alone is for others",
            "pattern p : rl\nkit k\n without tom2\n"),
        at(
            "kits like each other",
            "kit a like b\nkit b like a\ngroove g\n on a\n kick : x . . .\n",
            "1 unknown-name",
            "2 unknown-name"),
        at(
            "a circle of stand-ins",
            "kit k\n"
                + " without tom1 plays tom2\n"
                + " without tom2 plays tom1\n"
                + "groove g\n"
                + " on k\n"
                + " right : t . . .\n",
            "3 missing-surface"),
        at(
            "a foot cannot stand in for a hand",
            "kit k\n without tom1 plays kick\ngroove g\n on k\n kick : x . . .\n",
            "2 wrong-limb"),
        at(
            "a surface needs a key",
            "kit k\n surface gong letter g\ngroove g\n on k\n kick : x . . .\n",
            "2 syntax"),
        at(
            "x is no letter of a kit",
            "kit k\n letter x = snare\ngroove g\n on k\n kick : x . . .\n",
            "2 syntax"),
        at(
            "what opens, chokes and rims",
            "groove g\n snare : r= . . .\n floor : . r! . .\n ride : . . r^ .\n",
            "2 missing-surface",
            "3 missing-surface",
            "4 missing-surface"),
        at(
            "the same as edits",
            BEAT + "step s\n open hands\n choke kick at 1\n rimshot kick at 1\n",
            "5 missing-surface",
            "6 missing-surface",
            "7 missing-surface"),
        at(
            "an inherited problem is reported once",
            "groove g\n ride : r . . .\n hihat : r . . .\nstep s\n add kick at 1\n",
            "3 limb-conflict"),
        at(
            "a hand does not kick",
            BEAT
                + "step s\n"
                + " add kick with right hand at 2\n"
                + " right plays kick\n"
                + " snare follows right\n",
            "5 wrong-limb",
            "6 wrong-limb"),
        at(
            "a foot does not play the snare",
            BEAT + "step s\n add snare with left foot at 2\n split left between snare and kick\n",
            "5 wrong-limb",
            "6 wrong-limb"),
        at(
            "no such bar",
            BEAT
                + "step s\n"
                + " accent kick in bar 2\n"
                + " ghost kick in bars 1 to 3\n"
                + " accent kick in every 4th bar\n",
            "5 count-outside-bar",
            "6 count-outside-bar",
            "7 count-outside-bar"),
        at(
            "no such beat, slot or group",
            BEAT
                + "step s\n"
                + " add kick at 5\n"
                + " add kick at 1.5\n"
                + " add kick at 1e.2\n"
                + " accent kick at 6&\n",
            "5 count-outside-bar",
            "6 count-outside-bar",
            "7 count-outside-bar",
            "8 count-outside-bar"),
        at(
            "a division without the syllable",
            BEAT + "step s\n add kick at 1e/3\n",
            "5 count-outside-bar"),
        at("nothing of the target", BEAT + "step s\n accent tom1\n", "5 nothing-there"),
        at(
            "no stroke of that level",
            BEAT + "step s\n ghost kick where accented\n",
            "5 nothing-there"),
        at(
            "each bar named must have it",
            "groove g\n"
                + " kick : x . . . | . x . .\n"
                + "step s\n"
                + " accent kick at 1 in bars 1 2\n"
                + "step t from g\n"
                + " accent kick at 1\n",
            "4 nothing-there"),
        at(
            "a reading that meets nothing is not ambiguous",
            "groove g\n left : r.. . . .\n".replace("r..", "s..")
                + " right : ...s . . .\n accent hands at 1a\n"),
        at(
            "two readings that both meet a stroke",
            "groove g\n left : ..s . . .\n right : ...s . . .\n accent hands at 1a\n",
            "4 ambiguous-count"),
        at(
            "every is never ambiguous",
            "groove g\n left : ..s . . .\n right : ...s . . .\n accent hands at every a\n"),
        at(
            "another meter is no source",
            "groove a\n"
                + " time 3/4\n"
                + " kick : x . .\n"
                + "groove b\n"
                + " kick : x . . .\n"
                + " take kick from a\n"
                + " fill a in bar 1\n",
            "6 bar-length",
            "7 bar-length"),
        at(
            "neither has it",
            "groove a\n kick : x . . .\ngroove b\n kick : x . . .\n take kick from a at 3\n",
            "5 nothing-there"),
        at(
            "a hairpin ends after it begins",
            BEAT + "step s\n crescendo to f from 3 to 2\n",
            "5 count-outside-bar"),
        at(
            "a climb in bars that the section does not fill",
            "groove g\n"
                + " kick : x . . . | x . . .\n"
                + "chart c\n"
                + " climb g from 60 to 70 by 5 every 3 bars\n",
            "4 bar-count"),
        at(
            "a ladder without end",
            BEAT + "chart c\n climb g from 50 to 590 by 0.01 every 1 times\n",
            "5 too-long"),
        at("a chart longer than a day", BEAT + "chart c\n play g 50000 times\n", "5 too-long"),
        at("a section over 512 bars", BEAT + "step s\n bars 513\n", "5 too-long"),
        at(
            "a pattern over 32 bars",
            "groove g\n time 63/64\n hands play paradiddle in eighths\n",
            "3 too-long"),
        at("too deep", "groove g\n hands : {{{{{{{{{r}}}}}}}}} . . .\n", "2 too-deep"),
        at(
            "too fine",
            "groove g\n hands : {"
                + "{".repeat(3)
                + ("................" + "}").repeat(4)
                + "r . . .\n",
            "2 too-deep"),
        at(
            "doubled without end",
            "tempo 10\ngroove g\n kick : x . . .\n" + " double kick at 1\n".repeat(11),
            "13 too-fast",
            "14 too-deep"),
        at(
            "a step on a kit that lacks what is played",
            "groove g\n right : m . . .\nstep s\n on small\nkit small\n without tom2\n",
            "3 missing-surface"),
        at(
            "values out of range",
            "tempo 0\ngroove g\n levels ghost 0\n kick : x . . .\n shift kick later by 0 beats\n",
            "1 syntax",
            "3 syntax",
            "5 syntax"),
        at("numbers of a meter", "groove g\n time 65/4\n kick : x\n", "2 syntax"),
        at("a meter of five in two", "time 5/8 in 2\ngroove g\n kick : x x\n", "1 bar-length"),
        at(
            "a word with one stroke more than all others",
            "groove g\n hihat : xx xx xxx xx\n",
            "2 odd-beat"),
        at("one stroke fewer", "groove g\n hands : rlrl rlr rlrl rlrl\n", "2 odd-beat"),
        at("one more that is meant", "groove g\n hihat : xx xx xxx:1 xx\n"),
        at("one word of a quarter is no slip", "groove g\n hihat : xx xx x xx\n"),
        at("the sextuplet of a bar of triplets", "groove g\n hands : rlr lrl rlrl lrl\n"),
        at(
            "a surface that the kit lacks, once a part",
            "kit k\n without tom1\ngroove g\n on k\n right : tttt tttt . .\n",
            "5 missing-surface"),
        at("flams as books print them", "groove g\n snare : lR rL lR rL\n", "2 all-accents"),
        at("accents off the beat", "groove g\n hands : rL rL rL rL\n"),
        at(
            "a bar of the meter with long beats",
            "groove g\n time 5/4 in 3+2\n snare : r l r l r\n",
            "3 bar-length"),
        at(
            "a second bars line and a part in one bar",
            "groove g\n bars 4\n snare : . x . x\n",
            "3 bar-count"),
        at(
            "bars below parts that disagree",
            "groove g\n kick : x . . .\n snare : . x . x | . x . x\n bars 3\n",
            "3 bar-count",
            "4 bar-count"),
        at("capitals throughout", "groove g\n hands : RLRL RLRL RLRL RLRL\n", "2 all-accents"));
  }

  @Test
  void hints() {
    assertThat(
            Compact.hints(
                "groove g\n hands : rlrl rl rlrlrl rl\n snare : . x - .\n kick : x . x .\n"
                    + " add kick at 1\n left : ss sssss ss s\n"))
        .containsExactly("3 held-drum", "5 already-there", "6 odd-beat");
    assertThat(Compact.hints("groove g\n left : ss sssss:1 ss s\n")).isEmpty();
  }
}
