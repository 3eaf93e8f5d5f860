package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Chart;
import tabor.groove.Lesson;
import tabor.words.Language;

/** Words of hands in texts: who reads them, and in which language and form. */
class HandWordsTest {
  /** German, French and Spanish grammar as in any school book. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "EN | Begin with the [right] hand. [Left] rests. | Begin with the right hand. Left rests.",
        "DE | [Right], [left], [right]. | Rechts, links, rechts.",
        "DE | Führe mit der [right] Hand. | Führe mit der rechten Hand.",
        "DE | Die [left] Hand bleibt tief. | Die linke Hand bleibt tief.",
        "DE | [Left] Hand tief, [right] Fuß leicht. | Linke Hand tief, rechter Fuß leicht.",
        "DE | Der [right] Fuß tritt, der [right] Hand folgend. "
            + "| Der rechte Fuß tritt, der rechten Hand folgend.",
        "DE | Mit [right] Fuß, mit [left] Hand. | Mit rechtem Fuß, mit linker Hand.",
        "DE | Dein [left] Bein, deine [left] Hand, deinen [left] Arm "
            + "| Dein linkes Bein, deine linke Hand, deinen linken Arm",
        "DE | Aus der [right] und der [left]. | Aus der rechten und der linken.",
        "DE | Mit [rechter] Hand. | Mit rechter Hand.",
        "FR | À [right], à [left] ! | À droite, à gauche !",
        "FR | La main [right], le pied [right]. | La main droite, le pied droit.",
        "FR | Les mains [right], le [left]. | Les mains droites, le gauche.",
        "ES | La mano [right], el pie [left]. | La mano derecha, el pie izquierdo.",
        "ES | [Left] y [right]; en el [right]. | Izquierda y derecha; en el derecho.",
        "ES | El pie [izquierdo]. | El pie izquierdo.",
        "EN | A [fill], an [rechte], [ right], [RIGHT] | A [fill], an [rechte], [ right], [RIGHT]",
      })
  void theFormThatTheTextAsksFor(Language language, String written, String read) {
    assertThat(new HandWords(false, () -> language).in(written)).isEqualTo(read);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "EN | the [right] hand, [Left] | the left hand, Right",
        "DE | mit der [right] Hand, [Left] | mit der linken Hand, Rechts",
        "DE | der [rechte] Fuß, [linkem] Fuß | der linke Fuß, rechtem Fuß",
        "FR | le pied [left], la main [left] | le pied droit, la main droite",
        "FR | le pied [gauche], la main [gauche] | le pied droit, la main droite",
        "ES | el pie [right], la mano [derecha] | el pie izquierdo, la mano izquierda",
      })
  void aLeftHanderReadsTheOther(Language language, String written, String read) {
    assertThat(new HandWords(true, () -> language).in(written)).isEqualTo(read);
  }

  private static final String LESSON =
      "language de\ngoal \"[Right] vor [left]\"\nteacher \"[left]\"\n"
          + "groove a\n text \"Die [right] Hand\"\n snare : r l r l\n"
          + "step b\n text \"die [left] Hand\"\n accent right at 1\n"
          + "sheet s \"S\" from a\n text \"mit der [right] Hand\"\n each accent snare at 1 2\n"
          + "chart c\n text \"der [left] Fuß\"\n cue \"[right]!\"\n play a\n"
          + "player mia \"Mia\"\n language fr\n left-handed\n text \"la main [right]\"\n";

  /** A lesson speaks its own language to everybody; what is said to one student is in theirs. */
  @Test
  void everyTextOfALesson() {
    Compiled compiled = Compact.compile(LESSON);
    assertThat(compiled.diagnostics()).isEmpty();
    Lesson lesson = compiled.lesson();
    assertThat(lesson.extras().goals()).containsExactly("Rechts vor links");
    assertThat(lesson.extras().teacher()).containsExactly("links");
    assertThat(lesson.grooves().get(0).prose()).containsExactly("Die rechte Hand");
    assertThat(lesson.grooves().get(1).prose()).containsExactly("die linke Hand");
    assertThat(lesson.sheets().get(0).prose()).containsExactly("mit der rechten Hand");
    Chart chart = lesson.charts().get(0);
    assertThat(chart.prose()).containsExactly("der linke Fuß");
    assertThat(chart.items()).contains(new Chart.Cue("rechts!", 0));
    Lesson hers =
        new Compiler(Loader.NONE)
            .compile(Path.of("x.tabor"), LESSON, Options.NONE.of(lesson.extras().players().get(0)))
            .lesson();
    assertThat(hers.extras().goals()).containsExactly("Links vor rechts");
    assertThat(hers.grooves().get(0).prose()).containsExactly("Die linke Hand");
    assertThat(hers.charts().get(0).prose()).containsExactly("der rechte Fuß");
  }
}
