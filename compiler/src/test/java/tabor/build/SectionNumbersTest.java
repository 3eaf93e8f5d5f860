package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** A section has the same number on the practice page and in the grid. */
class SectionNumbersTest {
  private static final Lesson LESSON =
      new Compiler(Loader.NONE)
          .compile(
              Path.of("test.tabor"),
              """
              groove a "First"
                kick : x . x .
              sheet s "Kicks" from a
                each add kick at 2 4
                each add kick at 2& "Push"
              step "Afterwards" from a
                add snare at 2
              """,
              Options.NONE)
          .lesson();

  private static List<String> found(Form form, String pattern) {
    byte[] bytes = form.outputs(LESSON, BuildOptions.ALL).get(0).bytes().get();
    return Pattern.compile(pattern)
        .matcher(new String(bytes, StandardCharsets.UTF_8))
        .results()
        .map(MatchResult::group)
        .toList();
  }

  @Test
  void variationsAreNumberedWithinTheirSheet() {
    assertThat(found(Form.GRID, "(?m)^\\d\\. .*"))
        .containsExactly("1. First (a)", "2. Kicks (s)", "3. Afterwards (step-2)");
    assertThat(found(Form.HTML, "(?<=<span class=\"unseen\">)[0-9. ]+(?=<)"))
        .containsExactly("1. ", "2.1 ", "2.2 ", "2.3 ", "3. ");
  }
}
