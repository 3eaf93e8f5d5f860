package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** A section has the same number in every output, whether all sections are printed or some. */
class SectionNumbersTest {
  private static final Lesson LESSON =
      new Compiler(tabor.compile.Loader.NONE)
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

  private static List<String> found(Form form, String pattern, String... only) {
    BuildOptions options = new BuildOptions(Set.of(only), true).in(LESSON);
    byte[] bytes = form.outputs(LESSON, options).get(0).bytes().get();
    return Pattern.compile(pattern)
        .matcher(form == Form.PDF ? text(bytes) : new String(bytes, StandardCharsets.UTF_8))
        .results()
        .map(MatchResult::group)
        .toList();
  }

  private static String text(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void variationsAreNumberedWithinTheirSheet() {
    assertThat(found(Form.GRID, "(?m)^\\d\\. .*"))
        .containsExactly("1. First (a)", "2. Kicks (s)", "3. Afterwards (step-2)");
    assertThat(found(Form.HTML, "(?<=<span class=\"unseen\">)[0-9. ]+(?=<)"))
        .containsExactly("1. ", "2.1 ", "2.2 ", "2.3 ", "3. ");
    assertThat(found(Form.PDF, "(?m)^\\d (First|Kicks|Afterwards)"))
        .containsExactly("1 First", "2 Kicks", "3 Afterwards");
  }

  @Test
  void aSectionAloneKeepsItsNumber() {
    assertThat(found(Form.GRID, "(?m)^\\d\\. .*", "step-2"))
        .containsExactly("3. Afterwards (step-2)");
    assertThat(found(Form.HTML, "(?<=<span class=\"unseen\">)[0-9. ]+(?=<)", "step-2"))
        .containsExactly("3. ");
    assertThat(found(Form.PDF, "(?m)^\\d Afterwards", "step-2")).containsExactly("3 Afterwards");
    assertThat(found(Form.HTML, "(?<=<span class=\"unseen\">)[0-9. ]+(?=<)", "s-2"))
        .containsExactly("2.2 ");
    assertThat(found(Form.PDF, "(?m)^2\\.2 Kicks", "s-2")).hasSize(1);
  }
}
