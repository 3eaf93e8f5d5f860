package tabor.fuzz;

import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.audio.WavFile;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.emit.grid.Grid;
import tabor.emit.grid.Sticking;
import tabor.emit.practice.FastestText;
import tabor.emit.practice.StepsTable;
import tabor.emit.strokes.StrokeList;
import tabor.format.Formatter;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.report.JsonReport;
import tabor.report.SarifReport;
import tabor.report.TextReport;
import tabor.resolve.Options;

/** What must hold of any text. Each check throws where it does not. */
final class FuzzChecks {
  private static final Path FILE = Path.of("lesson.tabor");

  /** Sound files are slow to make: only short sections become one. */
  private static final long SHORT_SECONDS = 12;

  private FuzzChecks() {}

  /** Something does not hold. */
  static final class Broken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Broken(String what) {
      super(what);
    }
  }

  /** Checks everything; true if the text had no errors, so that outputs were made. */
  static boolean of(String text) {
    Compiled compiled = compiled(text);
    reports(compiled);
    formatted(text, compiled);
    Lesson lesson = compiled.lesson();
    if (compiled.hasErrors() || lesson.sections().isEmpty()) {
      return false;
    }
    outputs(lesson);
    prints(lesson);
    for (Groove groove : lesson.grooves()) {
      Agreement.check(lesson, groove);
    }
    return true;
  }

  static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(FILE, text, Options.NONE);
  }

  private static void readBack(String json) {
    if (JsonParser.parseString(json).isJsonNull()) {
      throw new AssertionError("empty JSON");
    }
  }

  private static void reports(Compiled compiled) {
    TextReport text = new TextReport(true);
    text.of(compiled, true);
    text.summary(List.of(compiled), true);
    readBack(JsonReport.of(List.of(compiled), true));
    readBack(SarifReport.of(List.of(compiled), true, null));
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (compiled.fileOf(diagnostic.spot()) != null
          && compiled.span(diagnostic.spot()).end() > compiled.text().length()) {
        throw new Broken("a place outside the file: " + diagnostic.message());
      }
    }
  }

  /** Formatted twice is formatted once, and what is heard stays. */
  private static void formatted(String text, Compiled compiled) {
    String once = Formatter.format(text);
    same("formatted twice", once, Formatter.format(once));
    Compiled again = compiled(once);
    same("codes after formatting", codes(compiled), codes(again));
    same("strokes after formatting", strokes(compiled), strokes(again));
  }

  private static Map<String, Long> codes(Compiled compiled) {
    return compiled.diagnostics().stream()
        .collect(Collectors.groupingBy(d -> d.code().word(), TreeMap::new, Collectors.counting()));
  }

  private static String strokes(Compiled compiled) {
    return StrokeList.tsv(compiled.lesson().grooves());
  }

  private static void outputs(Lesson lesson) {
    for (Form form : Form.values()) {
      form.warning(lesson);
      for (Output output :
          form == Form.WAV ? sounds(lesson) : form.outputs(lesson, BuildOptions.ALL)) {
        if (output.bytes().get().length == 0) {
          throw new Broken(output.name() + " is empty");
        }
      }
    }
  }

  private static List<Output> sounds(Lesson lesson) {
    List<Section> quick =
        lesson.sections().stream()
            .filter(section -> WavFile.seconds(section) <= SHORT_SECONDS)
            .limit(1)
            .toList();
    Lesson some = new Lesson(lesson.file(), lesson.title(), lesson.by(), lesson.setting(), quick);
    return Form.WAV.outputs(some, BuildOptions.ALL);
  }

  private static void prints(Lesson lesson) {
    List<Groove> grooves = lesson.grooves();
    narrow(Grid.of(lesson, section -> true));
    narrow(Sticking.of(lesson, grooves, true));
    FastestText.of(lesson, grooves);
    StepsTable.text(lesson);
    StepsTable.tsv(lesson);
    readBack(StrokeList.json(grooves));
  }

  private static void narrow(String page) {
    page.lines()
        .filter(line -> line.length() > 100)
        .findFirst()
        .ifPresent(
            line -> {
              throw new Broken("wider than 100 columns: " + line);
            });
  }

  static void same(String what, Object expected, Object found) {
    if (!expected.equals(found)) {
      throw new Broken(what + ": expected " + brief(expected) + " but found " + brief(found));
    }
  }

  private static String brief(Object value) {
    String text = value.toString();
    return text.length() > 400 ? text.substring(0, 400) + " …" : text;
  }
}
