package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** What is blank is left out of pictures and of the words beside them, and sounds. */
class BlanksTest {
  private static final String BEAT =
      """
      tempo 80
      groove beat "A beat"
        hihat : xx xx xx xx
        snare : .  x  .  x
        kick  : x  .  x  .
      """;

  private static Lesson lesson(String source) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("test.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson();
  }

  private static byte[] bytes(Form form, String source, int file) {
    return form.outputs(lesson(source), BuildOptions.ALL).get(file).bytes().get();
  }

  private static String text(Form form, String source) {
    return new String(bytes(form, source, 0), StandardCharsets.UTF_8);
  }

  /** A page without its player, whose data hold all that sounds. */
  private static String seen(String source) {
    String page = text(Form.HTML, source);
    return page.substring(page.indexOf("<main>"), page.indexOf("</main>"));
  }

  @Test
  void aBlankPartIsInNoPicture() {
    String without = BEAT.replace("  kick  : x  .  x  .\n", "");
    String blank = BEAT + "  blank kick\n";
    assertThat(text(Form.SVG, blank)).isEqualTo(text(Form.SVG, without));
    assertThat(text(Form.SVG, blank)).isNotEqualTo(text(Form.SVG, BEAT));
    assertThat(bytes(Form.PNG, blank, 0)).isEqualTo(bytes(Form.PNG, without, 0));
    assertThat(seen(BEAT)).contains("kick");
    assertThat(seen(blank)).isEqualTo(seen(without)).doesNotContain("kick");
  }

  @Test
  void whatIsBlankSounds() {
    String blank = BEAT + "  blank kick\n  blank sticking\n";
    assertThat(bytes(Form.MIDI, blank, 0)).isEqualTo(bytes(Form.MIDI, BEAT, 0));
    assertThat(text(Form.GRID, blank)).contains("kick");
  }

  @Test
  void blankStickingIsBoxesAndNoHandInWords() {
    String hands = "tempo 80\ngroove g\n  hands : rlrr lrll rlrr lrll\n  show sticking\n";
    String blank = hands + "  blank sticking\n";
    assertThat(seen(hands)).contains("right snare", "left snare");
    assertThat(seen(blank)).contains("snare").doesNotContain("right snare", "left snare");
    assertThat(text(Form.SVG, hands)).contains(">R<", ">L<");
    assertThat(text(Form.SVG, blank)).doesNotContain(">R<", ">L<");
  }

  @Test
  void emptyBarsHaveNoRests() {
    String silent = "tempo 80\ngroove g\n  snare : . . . . | . . . .\n";
    String blank = "tempo 80\ngroove g\n  blank 2 bars\n";
    assertThat(text(Form.SVG, silent)).isNotEqualTo(text(Form.SVG, blank));
    int rests = text(Form.SVG, silent).split("rest", -1).length;
    assertThat(rests).isGreaterThan(1);
    assertThat(text(Form.SVG, blank).split("rest", -1).length).isLessThan(rests);
  }

  @Test
  void whatAStepChangedOfABlankPartIsNotSaid() {
    String step = BEAT + "step push\n  move kick from 3 to 2&\n";
    assertThat(seen(step)).contains("<li>kick: from 3 to 2&amp;</li>");
    assertThat(seen(step + "  blank kick\n").split("<article", -1)[2]).doesNotContain("kick");
  }

  @Test
  void variationsFollowTheirSheet() {
    String sheet = BEAT + "sheet kicks\n  each add kick at 2& 4&\n";
    List<Output> whole = Form.SVG.outputs(lesson(sheet), BuildOptions.ALL);
    List<Output> blank = Form.SVG.outputs(lesson(sheet + "  blank kick\n"), BuildOptions.ALL);
    assertThat(blank).hasSameSizeAs(whole);
    String first = new String(blank.get(1).bytes().get(), StandardCharsets.UTF_8);
    assertThat(first).isNotEqualTo(new String(whole.get(1).bytes().get(), StandardCharsets.UTF_8));
    assertThat(first).contains("kicks-1").doesNotContain("kick ");
  }
}
