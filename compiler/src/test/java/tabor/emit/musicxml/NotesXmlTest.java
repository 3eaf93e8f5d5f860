package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.resolve.Options;

/** How notes and rests are written: values, stems, and rolls. */
class NotesXmlTest {
  private static Lesson lesson(String part) {
    return new Compiler(Loader.NONE)
        .compile(Path.of("a.tabor"), "groove g\n " + part + "\n", Options.NONE)
        .lesson();
  }

  private static String text(String part) {
    byte[] bytes = MusicXml.bytes(lesson(part), section -> true);
    PublishedSchema.check(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** A stroke that rings: a whole note has no stem, hands point up, feet down. */
  private static String joined(String pattern, String text) {
    return String.join(" ", XmlMatches.all(pattern, text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "ride : x - - -; whole; none",
        "ride : x - x -; half half; up up",
        "kick : x x x x; quarter quarter quarter quarter; down down down down",
        "hands : 'r . . .; eighth quarter quarter half; up up",
      })
  void valuesAndStems(String part, String types, String stems) {
    String text = text(part);
    assertThat(joined("<type>([^<]*)<", text)).isEqualTo(types);
    assertThat(joined("<stem>([^<]*)<", text)).isEqualTo(stems);
    assertThat(text).as("every rest is drawn").doesNotContain("print-object");
  }

  /** Slashes and flags together say the value of the strokes. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        // A diddle of a quarter is two eighths, of an eighth two sixteenths.
        "hands : r/ . . .; 1; 1",
        "hands : r/l/ . . .; 1 1; 2",
        "hands : r// . . .; 2; 1",
        // Thirty-seconds: three slashes on a quarter, two on an eighth.
        "hands : r/// . . .; 3; 1",
        "hands : r///l/// . . .; 2 2; 2",
        // Two in a third of a beat: the sixteenths of a triplet.
        "hands : r///ll . . .; 1; 3",
        // Two thirds of a beat are 5 1/3 thirty-seconds: six strokes, written out.
        "hands : r///-l . . .; ''; 7",
      })
  void rolls(String part, String slashes, int notes) {
    String text = text(part);
    assertThat(joined("<tremolo type=\"single\">(\\d)<", text)).isEqualTo(slashes);
    assertThat(text.split("<unpitched>", -1)).hasSize(1 + notes);
    assertThat(text).doesNotContain("other-technical");
  }

  /**
   * Rolls that go on over a beat or a bar line, played by the words of the schema: a tied note
   * sounds on, one with slashes is rolled, and one stroke that is left of a roll is struck.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "hands : . . . r/ | - . . .",
        "hands : . . . r/ | -l . . .",
        "hands : . . .r/ -l | . . . .",
        "hands : . . . ..r/. | . . . .",
        "hands : . . . ...r/ | -lrl . . .",
        "hands : . . . ...r/ | --rl . . .",
        "hands : . . . r/ | --lr . . .",
        "hands : . . . r// | -- lr . .",
        "hands : . . . r/// | - l . .",
        "hands : r/- -l . .",
        "hands : .r/ - l .",
        "hihat.open : . . . x | - . . .",
      })
  void rollsThatGoOn(String part) throws Exception {
    Lesson lesson = lesson(part);
    Groove groove = lesson.grooves().get(0);
    Set<String> performed = new LinkedHashSet<>();
    for (Sound sound :
        Performer.once(groove, groove.setting().tempo(), groove.setting().feel()).sounds()) {
      performed.add(sound.start() + " P1-" + sound.surface().name());
    }
    byte[] bytes = MusicXml.bytes(lesson, section -> true);
    assertThat(Playback.ofValid(bytes).strokes()).containsExactlyInAnyOrderElementsOf(performed);
    String text = new String(bytes, StandardCharsets.UTF_8);
    assertThat(text.split("<tie type=\"start\"", -1))
        .as("each tie ends")
        .hasSameSizeAs(text.split("<tie type=\"stop\"", -1));
  }

  @Test
  void aBarWithoutStrokesIsOneRest() {
    String text = text("kick : x . . . | . . . .");
    String second = text.substring(text.indexOf("<measure number=\"2\""));
    assertThat(joined("(<rest [^>]*>)", second)).isEqualTo("<rest measure=\"yes\">");
    assertThat(second).doesNotContain("<type>", "<backup>");
  }
}
