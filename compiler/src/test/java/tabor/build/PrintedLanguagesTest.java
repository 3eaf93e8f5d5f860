package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.font.OpenFont;
import tabor.emit.grid.Grid;
import tabor.emit.html.PageMaker;
import tabor.emit.html.PageWriter;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.pdf.HandoutMaker;
import tabor.emit.pdf.PdfWriter;
import tabor.groove.Caution;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.resolve.Options;
import tabor.words.Words;

/** No English word of ours is left in what is printed in another language. */
class PrintedLanguagesTest {
  /** Everything that has words, under titles that are no words. */
  private static final String LESSON =
      """
      title "Qqq"
      by "Www"
      time 4/4
      tempo 84
      goal "Zzz"
      log 3 days
      teacher "Vvv"

      groove g1 "Xa"
        hihat : xx xx xx .
        snare : .  x^ (x)  'xx~
        kick  : x  .  x  .
        crescendo to f from 1 to 4
      step g2 "Xb"
        right plays ride.bell
        move kick from 3 to 2&
        accent snare at 2
        tempo 60
      step g3 "Xc"
        drop kick
        add floor ghosted at 1 4&
      sheet g4 "Xd" from g1
        each add kick at 1& 2& 4&
      chart g5 "Xe"
        count-in 1 bar
        click 2 bars on 1 off
        mark "M"
        cue "Ccc"
        play g1 4 times without hands fill g2
        hold 4 beats
        play g2 for 1 minute
        tempo 92 to 60 over 4 bars
        dynamic p
        trade g1 1 bar 4 times
        climb g1 from 50 to 60 by 5 every 2 times
        rest 30 seconds
        rest 2 bars
      player mia "Mmm"
        left-handed
        tempo 80%
      """;

  private static Lesson lesson(String language, Options options) {
    var compiled =
        new Compiler(Loader.NONE)
            .compile(Path.of("q.tabor"), "language " + language + "\n" + LESSON, options);
    assertThat(compiled.hasErrors()).as(compiled.diagnostics().toString()).isFalse();
    return compiled.lesson();
  }

  private static String html(Lesson lesson) {
    return PageWriter.write(
        PageMaker.of(lesson, new PageDrawings(lesson, false, OpenFont.get()), true, Caution.WORDS));
  }

  private static String pdf(Lesson lesson, HandoutLook look) throws IOException {
    byte[] bytes = PdfWriter.write(HandoutMaker.make(lesson, look, OpenFont.get()));
    try (PDDocument document = org.apache.pdfbox.Loader.loadPDF(bytes)) {
      return document.getDocumentCatalog().getLanguage()
          + "\n"
          + new PDFTextStripper().getText(document);
    }
  }

