package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.grid.Grid;
import tabor.emit.grid.Sticking;
import tabor.emit.practice.FastestText;
import tabor.emit.practice.StepsTable;
import tabor.emit.strokes.StrokeList;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.testing.Files;
import tabor.testing.MixedMeters;
import tabor.testing.ShapedFiles;

/** Nothing that the check passes may fail in any output. */
class EveryOutputProperties {
  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  @Provide
  Arbitrary<String> shapes() {
    return ShapedFiles.any();
  }

  @Property(tries = 30)
  void ordinaryFilesComeOutInEveryForm(@ForAll("files") String text) {
    everyOutput(text);
  }

  @Property(tries = 60)
  void filesOfUnusualShapeComeOutInEveryForm(@ForAll("shapes") String text) {
    everyOutput(text);
  }

  @Provide
  Arbitrary<MixedMeters> mixed() {
    return MixedMeters.any();
  }

  @Property(tries = 40)
  void metersInTurnComeOutInEveryForm(@ForAll("mixed") MixedMeters file) {
    everyOutput(file.text());
  }

  private static void everyOutput(String text) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
    Assume.that(!compiled.hasErrors());
    Lesson lesson = compiled.lesson();
    for (Form form : Form.values()) {
      // Sound files are refused above twenty minutes, and have tests of their own.
      if (!form.isUsual()) {
        continue;
      }
      assertThatCode(
              () -> {
                form.warning(lesson);
                for (Output output : form.outputs(lesson, BuildOptions.ALL)) {
                  assertThat(output.bytes().get()).as(output.name()).isNotEmpty();
                }
              })
          .as("%s of\n%s", form, text)
          .doesNotThrowAnyException();
    }
    List<Groove> grooves = lesson.grooves();
    assertThatCode(
            () -> {
              narrow(Grid.of(lesson, section -> true));
              grooves.forEach(groove -> narrow(Grid.bars(groove)));
              narrow(Sticking.of(lesson, grooves, true));
              FastestText.of(lesson, grooves);
              StepsTable.text(lesson);
              StepsTable.tsv(lesson);
              StrokeList.tsv(grooves);
              StrokeList.json(grooves);
              form(lesson);
            })
        .as(text)
        .doesNotThrowAnyException();
  }

  /** One section alone is a lesson too. */
  private static void form(Lesson lesson) {
    Set<String> first = Set.of(lesson.sections().get(0).name());
    for (Form form : List.of(Form.GRID, Form.MUSICXML)) {
      Output output = form.outputs(lesson, new BuildOptions(first, false)).get(0);
      assertThat(output.bytes().get()).isNotEmpty();
    }
  }

  private static void narrow(String page) {
    page.lines().forEach(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(100));
  }
}
