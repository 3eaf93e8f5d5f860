package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.kit.Limb;
import tabor.testing.Sketch;

/** From a lesson to the files it becomes. */
class FormTest {
  private static Lesson lesson() {
    Groove beat = Sketch.groove("beat").part(Limb.RIGHT_HAND, "snare", "x x x x").done();
    Groove more = Sketch.groove("more").part(Limb.RIGHT_FOOT, "kick", "x . x .").done();
    Chart chart = Sketch.chart(new Chart.Play(List.of(Sketch.turn(beat)), 2));
    return new Lesson("week", "Week one", null, beat.setting(), List.of(beat, more, chart));
  }

  private static List<String> names(Form form, BuildOptions options) {
    return form.outputs(lesson(), options).stream().map(Output::name).toList();
  }

  @Test
  void filesAreNamedAfterLessonAndSection() {
    assertThat(names(Form.MIDI, BuildOptions.ALL))
        .containsExactly("week.beat.mid", "week.more.mid", "week.practice.mid");
    assertThat(names(Form.SVG, BuildOptions.ALL)).containsExactly("week.beat.svg", "week.more.svg");
    assertThat(names(Form.PNG, BuildOptions.ALL)).containsExactly("week.beat.png", "week.more.png");
    assertThat(names(Form.GRID, BuildOptions.ALL)).containsExactly("week.txt");
    assertThat(names(Form.MUSICXML, BuildOptions.ALL)).containsExactly("week.musicxml");
    assertThat(names(Form.PDF, BuildOptions.ALL)).containsExactly("week.pdf");
    assertThat(names(Form.HTML, BuildOptions.ALL)).containsExactly("week.html");
  }

  @Test
  void onlyTheSectionsWantedComeOut() {
    BuildOptions more = new BuildOptions(Set.of("more"), true);
    assertThat(names(Form.MIDI, more)).containsExactly("week.more.mid");
    assertThat(names(Form.SVG, more)).containsExactly("week.more.svg");
    String grid = text(Form.GRID, more);
    assertThat(grid).contains("2. more").doesNotContain("beat", "Play-along");
    assertThat(text(Form.MUSICXML, more)).contains("more").doesNotContain("beat<");
  }

  private static String text(Form form, BuildOptions options) {
    byte[] bytes = form.outputs(lesson(), options).get(0).bytes().get();
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** The first bytes that each format begins with, by its own specification. */
  @Test
  void eachFormBeginsAsItsFormatDoes() {
    assertThat(start(Form.MIDI)).startsWith("MThd");
    assertThat(start(Form.PDF)).startsWith("%PDF-");
    assertThat(start(Form.PNG).substring(1)).startsWith("PNG\r\n");
    assertThat(start(Form.MUSICXML)).startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"");
    assertThat(start(Form.HTML)).startsWith("<!DOCTYPE html>");
    assertThat(start(Form.SVG)).contains("<svg");
    assertThat(start(Form.GRID)).startsWith("Week one\n");
  }

  private static String start(Form form) {
    byte[] bytes = form.outputs(lesson(), BuildOptions.ALL).get(0).bytes().get();
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void aFormIsCalledByItsWordAndMakesTheSameBytesAgain(Form form) {
    assertThat(Form.of(form.word())).contains(form);
    assertThat(form.word()).isLowerCase();
    byte[] once = form.outputs(lesson(), BuildOptions.ALL).get(0).bytes().get();
    assertThat(form.outputs(lesson(), BuildOptions.ALL).get(0).bytes().get()).isEqualTo(once);
  }

  @Test
  void theCountInCanBeLeftOut() {
    byte[] with = Form.MIDI.outputs(lesson(), BuildOptions.ALL).get(0).bytes().get();
    byte[] without =
        Form.MIDI.outputs(lesson(), new BuildOptions(Set.of(), false)).get(0).bytes().get();
    assertThat(without.length).isLessThan(with.length);
    assertThat(Form.of("wax")).isEmpty();
  }
}
