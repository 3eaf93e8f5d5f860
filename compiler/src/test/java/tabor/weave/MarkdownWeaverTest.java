package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.junit.jupiter.api.Test;

class MarkdownWeaverTest {
  private static final Path FILE = Path.of("page.md");
  private static final String BEAT = "groove beat\n  snare : x . x .\n";

  private static Woven weave(String text) {
    return Weaver.markdown(FILE, text, Lessons.NONE, Style.BESIDE);
  }

  private static Woven keeping(String text) {
    return Weaver.markdown(FILE, text, Lessons.NONE, new Style("pictures/", true, link -> false));
  }

  private static String fence(String info, String text) {
    return "```" + info + "\n" + text + "```\n";
  }

  @Test
  void aBlockBecomesAPictureAndTheRestStays() {
    String before = "# One\r\n\ttab  \n* a\n\n";
    String after = "\n<b>raw</b> &amp; \\* end without line end";
    Woven woven = weave(before + fence("tabor", BEAT) + after);
    assertThat(woven.problems()).isEmpty();
    assertThat(woven.files()).hasSize(1);
    String name = woven.files().get(0).name();
    assertThat(name).matches("beat-[0-9a-f]{16}\\.svg");
    assertThat(woven.text())
        .startsWith(before + "![beat: 1 bar of 4/4")
        .endsWith("](pictures/" + name + ")\n" + after);
  }

