package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.resolve.Options;

/**
 * Which sections have a {@code swing} element, by the words of the schema of MusicXML 4.0: it makes
 * pairs of eighths or of sixteenths unequal and leaves alone every other value, notes with dots and
 * notes in tuplets. A section that would be played otherwise than here has none, and says so.
 */
class SwingXmlTest {
  private static Lesson lesson(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE).lesson();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4/4; eighths 62%; ride : xx xx xx xx; 31:19 eighth",
        "4/4; eighths as triplets; ride : xx xx xx xx; 2:1 eighth",
        "4/4; sixteenths 58%; ride : xxxx xxxx xxxx xxxx; 29:21 16th",
        // The beat is the eighth, the half, the eighth of 4/4.
        "6/8 in 6; eighths 62%; ride : xx xx xx xx xx xx; 31:19 16th",
        "2/2; sixteenths 58%; ride : xxxx xxxx; 29:21 eighth",
        "4/4 in 2; sixteenths 58%; ride : xxxx xxxx; 29:21 eighth",
        // Pairs of quarters or of thirty-seconds have no element.
        "2/2; eighths 62%; ride : xx xx; none",
        "6/8 in 6; sixteenths 62%; ride : xxxx xx xx xx xx xx; none",
        // Beats of three, and beats that are not alike.
        "6/8; eighths 62%; ride : xxx xxx; none",
        "7/8 in 2+2+3; eighths 62%; ride : xx xx xxx; none",
        "4/4 6/8; eighths 62%; ride : xx xx xx xx | xxx xxx; none",
        // Sixteenths swing along with the eighths here, and would not there.
        "4/4; eighths 62%; ride : xxxx xx xx xx; none",
        "4/4; eighths 62%; ride : xx xx xx x..x; none",
        "4/4; eighths 62%; ride : xx xx xx xx | x x x x.x.; 31:19 eighth",
        "4/4; eighths 62%; ride : xx xx xx xx | x x x .x.x; none",
        // Sixteenths that are swung leave the eighths where they are.
        "4/4; sixteenths 58%; ride : xx xx xx xx; 29:21 16th",
        // Triplets are not swung, here and there.
        "4/4; eighths 62%; ride : xx xxx xx xx; 31:19 eighth",
        // What starts on the beat and goes on, or starts off it and goes on over the next.
        "4/4; eighths 62%; ride : x- -x xx .x; 31:19 eighth",
        "4/4; eighths 62%; ride : .x -x -x -.; 31:19 eighth",
        // Rolls: two in a quarter, two in an eighth.
        "4/4; eighths 62%; snare : r/ l/ r l; none",
        "4/4; sixteenths 58%; snare : r/ l/ r l; 29:21 16th",
        "4/4; eighths 62%; snare : r/l r/l r l; 31:19 eighth",
        "4/4; eighths 62%; hands : r//  l// r l; none",
        "4/4; sixteenths 58%; snare : r/l r/l r l; none",
      })
  void whereTheFormatSaysIt(String time, String feel, String part, String element)
      throws Exception {
    Lesson lesson = lesson("time " + time + "\nfeel swing " + feel + "\ngroove g\n " + part + "\n");
    byte[] bytes = MusicXml.bytes(lesson, section -> true);
    String text = new String(bytes, StandardCharsets.UTF_8);
    List<String> first = XmlMatches.all("<first>(\\d+)<", text);
    String found =
        first.isEmpty()
            ? "none"
            : first.get(0)
                + ":"
                + XmlMatches.all("<second>(\\d+)<", text).get(0)
                + " "
                + XmlMatches.all("<swing-type>([^<]*)<", text).get(0);
    assertThat(found).isEqualTo(element);
    assertThat(text.contains("(played straight by this file)")).isEqualTo(first.isEmpty());
    if (!first.isEmpty()) {
      assertThat(Playback.ofValid(bytes).strokes())
          .containsExactlyInAnyOrderElementsOf(performed(lesson.grooves().get(0)));
    }
  }

  private static List<String> performed(Groove groove) {
    Set<String> found = new LinkedHashSet<>();
    for (Sound sound :
        Performer.once(groove, groove.setting().tempo(), groove.setting().feel()).sounds()) {
      found.add(sound.start() + " P1-" + sound.surface().name());
    }
    return new ArrayList<>(found);
  }

  /** A feel is said where it changes. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "straight, straight; ''",
        "swing eighths 62%, swing eighths 62%; swing eighths 62%",
        "swing eighths 62%, straight; swing eighths 62%, straight",
        "straight, swing eighths 62%, swing eighths 62%, straight, straight;"
            + " swing eighths 62%, straight",
        "swing eighths 62%, swing eighths 58%; swing eighths 62%, swing eighths 58%",
      })
  void aFeelIsSaidWhereItChanges(String feels, String words) {
    StringBuilder text = new StringBuilder();
    int number = 0;
    for (String feel : feels.split(", ", -1)) {
      text.append("groove g").append(++number).append("\n feel ").append(feel);
      text.append("\n ride : xx xx xx xx\n");
    }
    String document =
        new String(
            MusicXml.bytes(lesson(text.toString()), section -> true), StandardCharsets.UTF_8);
    assertThat(String.join(", ", XmlMatches.all("<words>([^<]*)</words>", document)))
        .isEqualTo(words);
    assertThat(XmlMatches.all("(<straight/>)", document))
        .as("played straight again, once for each time")
        .hasSize(words.split("straight", -1).length - 1);
  }
}
