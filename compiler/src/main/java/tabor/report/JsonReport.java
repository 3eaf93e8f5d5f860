package tabor.report;

import java.util.List;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.report.SourceView.Found;
import tabor.source.Spot;

/**
 * Diagnostics as JSON of our own shape, described in docs/commands.md. Lines and columns count from
 * 1, columns in UTF-16 units; an end is the place after the last character.
 */
public final class JsonReport {
  private JsonReport() {}

  /** All diagnostics of all files; hints only if asked for. */
  public static String of(List<Compiled> files, boolean hints) {
    Json json = new Json();
    json.object(
        () ->
            json.text("tabor", Version.TEXT)
                .array("files", () -> files.forEach(file -> file(json, file, hints))));
    return json.toString();
  }

  private static void file(Json json, Compiled file, boolean hints) {
    SourceView view = new SourceView(file);
    json.object(
        () ->
            json.text("file", file.file().toString())
                .array(
                    "diagnostics",
                    () ->
                        file.diagnostics().stream()
                            .filter(d -> hints || d.severity() != Severity.HINT)
                            .forEach(d -> diagnostic(json, view, d))));
  }

  private static void diagnostic(Json json, SourceView view, Diagnostic diagnostic) {
    json.object(
        () -> {
          json.text("code", diagnostic.code().word());
          json.text("severity", diagnostic.severity().word());
          json.text("message", diagnostic.message());
          place(json, view, diagnostic.spot());
          Diagnostic.Place music = diagnostic.place();
          if (music != null) {
            json.object(
                "music",
                () ->
                    json.text("section", music.section())
                        .number("bar", music.bar())
                        .text("count", music.count()));
          }
          json.text("help", diagnostic.help());
          json.array("labels", () -> diagnostic.labels().forEach(l -> label(json, view, l)));
          json.array("fixes", () -> diagnostic.fixes().forEach(f -> fix(json, view, f)));
        });
  }

  private static void label(Json json, SourceView view, Diagnostic.Label label) {
    json.object(
        () -> {
          json.text("text", label.text());
          place(json, view, label.spot());
        });
  }

  private static void fix(Json json, SourceView view, Diagnostic.Fix fix) {
    json.object(
        () ->
            json.text("title", fix.title())
                .array(
                    "edits",
                    () ->
                        fix.edits()
                            .forEach(
                                edit ->
                                    json.object(
                                        () -> {
                                          place(json, view, edit.spot());
                                          json.text("text", edit.text());
                                        }))));
  }

  private static void place(Json json, SourceView view, Spot spot) {
    Found found = view.find(spot);
    json.text("file", found.file().toString());
    json.object(
        "start", () -> json.number("line", found.line() + 1).number("column", found.column() + 1));
    json.object(
        "end",
        () -> json.number("line", found.endLine() + 1).number("column", found.endColumn() + 1));
  }
}