  @Test
  void whatIsHeardOfAPictureIsWhatIsPlayed() {
    Node tree = Parser.builder().build().parse(weave(fence("tabor", BEAT)).text());
    StringBuilder alt = new StringBuilder();
    tree.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Image image) {
            for (Node n = image.getFirstChild(); n != null; n = n.getNext()) {
              alt.append(n instanceof Text text ? text.getLiteral() : n.toString());
            }
          }
        });
    assertThat(alt.toString())
        .isEqualTo(
            "beat: 1 bar of 4/4, quarter = 90. Bar 1: 1 right hand snare; 3 right hand snare.");
  }

  @Test
  void aTitleStaysATitleWhateverStandsInIt() {
    String title = "a](b) *c* `d` <i> & [e] $f$";
    String text = weave(fence("tabor", "groove g \"" + title + "\"\n  snare : x . x .\n")).text();
    String html = HtmlRenderer.builder().build().render(Parser.builder().build().parse(text));
    assertThat(html)
        .contains("alt=\"a](b) *c* `d` &lt;i&gt; &amp; [e] $f$: 1 bar")
        .doesNotContain("<em>")
        .doesNotContain("<code>");
  }

  @Test
  void theSamePictureHasTheSameNameAndAnotherAnother() {
    String twice = weave(fence("tabor", BEAT) + "\n" + fence("tabor", BEAT)).text();
    assertThat(weave(fence("tabor", BEAT) + "\n" + fence("tabor", BEAT)).files()).hasSize(1);
    assertThat(twice.split("\n\n", -1)[0]).isEqualTo(twice.strip().split("\n\n", -1)[1]);
    String other = weave(fence("tabor", BEAT.replace("x .", "x x"))).files().get(0).name();
    assertThat(other).isNotEqualTo(weave(fence("tabor", BEAT)).files().get(0).name());
  }

  @Test
  void blocksInListsAndQuotationsStayThere() {
    String text =
        "> - one\n>\n>   ```tabor as=both caption=\"two\"\n>   groove beat\n>     snare : x . x .\n"
            + ">   ```\n>   after\n";
    Woven woven = weave(text);
    assertThat(woven.problems()).isEmpty();
    String html =
        HtmlRenderer.builder().build().render(Parser.builder().build().parse(woven.text()));
    assertThat(html)
        .startsWith("<blockquote>\n<ul>\n<li>\n<p>one</p>\n<pre><code class=\"language-tabor\">")
        .contains("groove beat\n  snare : x . x .\n</code></pre>\n<p><img src=\"pictures/beat-")
        .contains("/><br />\n<em>two</em>")
        .endsWith("after</p>\n</li>\n</ul>\n</blockquote>\n");
  }

  @Test
  void lineEndsAreThoseOfTheDocument() {
    String text = fence("tabor as=both", BEAT).replace("\n", "\r\n");
    Woven woven = weave(text);
    assertThat(woven.problems()).isEmpty();
    assertThat(woven.text().replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
  }

  @Test
  void aProblemIsReportedAtItsLineInTheDocument() {
    Woven woven = weave("text\n\n" + fence("tabor", "groove beat\n  snare : x . x\n"));
    Problem problem = woven.problems().get(0);
    assertThat(problem.line()).isEqualTo(5);
    assertThat(problem.column()).isEqualTo(11);
    assertThat(problem.isError()).isTrue();
    assertThat(problem.report())
        .startsWith("page.md:5:11: error: ")
        .contains("5 |   snare : x . x\n")
        .contains("fix:");
  }

  @Test
  void withinAListTheLineIsStillTheDocuments() {
    Woven woven = weave("- a\n\n  ```tabor\n  groove beat\n    snare : x . x\n  ```\n");
    assertThat(woven.problems().get(0).line()).isEqualTo(5);
  }

  @Test
  void aProblemBecomesABoxThatReadsWell() {
    String text =
        weave("a\n\n" + fence("tabor", "groove beat\n  snare : x . x\n") + "\nb\n").text();
    String html = HtmlRenderer.builder().build().render(Parser.builder().build().parse(text));
    assertThat(html)
        .contains("<blockquote>\n<p><strong>Problem:</strong> line 5: bar 1 has 3 beats")
        .contains("<p>b</p>");
  }

  @Test
  void gridSourceAndPlayer() {
    assertThat(weave(fence("tabor as=grid", BEAT)).text())
        .startsWith("```text\n")
        .contains("snare    x . x .");
    assertThat(weave(fence("tabor as=source", BEAT)).text()).isEqualTo(fence("tabor", BEAT));
    Woven player = weave(fence("tabor as=player", "title \"Slow\"\n" + BEAT));
    assertThat(player.text()).contains("[Play Slow](pictures/beat-").contains(".html)");
    String page = new String(player.files().get(1).bytes(), StandardCharsets.UTF_8);
    assertThat(page).startsWith("<!DOCTYPE html>").contains("<title>Slow</title>");
  }

  @Test
  void aFenceWithinTheTextIsOutrun() {
    String text = "~~~tabor as=source\n# ``` here\n" + BEAT + "~~~\n";
    assertThat(weave(text).text()).isEqualTo("````tabor\n# ``` here\n" + BEAT + "````\n");
  }

  @Test
  void inPlaceTheTextStaysAndPicturesAreRenewed() {
    String text = "a\n\n" + fence("tabor", BEAT) + "\nb `tabor: RlrrLrll` c\n";
    Woven once = keeping(text);
    assertThat(once.text()).startsWith("a\n\n" + fence("tabor", BEAT) + "\n![beat");
    assertThat(once.text()).endsWith("\n\nb `tabor: RlrrLrll` c\n");
    assertThat(keeping(once.text()).text()).isEqualTo(once.text());

    String edited = once.text().replace("x . x .", "x x x .");
    String renewed = keeping(edited).text();
    assertThat(renewed).isEqualTo(keeping(text.replace("x . x .", "x x x .")).text());
  }

  @Test
  void whatWasWovenInPlaceIsNotShownTwice() {
    String once = keeping(fence("tabor as=both", BEAT) + "\nend\n").text();
    assertThat(weave(once).text())
        .isEqualTo(weave(fence("tabor as=both", BEAT) + "\nend\n").text());
    String page = Weaver.html(FILE, once, Lessons.NONE, Style.BESIDE).text();
    assertThat(page).doesNotContain("<img").contains("<p>end</p>");
  }

  @Test
  void inPlaceEveryShapeIsStable() {
    for (String info :
        List.of("tabor", "tabor as=both caption=\"c\"", "tabor as=player", "tabor as=source")) {
      String many = BEAT + "step more\n  add kick at 1\n";
      String once =
          keeping("> " + fence(info, many).strip().replace("\n", "\n> ") + "\n\nx\n").text();
      assertThat(keeping(once).text()).as(info).isEqualTo(once);
    }
  }

  @Test
  void aPictureOfSomebodyElseIsNeverTakenAway() {
    String text = fence("tabor", BEAT) + "\n![mine](pictures/mine.svg)\n";
    assertThat(keeping(text).text()).endsWith("\n![mine](pictures/mine.svg)\n");
  }

  @Test
  void anUnclosedBlockAtTheEnd() {
    Woven woven = weave("```tabor\ngroove beat\n  snare : x . x .");
    assertThat(woven.problems()).isEmpty();
    assertThat(woven.text()).startsWith("![beat").endsWith(")");
  }

  @Test
  void anEmptyBlockAndOneOfTwoMinds() {
    assertThat(weave("```tabor\n```\n").problems().get(0).message()).contains("empty");
    assertThat(weave(fence("tabor file=a.tabor", BEAT)).problems().get(0).message())
        .contains("notation of its own");
    assertThat(weave(fence("tabor section=bet", BEAT)).problems().get(0).help()).contains("beat");
    assertThat(weave(fence("tabor section=nothing", BEAT)).problems().get(0).help())
        .isEqualTo("To choose from: beat");
  }

  @Test
  void theWordBehindTheFenceMayBeginWithACapital() {
    assertThat(weave(fence("Tabor as=grid", BEAT)).text())
        .isEqualTo(weave(fence("tabor as=grid", BEAT)).text())
        .contains("snare    x");
  }

  @Test
  void aChartHasNoStaff() {
    String chart = BEAT + "chart all\n  play beat 2 times\n";
    assertThat(weave(fence("tabor section=all", chart)).problems().get(0).help())
        .contains("as=grid");
    assertThat(weave(fence("tabor section=all as=grid", chart)).problems()).isEmpty();
  }
}
