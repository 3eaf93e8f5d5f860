package tabor.emit.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.font.OpenFont;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.kit.Limb;
import tabor.notation.Speller;
import tabor.resolve.Options;
import tabor.testing.Sketch;
import tabor.words.Language;

/** The handout as its reader finds it: text read back, paths measured, pages counted. */
class HandoutTest {
  private static final String LESSON =
      """
      title  "Six-eight workshop"
      by     "Saturday kit class"
      time   6/8
      tempo  60

      groove  pads "On the snare"
        hands  : Rlrrll rlr(l)rr
        text   "Low taps, tall accents."
      step    kitted "Right hand to the ride"
        right  plays ride
      step    feet "Kick on one, foot on two"
        add    kick at 1
        add    hihat.foot at 2
      step    flams "A flam on two"
        flam   right at 2
      chart   practice "Practice"
        count-in 1 bar
        play   feet 4 times
        climb  feet from 50 to 80 by 5 every 4 times
      """;

  private static Lesson lesson(String text) {
    return new Compiler(tabor.compile.Loader.NONE)
        .compile(java.nio.file.Path.of("six.tabor"), text, Options.NONE)
        .lesson();
  }

  private static byte[] pdf(Lesson lesson, HandoutLook look) {
    return PdfWriter.write(HandoutMaker.make(lesson, look, OpenFont.get()));
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    }
  }

  @Test
  void theTextIsRealText() throws IOException {
    String text = text(pdf(lesson(LESSON), HandoutLook.PLAIN));
    assertThat(text)
        .contains("Name", "Date", "Six-eight workshop", "Saturday kit class", "= 60")
        .contains("On the snare", "Low taps, tall accents.")
        .contains("Changed: right hand: now on the ride")
        .contains("Kick on one, foot on two", "A flam on two")
        .contains("Practice", "Count in 1 bar", "Kick on one, foot on two", "4 times", "Total")
        .contains("50", "55", "60", "65", "70", "75", "80")
        .contains("Drums are loud", "1 / ");
    // The key names what is played and nothing else.
    assertThat(text).contains("hi-hat with the foot", "ghost stroke", "flam", "accent");
    assertThat(text).doesNotContain("crash", "cowbell", "press roll");
  }

  @Test
  void aChartThatGoesOnSaysItsHeadingAgain() throws IOException {
    StringBuilder chart = new StringBuilder("groove beat\n  snare : x x x x\n\nchart long\n");
    for (int i = 0; i < 60; i++) {
      chart.append("  mark \"").append(i).append("\"\n  play beat 4 times\n  cue \"go on\"\n");
    }
    chart.append("  climb beat 60 to 160 by 2\n  rest 1 bar\n");
    try (PDDocument document = Loader.loadPDF(pdf(lesson(chart.toString()), HandoutLook.PLAIN))) {
      assertThat(document.getNumberOfPages()).isGreaterThan(1);
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        assertThat(stripper.getText(document)).containsOnlyOnce("How much");
      }
    }
  }

  /** Note heads by the hundred are one shape, and stand within its box in every place. */
  @Test
  void aSignIsKeptOnce() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 1; i <= 40; i++) {
      text.append("groove g").append(i).append("\n  hands : rlrl rlrl rlrl rlrl\n");
      // Flags and rests lie to one side of their base point, so that their boxes show which way is
      // up.
      text.append("  kick : .x . x .x\n  right plays ride\n\n");
    }
    try (PDDocument document = Loader.loadPDF(pdf(lesson(text.toString()), HandoutLook.PLAIN))) {
      Set<COSBase> forms = new HashSet<>();
      int puts = 0;
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getXObjectNames()) {
          PDFormXObject form = (PDFormXObject) page.getResources().getXObject(name);
          forms.add(form.getCOSObject());
          PDRectangle box = form.getBBox();
          boolean across = true;
          for (Object token : new PDFStreamParser(form).parse()) {
            // The numbers of a path are in turn across and up; a viewer cuts off what leaves the
            // box.
            if (token instanceof COSNumber number) {
              assertThat(number.floatValue())
                  .isBetween(
                      across ? box.getLowerLeftX() : box.getLowerLeftY(),
                      across ? box.getUpperRightX() : box.getUpperRightY());
              across = !across;
            }
          }
        }
        for (Object token : new PDFStreamParser(page).parse()) {
          puts += token instanceof Operator operator && operator.getName().equals("Do") ? 1 : 0;
        }
      }
      assertThat(document.getNumberOfPages()).isGreaterThan(1);
      assertThat(puts).isGreaterThan(40 * 16);
      assertThat(forms.size()).isBetween(5, 16);
    }
  }

  /** Two documents at once: neither takes the other's letters. */
  @Test
  void documentsMadeAtTheSameTimeHaveTheirOwnLetters() {
    List<String> titles =
        List.of("Abcdefgh", "Quiz jumps", "Vexing 123", "Oboe \u00e4\u00f6\u00fc");
    List<byte[]> alone = titles.stream().map(HandoutTest::titled).toList();
    for (int round = 0; round < 5; round++) {
      List<byte[]> together = titles.parallelStream().map(HandoutTest::titled).toList();
      for (int i = 0; i < titles.size(); i++) {
        assertThat(together.get(i)).as(titles.get(i)).isEqualTo(alone.get(i));
      }
    }
  }

  private static byte[] titled(String title) {
    return pdf(lesson("title \"" + title + "\"\ngroove g\n  snare : x x x x\n"), HandoutLook.PLAIN);
  }

  @Test
  void anExaminersCopyHasNoHelp() throws IOException {
    HandoutLook clean = new HandoutLook(Paper.A4, false, true, "");
    String text = text(pdf(lesson(LESSON), clean));
    assertThat(text).contains("On the snare", "Right hand to the ride");
    assertThat(text).doesNotContain("Changed", "Drums are loud").doesNotContainPattern("R\\s+L\\s");
    Handout handout = HandoutMaker.make(lesson(LESSON), clean, OpenFont.get());
    assertThat(handout.sheets().toString()).doesNotContain("changed", "counts", "sticking");
  }

  @Test
  void theDocumentSaysWhatItIs() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf(lesson(LESSON), HandoutLook.PLAIN))) {
      assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Six-eight workshop");
      assertThat(document.getDocumentInformation().getAuthor()).isEqualTo("Saturday kit class");
      assertThat(document.getDocumentInformation().getCreationDate()).isNull();
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
      List<String> outline = new ArrayList<>();
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        outline.add(item.getTitle());
        assertThat(item.findDestinationPage(document)).isNotNull();
      }
      assertThat(outline)
          .containsExactly(
              "1  On the snare",
              "2  Right hand to the ride",
              "3  Kick on one, foot on two",
              "4  A flam on two",
              "Practice");
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertThat(font.isEmbedded()).isTrue();
          assertThat(font.getName()).matches("[A-Z]{6}\\+LiberationSans(-Bold|-Italic)?");
        }
      }
    }
  }

  @Test
  void theSameLessonGivesTheSameBytes() {
    assertThat(pdf(lesson(LESSON), HandoutLook.PLAIN))
        .isEqualTo(pdf(lesson(LESSON), HandoutLook.PLAIN));
  }

  @ParameterizedTest
  @CsvSource({"A4, 595.28, 841.89", "LETTER, 612, 792"})
  void paper(Paper paper, float width, float height) throws IOException {
    byte[] pdf = pdf(lesson(LESSON), new HandoutLook(paper, true, false, HandoutLook.CAUTION));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        assertThat(page.getMediaBox().getWidth()).isEqualTo(width);
        assertThat(page.getMediaBox().getHeight()).isEqualTo(height);
      }
    }
  }

  @Test
  void hostileTextIsText() throws IOException {
    String title = "</svg><script>alert('x')</script> \"quoted\" \u202eright\u202c \u0007 漢字";
    Groove groove =
        Sketch.groove("g")
            .title(title)
            .prose("A tab\there \u0000\u001b and \u200f a mark, 🥁.\nA second line.")
            .part(Limb.RIGHT_HAND, "snare", "x x x x")
            .done();
    Lesson lesson = new Lesson("g", title, title, groove.setting(), List.of(groove));
    String text = text(pdf(lesson, HandoutLook.PLAIN));
    assertThat(text).contains("</svg><script>alert('x')</script> \"quoted\" right");
    assertThat(text).contains("A tab here", "A second line.");
    assertThat(text).doesNotContain("\u202e", "\u0007", "\u200f");
  }

  /** Sixteen bars with their base on one page, each with its number. */
  @Test
  void aSheetOfSixteenIsOnePage() throws IOException {
    Lesson lesson =
        lesson(
            """
            groove beat "Eighths and a backbeat"
              hihat : xx xx xx xx
              snare : .  x  .  x
              kick  : x  .  .  .
            sheet kicks "Sixteen kicks" from beat
              each add kick at 1& 2 2& 3 3& 4 4&
              each add kick at 1& 3 | 2& 3 | 3 3& | 1& 2& | 2& 3&
              each kick : xx . .x . | .x . x . | x .x x .x | x . . xx "Lane"
            """);
    byte[] pdf = pdf(lesson, HandoutLook.PLAIN);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
    }
    String[] lines = text(pdf).split("\\R");
    String all = String.join(" ", lines);
    assertThat(all).contains("Sixteen kicks", "Lane");
    for (String row : List.of("1 2 3 4", "5 6 7 8", "9 10 11 12")) {
      assertThat(lines).as(all).anyMatch(line -> line.strip().equals(row));
    }
    assertThat(lines).anyMatch(line -> line.startsWith("13 Lane 14 Lane 15 Lane 16 Lane"));
  }

  /** Bars of sixteenths take more room than those that the rows were measured by. */
  @Test
  void aVariationBeginsALineOfItsOwnRatherThanGoingOver() throws IOException {
    Lesson lesson =
        lesson(
            """
            groove beat
              hihat : xx xx xx xx
            sheet s from beat
              each add kick at 1& 2 2& 3
              each hands play paradiddle, paradiddle-diddle in sixteenths
            """);
    String[] lines = text(pdf(lesson, HandoutLook.PLAIN)).split("\\R");
    assertThat(lines)
        .anyMatch(line -> line.strip().equals("1 2 3 4"))
        .anyMatch(line -> line.strip().equals("5 paradiddle"))
        .anyMatch(line -> line.strip().equals("6 paradiddle-diddle"));
  }

  @Test
  void aLessonWithoutSectionsIsStillAPage() throws IOException {
    Lesson lesson = lesson("title \"Nothing yet\"\n");
    assertThat(text(pdf(lesson, HandoutLook.PLAIN))).contains("Nothing yet", "1 / 1");
  }

  @Test
  void pdfAndSvgAgreeOnEveryPath() throws IOException {
    Groove groove = lesson(LESSON).grooves().get(3);
    Engraving engraving =
        Engraver.engrave(
            Speller.spell(groove, Set.copyOf(groove.strokes())), Look.FULL, OpenFont.get());
    double scale = 4.9;
    List<Mark> marks = Mark.moved(engraving.whole().marks(), 50, 60, scale);
    byte[] pdf =
        PdfWriter.write(
            new Handout(
                Paper.A4, "t", "", Language.EN, List.of(new Handout.Sheet(marks)), List.of()));
    List<List<Double>> printed;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      DrawnPaths paths = DrawnPaths.of(document.getPage(0));
      printed = paths.paths();
      assertThat(paths.strokes()).isGreaterThan(20);
    }
    List<List<Double>> drawn = paths(SvgWriter.element(engraving.whole(), "t"));
    assertThat(printed).hasSameSizeAs(drawn);
    assertThat(drawn.size()).isGreaterThan(60);
    for (int i = 0; i < drawn.size(); i++) {
      assertThat(printed.get(i)).as("path " + i).hasSameSizeAs(drawn.get(i));
      for (int k = 0; k < drawn.get(i).size(); k += 2) {
        double x = 50 + drawn.get(i).get(k) / 10 * scale;
        double y = Paper.A4.height() - 60 - drawn.get(i).get(k + 1) / 10 * scale;
        assertThat(Math.abs(printed.get(i).get(k) - x)).isLessThan(0.01);
        assertThat(Math.abs(printed.get(i).get(k + 1) - y)).isLessThan(0.01);
      }
    }
  }

  private static List<List<Double>> paths(String svg) {
    List<List<Double>> paths = new ArrayList<>();
    Matcher data = Pattern.compile("<path d=\"([^\"]*)\"").matcher(svg);
    while (data.find()) {
      List<Double> numbers = new ArrayList<>();
      Matcher number = Pattern.compile("-?[0-9.]+").matcher(data.group(1));
      while (number.find()) {
        numbers.add(Double.valueOf(number.group()));
      }
      paths.add(numbers);
    }
    return paths;
  }
}
