package tabor.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.emit.pdf.Paper;
import tabor.resolve.Options;

class ChangePicturesTest {
  private static final String BEFORE =
      "groove a\n  hihat : xx xx xx xx\n  snare : .  (x) .  x\n  kick  : x  .  x  .\n";
  private static final String AFTER =
      "groove a\n  hihat : xx xx xx x.\n  snare : .  X  .  x\n  kick  : x  x  x  .\n";

  private static Compiled compiled(String text) {
    return new Compiler(tabor.compile.Loader.NONE)
        .compile(Path.of("lesson.tabor"), text, Options.NONE);
  }

  private static List<ComparedFile> compared(String before, String after) {
    FileChange change = FileComparison.of(compiled(before), compiled(after));
    return List.of(
        new ComparedFile("old.tabor", "new.tabor", change, before.equals(after), List.of()));
  }

  private static Document svg(String before, String after) throws Exception {
    String text = ChangePictures.svg(compared(before, after));
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** The changed notes of a staff, each as place and surface. */
  private static List<String> changed(Document svg, String staff) {
    List<String> found = new ArrayList<>();
    NodeList groups = svg.getElementsByTagName("g");
    for (int i = 0; i < groups.getLength(); i++) {
      Element group = (Element) groups.item(i);
      if (group.getAttribute("class").equals(staff)) {
        NodeList inside = group.getElementsByTagName("g");
        for (int k = 0; k < inside.getLength(); k++) {
          Element note = (Element) inside.item(k);
          if (List.of(note.getAttribute("class").split(" ", -1)).contains("changed")
              && note.hasAttribute("data-surface")) {
            found.add(note.getAttribute("data-at") + " " + note.getAttribute("data-surface"));
          }
        }
      }
    }
    return found;
  }

  @Test
  void theUpperStaffMarksWhatIsGoneAndTheLowerWhatIsNew() throws Exception {
    Document svg = svg(BEFORE, AFTER);
    assertThat(changed(svg, "before")).containsExactlyInAnyOrder("1/4 snare", "7/8 hihat");
    assertThat(changed(svg, "now")).containsExactlyInAnyOrder("1/4 snare", "1/4 kick");
  }

  @Test
  void aLeftHandedPlayersStavesAreMarkedToo() throws Exception {
    String kit = "kit mine like junior\n  left-handed\n";
    String on = "groove a\n  on mine\n  hands : rl rl rl rl\n  left plays ride\n";
    Document svg = svg(kit + on, kit + on.replace("rl\n", "r.\n"));
    assertThat(changed(svg, "before")).hasSize(1);
    assertThat(changed(svg, "now")).isEmpty();
  }

  @Test
  void hollowHeadsHaveNoTintAndTheHoleRunsTheOtherWay() throws Exception {
    Document svg = svg(BEFORE, BEFORE.replace("kick  : x  .", "kick  : .  ."));
    NodeList groups = svg.getElementsByTagName("g");
    for (int i = 0; i < groups.getLength(); i++) {
      Element note = (Element) groups.item(i);
      if (note.getAttribute("class").contains("changed") && note.hasAttribute("data-surface")) {
        NodeList paths = note.getElementsByTagName("path");
        assertThat(paths.getLength()).isEqualTo(2);
        String[] runs = ((Element) paths.item(1)).getAttribute("d").split("(?<=Z)(?=M)", -1);
        assertThat(runs).hasSize(2);
        assertThat(Math.signum(area(runs[0]))).isEqualTo(-Math.signum(area(runs[1])));
        assertThat(Math.abs(area(runs[1]))).isLessThan(Math.abs(area(runs[0])));
        assertThat(((Element) paths.item(0)).hasAttribute("fill-opacity")).isFalse();
        return;
      }
    }
    org.assertj.core.api.Assertions.fail("no changed note");
  }

  /** Twice the area inside the points of a path, its sign saying which way round it runs. */
  private static double area(String path) {
    List<double[]> points = new ArrayList<>();
    for (String piece : path.split("(?=[MLCZ])", -1)) {
      String[] numbers = piece.replaceAll("[MLCZ]", "").trim().split(" ", -1);
      if (numbers.length >= 2) {
        points.add(
            new double[] {
              Double.parseDouble(numbers[numbers.length - 2]),
              Double.parseDouble(numbers[numbers.length - 1])
            });
      }
    }
    double area = 0;
    for (int i = 0; i < points.size(); i++) {
      double[] a = points.get(i);
      double[] b = points.get((i + 1) % points.size());
      area += a[0] * b[1] - b[0] * a[1];
    }
    return area;
  }

  @Test
  void nothingChangedIsSaid() {
    assertThat(ChangePictures.html(compared(BEFORE, BEFORE))).contains("The music is the same.");
    assertThat(ChangePictures.svg(compared(BEFORE, BEFORE))).contains("The music is the same.");
    assertThat(ChangePictures.html(List.of())).contains("The music is the same.");
  }

  @Test
  void thePageHasWordsAndStaves() {
    String html = ChangePictures.html(compared(BEFORE, AFTER));
    assertThat(html)
        .contains("<h3>groove a</h3>")
        .contains("kick added on 2")
        .contains("class=\"before\"")
        .doesNotContain("<script");
    assertThat(ChangePictures.html(compared("title \"<b>\"\n" + BEFORE, BEFORE)))
        .contains("&lt;b&gt;")
        .doesNotContain("<b>");
  }

  @Test
  void thePrintedPagesHoldEverySection() throws Exception {
    StringBuilder before = new StringBuilder();
    StringBuilder after = new StringBuilder();
    for (int i = 0; i < 9; i++) {
      before.append(BEFORE.replace("groove a", "groove a" + i));
      after.append(AFTER.replace("groove a", "groove a" + i));
    }
    byte[] pdf = ChangePictures.pdf(compared(before.toString(), after.toString()), Paper.A4);
    assertThat(pdf)
        .isEqualTo(ChangePictures.pdf(compared(before.toString(), after.toString()), Paper.A4));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isBetween(2, 6);
      String text = new PDFTextStripper().getText(document);
      for (int i = 0; i < 9; i++) {
        assertThat(text).contains("groove a" + i);
      }
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        assertThat(stripper.getText(document).strip()).isNotEmpty();
      }
    }
  }
}
