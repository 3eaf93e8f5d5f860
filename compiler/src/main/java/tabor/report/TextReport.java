package tabor.report;

import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.report.Excerpt.Mark;
import tabor.report.SourceView.Found;
import tabor.source.VisibleText;

/**
 * Diagnostics as a person reads them: {@code file:line:column: severity: message [code]}, the place
 * in the music, the lines in question with the spots marked, and a way out.
 */
public final class TextReport {
  private final Paint paint;

  /** A report with or without the colours of a terminal. */
  public TextReport(boolean colour) {
    this.paint = colour ? Paint.COLOUR : Paint.PLAIN;
  }

  /** The diagnostics of one file, each followed by an empty line; hints only if asked for. */
  public String of(Compiled compiled, boolean hints) {
    return String.join("", each(compiled, hints));
  }

  /** The same in pieces: one for each diagnostic, in order. */
  public List<String> each(Compiled compiled, boolean hints) {
    List<String> all = new ArrayList<>();
    SourceView view = new SourceView(compiled);
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (hints || diagnostic.severity() != Severity.HINT) {
        StringBuilder out = new StringBuilder();
        write(diagnostic, view, out);
        all.add(out.toString());
      }
    }
    return all;
  }

  private void write(Diagnostic diagnostic, SourceView view, StringBuilder out) {
    Found found = view.find(diagnostic.spot());
    boolean inText = !found.text().text().isEmpty();
    out.append(paint.strong(place(found, inText) + ":")).append(' ');
    Severity severity = diagnostic.severity();
    out.append(paint.severity(severity, severity.word() + ":")).append(' ');
    out.append(paint.strong(VisibleText.line(diagnostic.message())));
    out.append(paint.faint(" [" + diagnostic.code().word() + "]")).append('\n');
    Diagnostic.Place place = diagnostic.place();
    if (place != null) {
      out.append("  in:   ").append(VisibleText.line(place.words())).append('\n');
    }
    if (inText) {
      List<Mark> marks = new ArrayList<>();
      marks.add(new Mark(found, "", true));
      for (Diagnostic.Label label : diagnostic.labels()) {
        marks.add(new Mark(view.find(label.spot()), label.text(), false));
      }
      out.append(Excerpt.of(paint, marks));
    }
    String help = diagnostic.help();
    if (help != null) {
      out.append("  fix:  ").append(VisibleText.line(help)).append('\n');
    } else if (!diagnostic.fixes().isEmpty()) {
      out.append("  fix:  ")
          .append(VisibleText.line(diagnostic.fixes().get(0).title()))
          .append('\n');
    }
    out.append('\n');
  }

  private static String place(Found found, boolean inText) {
    String file = VisibleText.line(found.file().toString());
    return inText ? file + ":" + (found.line() + 1) + ":" + (found.column() + 1) : file;
  }

  /** {@code 2 errors and 1 warning in 3 files}, with a pointer to the page of the first code. */
  public String summary(List<Compiled> files, boolean hints) {
    int[] counts = new int[Severity.values().length];
    Code first = null;
    for (Compiled file : files) {
      for (Diagnostic diagnostic : file.diagnostics()) {
        if (hints || diagnostic.severity() != Severity.HINT) {
          counts[diagnostic.severity().ordinal()]++;
          first = first == null ? diagnostic.code() : first;
        }
      }
    }
    String where = files.size() == 1 ? "1 file" : files.size() + " files";
    if (first == null) {
      return where + ", no problems\n";
    }
    List<String> parts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      int count = counts[severity.ordinal()];
      if (count > 0) {
        parts.add(
            paint.severity(severity, count + " " + severity.word() + (count == 1 ? "" : "s")));
      }
    }
    return String.join(", ", parts)
        + " in "
        + where
        + "; tabor explain "
        + first.word()
        + " says more\n";
  }
}
