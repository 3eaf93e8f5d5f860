package tabor.emit.engrave;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.font.OpenFont;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.notation.Speller;
import tabor.resolve.Options;
import tabor.testing.Goldens;

/**
 * The last step of every example as it is drawn. Each golden was looked at before it was accepted;
 * docs/engraving.md says by which rules.
 */
class ExampleDrawingsTest {
  private static final Path EXAMPLES = Path.of("..", "examples");

  static List<String> examples() throws IOException {
    try (Stream<Path> files = Files.walk(EXAMPLES)) {
      return files
          .map(file -> EXAMPLES.relativize(file).toString().replace('\\', '/'))
          .filter(name -> name.endsWith(".tabor"))
          .sorted()
          .toList();
    }
  }

  private static Loader.Found load(Path user, String written) {
    Path file = user.toAbsolutePath().getParent().resolve(written).normalize();
    try {
      return Loader.Found.text(file, Files.readString(file));
    } catch (IOException e) {
      return Loader.Found.trouble(file, Loader.Trouble.MISSING);
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void isDrawnAsAccepted(String example) throws IOException {
    Path file = EXAMPLES.resolve(example);
    List<Groove> grooves =
        new Compiler(ExampleDrawingsTest::load)
            .compile(file, Files.readString(file), Options.NONE)
            .lesson()
            .grooves();
    if (grooves.isEmpty()) {
      return; // a file of kits and patterns
    }
    Groove last = grooves.get(grooves.size() - 1);
    String svg =
        SvgWriter.file(
            Engraver.engrave(
                    Speller.spell(last, Changes.of(last).strokes()),
                    Look.FULL.withHeading(),
                    OpenFont.get())
                .whole(),
            last.name());
    Goldens.check(
        "tabor/emit/engrave/examples/" + example.replace('/', '-').replace(".tabor", ".svg"), svg);
  }
}
