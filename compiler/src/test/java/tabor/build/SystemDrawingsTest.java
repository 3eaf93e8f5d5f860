package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.png.PngWriter.Ground;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** A drawing for each line of music. */
class SystemDrawingsTest {
  private static final Lesson LESSON =
      new Compiler(Loader.NONE)
          .compile(
              Path.of("long.tabor"),
              "groove beat \"Eight bars\"\n  bars 8\n  ostinato hihat : xx xx xx xx\n",
              Options.NONE)
          .lesson();

  private static List<Output> drawings(boolean systems) {
    BuildOptions options =
        new BuildOptions(Set.of(), true, HandoutLook.PLAIN, Ground.WHITE, systems);
    return Form.SVG.outputs(LESSON, options);
  }

  @Test
  void eachLineIsAFileWithItsBarsInWords() {
    List<Output> files = drawings(true);
    assertThat(files.stream().map(Output::name))
        .containsExactly("long.beat.1.svg", "long.beat.2.svg");
    String second = new String(files.get(1).bytes().get(), StandardCharsets.UTF_8);
    assertThat(second)
        .contains("<title id=\"beat-2-title\">Eight bars, bars 5 to 8</title>")
        .contains("Bar 5: 1 ", "Bar 8: 1 ")
        .doesNotContain("Bar 4: ");
  }

  @Test
  void withoutTheOptionASectionIsOneFile() {
    assertThat(drawings(false).stream().map(Output::name)).containsExactly("long.beat.svg");
  }
}
