package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.front.matter.YamlFrontMatterExtension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.testutil.TestResources;
import org.commonmark.testutil.example.Example;
import org.commonmark.testutil.example.ExampleReader;
import org.junit.jupiter.api.Test;

/**
 * Documents without notation are left as they are: the examples of the CommonMark specification,
 * which come with commonmark-java's test utilities.
 */
class CommonMarkExamplesTest {
  private static final List<Example> EXAMPLES = ExampleReader.readExamples(TestResources.getSpec());

  private static final Path FILE = Path.of("example.md");

  @Test
  void thereAreAllOfThem() {
    assertThat(EXAMPLES).hasSizeGreaterThan(600);
  }

  @Test
  void asMarkdownTheyStayByteForByte() {
    for (Example example : EXAMPLES) {
      Woven woven = Weaver.markdown(FILE, example.getSource(), Lessons.NONE, Style.BESIDE);
      assertThat(woven.text()).as(example.toString()).isEqualTo(example.getSource());
      assertThat(woven.problems()).isEmpty();
      String windows = example.getSource().replace("\n", "\r\n");
      assertThat(Weaver.markdown(FILE, windows, Lessons.NONE, Style.BESIDE).text())
          .as(example.toString())
          .isEqualTo(windows);
    }
  }

  @Test
  void asPagesTheyRenderAsTheLibraryRendersThem() {
    List<Extension> extensions =
        List.of(
            TablesExtension.create(),
            YamlFrontMatterExtension.create(),
            HeadingAnchorExtension.create());
    Parser parser = Parser.builder().extensions(extensions).build();
    HtmlRenderer renderer = HtmlRenderer.builder().extensions(extensions).build();
    for (Example example : EXAMPLES) {
      String page = Weaver.html(FILE, example.getSource(), Lessons.NONE, Style.BESIDE).text();
      String open = "<main class=\"sheet\">\n";
      String body = page.substring(page.indexOf(open) + open.length(), page.lastIndexOf("</main>"));
      assertThat(body)
          .as(example.toString())
          .isEqualTo(renderer.render(parser.parse(example.getSource())));
    }
  }

  @Test
  void withTheExtensionTheyRenderAsTheSpecificationSays() {
    List<Extension> extensions = List.of(TaborExtension.create());
    Parser parser = Parser.builder().extensions(extensions).build();
    HtmlRenderer renderer =
        HtmlRenderer.builder().percentEncodeUrls(true).extensions(extensions).build();
    for (Example example : EXAMPLES) {
      // The specification shows a tab as an arrow.
      assertThat(renderer.render(parser.parse(example.getSource())))
          .as(example.toString())
          .isEqualTo(example.getHtml().replace('→', '\t'));
    }
  }
}
