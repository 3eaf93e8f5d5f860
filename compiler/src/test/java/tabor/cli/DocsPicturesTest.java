package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tabor.weave.Names;

/**
 * The documents' own notation compiles and its pictures are those of today. Where this fails after
 * a change of the drawing, {@code docs/make-pictures.sh} makes them anew.
 */
class DocsPicturesTest {
  private static final Path TOP = Path.of("..");

  @Test
  void picturesOfTheDocumentsAreUpToDate() throws IOException {
    List<String> words = new ArrayList<>(List.of("weave", "--in-place", "--check"));
    documents().forEach(file -> words.add(file.toString()));
    Ran ran = Ran.of(words.toArray(String[]::new));
    assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
  }

  @Test
  void theReadmesPictureIsUpToDate() {
    Ran ran =
        Ran.of("weave", "../README.md", "--in-place", "--check", "--pictures", "docs/pictures");
    assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
  }

  @Test
  void thePhotographsAreOfTheReadmesLesson() throws IOException {
    String readme = Files.readString(TOP.resolve("README.md"));
    int from = readme.indexOf('\n', readme.indexOf("```tabor")) + 1;
    String lesson = readme.substring(from, readme.indexOf("```", from));
    String sum =
        HexFormat.of()
            .formatHex(Names.sha256(lesson.getBytes(StandardCharsets.UTF_8)))
            .substring(0, 16);
    for (String name : List.of("printed-" + sum + ".png", "practice-" + sum + ".png")) {
      assertThat(readme).contains("docs/pictures/" + name);
      assertThat(TOP.resolve("docs/pictures").resolve(name)).exists();
    }
  }

  @Test
  void everyPictureIsShownSomewhere() throws IOException {
    Set<String> shown = new TreeSet<>();
    List<Path> all = new ArrayList<>(documents());
    all.add(TOP.resolve("README.md"));
    for (Path file : all) {
      Matcher link = Pattern.compile("pictures/([^)]+)\\)").matcher(Files.readString(file));
      while (link.find()) {
        shown.add(link.group(1));
      }
    }
    try (Stream<Path> files = Files.list(TOP.resolve("docs/pictures"))) {
      assertThat(shown).containsAll(files.map(file -> file.getFileName().toString()).toList());
    }
  }

  private static List<Path> documents() throws IOException {
    try (Stream<Path> files = Files.list(TOP.resolve("docs"))) {
      return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
    }
  }
}