  private static Properties bundle(String name) throws IOException {
    Properties properties = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(name + ".properties")) {
      properties.load(
          new InputStreamReader(Objects.requireNonNull(in, name), StandardCharsets.UTF_8));
    }
    return properties;
  }

  /** Words and phrases of the English bundle that the other language does not use anywhere. */
  private static Set<String> english(String language) throws IOException {
    Properties english = bundle("words");
    for (Surface surface : Kits.FIVE_PIECE.surfaces().values()) {
      english.setProperty(surface.name(), surface.words());
    }
    String own =
        Stream.concat(
                bundle("words_" + language).values().stream(), bundle("surfaces").values().stream())
            .map(String::valueOf)
            .collect(Collectors.joining(" "));
    Set<String> words = new TreeSet<>();
    for (String key : english.stringPropertyNames()) {
      for (String piece : english.getProperty(key).split("\\{[^{}]*\\}|[{}|#<]|choice", -1)) {
        for (String word : piece.split("[^A-Za-z-]+", -1)) {
          if (word.length() > 2 && !has(own, word)) {
            words.add(word);
          }
        }
      }
    }
    return words;
  }

  private static boolean has(String text, String word) {
    return Pattern.compile("(?iu)(?<![\\p{L}-])" + Pattern.quote(word) + "(?![\\p{L}-])")
        .matcher(text)
        .find();
  }

  private static List<String> left(String text, String language) throws IOException {
    List<String> left = new ArrayList<>();
    for (String word : english(language)) {
      if (has(text, word)) {
        left.add(word);
      }
    }
    return left;
  }

  /** What a reader sees or hears of a page: texts, labels, and what its script may say. */
  private static String read(String html) {
    StringBuilder labels = new StringBuilder();
    Pattern.compile("(?:aria-label|title|alt)=\"([^\"]*)\"")
        .matcher(html)
        .results()
        .forEach(found -> labels.append(found.group(1)).append('\n'));
    // The words, units and lines of the data; its keys are English like all code.
    Pattern.compile("\"(?:words|unit|[a-z-]+)\":\"([^\"]*)\"")
        .matcher(html)
        .results()
        .forEach(found -> labels.append(found.group(1)).append('\n'));
    String text =
        html.replaceAll("(?s)<(script|style)\\b.*?</\\1>", " ").replaceAll("<[^>]*>", "\n");
    return labels + text;
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr", "es"})
  void thePracticePage(String language) throws IOException {
    String html = html(lesson(language, Options.NONE));
    assertThat(html).contains("<html lang=\"" + language + "\">");
    String read = read(html).replaceAll("\\b(?:click\\.strong|click)\\b", " ");
    assertThat(left(read, language)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr", "es"})
  void theGridAndTheHandout(String language) throws IOException {
    Lesson lesson = lesson(language, Options.NONE);
    String grid = Grid.of(lesson, section -> true);
    assertThat(left(grid, language)).isEmpty();
    String pdf =
        pdf(
            lesson,
            HandoutLook.PLAIN.withReader(new HandoutLook.Reader("", List.of(), true, false)));
    assertThat(left(pdf, language)).isEmpty();
    assertThat(pdf).startsWith(language).contains("Zzz", "Vvv", "Ccc");
  }

  /** In French a space that does not break stands before a semicolon. */
  @Test
  void frenchSemicolonsStandApart() throws IOException {
    Lesson lesson = lesson("fr", Options.NONE);
    for (String printed :
        List.of(Grid.of(lesson, section -> true), pdf(lesson, HandoutLook.PLAIN))) {
      assertThat(printed).contains("\u00a0;").doesNotContainPattern("[^\u00a0];");
    }
  }

  @Test
  void theSearchFindsEnglish() throws IOException {
    assertThat(left(read(html(lesson("en", Options.NONE))), "de"))
        .contains("slower", "bars", "ghosted");
  }

  @Test
  void theGermanPageIsReadBack() throws IOException {
    String pdf = pdf(lesson("de", Options.NONE), HandoutLook.PLAIN);
    assertThat(pdf)
        .contains("Name", "Datum", "Bassdrum", "Standtom", "Übetagebuch", "Wie es lief")
        .contains("Geändert: ", "Einzählen: 1 Takt", "Gesamt ", "du: Hände")
        .contains("Schlagzeug ist laut");
  }

  /** The student's language wins over that of the lesson. */
  @Test
  void aPlayersLanguage() throws IOException {
    String text = LESSON.replace("player mia \"Mmm\"", "player mia \"Mmm\"\n  language fr");
    Compiler compiler = new Compiler(Loader.NONE);
    Path path = Path.of("q.tabor");
    Player mia =
        compiler
            .compile(path, "language de\n" + text, Options.NONE)
            .lesson()
            .extras()
            .players()
            .get(0);
    Lesson hers = compiler.compile(path, "language de\n" + text, Options.NONE.of(mia)).lesson();
    assertThat(pdf(hers, HandoutLook.PLAIN)).startsWith("fr").contains("caisse claire", "Nom");
    assertThat(html(hers)).contains("<html lang=\"fr\">", "Jouer");
  }
}
