package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.cores.SpareCores;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.testing.Files;
import tabor.testing.ShapedFiles;

/** Every output is the same, byte by byte, on one core and on several. */
class OnSeveralCoresProperties {
  private static final int CORES = 3;

  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  @Provide
  Arbitrary<String> shapes() {
    return ShapedFiles.any();
  }

  @Property(tries = 20)
  void ordinaryFilesComeOutTheSame(@ForAll("files") String text) {
    everyOutput(text);
  }

  @Property(tries = 30)
  void filesOfUnusualShapeComeOutTheSame(@ForAll("shapes") String text) {
    everyOutput(text);
  }

  private static void everyOutput(String text) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
    Assume.that(!compiled.hasErrors());
    List<Output> alone = outputs(compiled.lesson());
    List<byte[]> expected = alone.stream().map(output -> output.bytes().get()).toList();
    SpareCores.share(CORES);
    try {
      List<Output> together = outputs(compiled.lesson());
      assertThat(together).extracting(Output::name).isEqualTo(names(alone));
      List<byte[]> made = SpareCores.map(together, output -> output.bytes().get());
      for (int i = 0; i < alone.size(); i++) {
        assertThat(made.get(i)).as(alone.get(i).name()).isEqualTo(expected.get(i));
      }
      // One after the other, so that each finds all cores free.
      for (int i = 0; i < alone.size(); i++) {
        assertThat(together.get(i).bytes().get())
            .as(alone.get(i).name())
            .isEqualTo(expected.get(i));
      }
    } finally {
      assertThat(SpareCores.borrow(CORES)).as("cores given back").isEqualTo(CORES);
    }
  }

  private static List<String> names(List<Output> outputs) {
    return outputs.stream().map(Output::name).toList();
  }

  private static List<Output> outputs(Lesson lesson) {
    List<Output> all = new ArrayList<>();
    for (Form form : Form.values()) {
      if (form.isUsual() && form.refusal(lesson, BuildOptions.ALL).isEmpty()) {
        all.addAll(form.outputs(lesson, BuildOptions.ALL));
      }
    }
    return all;
  }
}
