package tabor.emit.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Look;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.notation.Speller;
import tabor.testing.Sketch;

/** What an SVG file holds and, as much, what it never holds. */
class SvgWriterTest {
  private static final List<String> ELEMENTS =
      List.of("svg", "title", "desc", "style", "g", "path", "text");

  private static Groove groove(String title) {
    return Sketch.groove("beat")
        .title(title)
        .part(Limb.RIGHT_HAND, "hihat", "Xx xx xx xx")
        .part(Limb.LEFT_HAND, "snare", ". X .g X")
        .part(Limb.RIGHT_FOOT, "kick", "x . x .")
        .done();
  }

  private static String file(Groove groove) {
    return SvgWriter.file(
        Engraver.engrave(
                Speller.spell(groove, new java.util.HashSet<>(groove.strokes().subList(0, 1))),
                Look.FULL.withHeading(),
                OpenFont.get())
            .whole(),
        groove.name());
  }

  static Document parse(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> elements(Node node) {
    List<Element> found = new ArrayList<>();
    if (node instanceof Element element) {
      found.add(element);
    }
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      found.addAll(elements(child));
    }
    return found;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "</svg></title><script>x</script>",
        "\"double\" and 'single' & both",
        "]]> <!-- <![CDATA[",
        "bell \u0007 null \u0000 escape \u001b[31m line\nbreak",
        "right to left \u202e\u2067 mark \u200f",
        "\ud800 alone, \ufffe and \uffff",
        "onload=alert(1) x\" onload=\"alert(1)",
        "ÄÖÜ ß Ελλάδα Русский 漢字 🥁",
      })
  void hostileTitlesAreText(String title) throws Exception {
    String svg = file(groove(title));
    Document document = parse(svg);
    for (Element element : elements(document)) {
      assertThat(ELEMENTS).contains(element.getLocalName());
      for (int i = 0; i < element.getAttributes().getLength(); i++) {
        String name = element.getAttributes().item(i).getNodeName();
        assertThat(name).doesNotStartWith("on").isNotIn("style", "href", "xlink:href");
      }
    }
    assertThat(svg).doesNotContain("\u202e", "\u2067", "\u200f");
    String said = document.getElementsByTagName("title").item(0).getTextContent();
    for (String word : title.split("[^A-Za-z]+", -1)) {
      assertThat(said).contains(word);
    }
  }

  @Test
  void inkTakesThePagesColourAndGroupsSayWhatTheyAre() throws Exception {
    String svg = file(groove("A beat"));
    Element root = parse(svg).getDocumentElement();
    assertThat(root.getAttribute("fill")).isEqualTo("currentColor");
    assertThat(root.getAttribute("role")).isEqualTo("img");
    assertThat(root.getAttribute("viewBox"))
        .isEqualTo("0 0 " + root.getAttribute("width") + " " + root.getAttribute("height"));
    List<String> classes = elements(root).stream().map(e -> e.getAttribute("class")).toList();
    assertThat(classes)
        .anyMatch(c -> c.contains("limb-right-hand") && c.contains("surface-hihat"))
        .anyMatch(c -> c.contains("limb-left-hand") && c.contains("level-ghost"))
        .anyMatch(c -> c.contains("limb-right-foot"))
        .anyMatch(c -> c.endsWith("changed"));
    assertThat(svg).doesNotContain("fill=\"#", "http://www.w3.org/1999/xlink");
  }

  @Test
  void theWordsSayTheGrid() throws Exception {
    String said =
        parse(file(groove("A beat"))).getElementsByTagName("desc").item(0).getTextContent();
    assertThat(said)
        .isEqualTo(
            "1 bar of 4/4, quarter = 90. Bar 1: 1 right hand hi-hat accented and right foot kick; "
                + "1& right hand hi-hat; 2 right hand hi-hat and left hand snare accented; "
                + "2& right hand hi-hat; 3 right hand hi-hat and right foot kick; "
                + "3& right hand hi-hat and left hand snare ghosted; "
                + "4 right hand hi-hat and left hand snare accented; 4& right hand hi-hat.");
  }

  @Test
  void anElementOfAPageHasNoStyleSheetAndNoDeclaration() {
    Groove groove = groove("A beat");
    String element =
        SvgWriter.element(
            Engraver.engrave(Speller.spell(groove), Look.FULL, OpenFont.get()).whole(), "a b");
    assertThat(element).startsWith("<svg ").doesNotContain("<style", "<?xml");
    assertThat(element).contains("id=\"a-b-title\"");
  }

  @Test
  void numbersHaveAtMostTwoDigitsAfterThePoint() {
    assertThat(SvgWriter.number(0)).isEqualTo("0");
    assertThat(SvgWriter.number(-0.001)).isEqualTo("0");
    assertThat(SvgWriter.number(1.5)).isEqualTo("1.5");
    assertThat(SvgWriter.number(-12.345)).isEqualTo("-12.34");
    assertThat(SvgWriter.number(2.999)).isEqualTo("3");
    assertThat(SvgWriter.number(0.05)).isEqualTo("0.05");
  }
}
