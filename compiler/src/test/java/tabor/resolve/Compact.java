package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.source.LineIndex;
import tabor.source.Span;

/** Sections in few letters, so that a test can be read: {@code 1/4 L snare>}. */
final class Compact {
  private Compact() {}

  static Compiled compile(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("rules.tabor"), text, Options.NONE);
  }

  /** The strokes of the last groove or step. */
  static String last(String text) {
    Compiled compiled = compile(text);
    List<Groove> grooves = compiled.lesson().grooves();
    return of(grooves.get(grooves.size() - 1));
  }

  /** The same of a text in which nothing is wrong. */
  static String lastOfFine(String text) {
    assertThat(problems(text)).as(text).isEmpty();
    return last(text);
  }

  /** The one thing that is told of a text. */
  static Diagnostic only(String text) {
    return only(text, Severity.HINT);
  }

  /** The one thing that is told of a text, at least so severe; others may be told besides. */
  static Diagnostic only(String text, Severity least) {
    List<Diagnostic> all =
        compile(text).diagnostics().stream()
            .filter(one -> one.severity().compareTo(least) <= 0)
            .toList();
    assertThat(all).as(text).hasSize(1);
    return all.get(0);
  }

  /** A text with the first fix of what is told of it. */
  static String fixed(String text, Diagnostic told) {
    StringBuilder fixed = new StringBuilder(text);
    List<Diagnostic.Edit> edits = told.fixes().get(0).edits();
    for (int i = edits.size() - 1; i >= 0; i--) {
      Span span = edits.get(i).spot().span();
      fixed.replace(span.start(), span.end(), edits.get(i).text());
    }
    return fixed.toString();
  }

  /** The strokes of a section, bars parted by a bar line, places in whole notes. */
  static String of(Groove groove) {
    StringBuilder all = new StringBuilder();
    int bar = groove.firstBar();
    String gap = "";
    for (Stroke stroke : groove.strokes()) {
      while (bar < stroke.bar()) {
        all.append(" |");
        bar++;
        gap = " ";
      }
      all.append(gap).append(stroke.at()).append(' ').append(limb(stroke)).append(' ');
      all.append(stroke.surface().name());
      all.append(stroke.level() == Level.ACCENT ? ">" : stroke.level() == Level.GHOST ? "()" : "");
      if (!stroke.ornaments().isEmpty()) {
        all.append('+').append(stroke.ornaments());
      }
      gap = ", ";
    }
    return all.toString().strip();
  }

  private static String limb(Stroke stroke) {
    return switch (stroke.limb()) {
      case RIGHT_HAND -> "R";
      case LEFT_HAND -> "L";
      case RIGHT_FOOT -> "rf";
      case LEFT_FOOT -> "lf";
    };
  }

  /** Errors and warnings as {@code line code}, in the order of the file. */
  static List<String> problems(String text) {
    Compiled compiled = compile(text);
    LineIndex lines = new LineIndex(text);
    List<String> found = new ArrayList<>();
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (diagnostic.severity() != Severity.HINT) {
        int line = lines.lineOf(compiled.span(diagnostic.spot()).start()) + 1;
        found.add(line + " " + diagnostic.code().word());
      }
    }
    return found;
  }

  /** Hints as {@code line code}. */
  static List<String> hints(String text) {
    Compiled compiled = compile(text);
    LineIndex lines = new LineIndex(text);
    return compiled.diagnostics().stream()
        .filter(d -> d.severity() == Severity.HINT)
        .map(d -> (lines.lineOf(compiled.span(d.spot()).start()) + 1) + " " + d.code().word())
        .toList();
  }
}
