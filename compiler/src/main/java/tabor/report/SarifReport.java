package tabor.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Explanation;
import tabor.diagnostic.Severity;
import tabor.report.SourceView.Found;
import tabor.source.Spot;

/**
 * Diagnostics as SARIF 2.1.0 (OASIS Standard, 27 March 2020): one run, a rule for each code that
 * was met, regions in UTF-16 columns from 1, and files named relative to the folder that Tabor was
 * started in, so that the result is the same on every machine.
 */
public final class SarifReport {
  private static final String ROOT = "ROOT";

  private final Json json = new Json();
  private final boolean hints;
  private final @Nullable String docs;
  private final List<Code> rules;

  private SarifReport(List<Compiled> files, boolean hints, @Nullable String docs) {
    this.hints = hints;
    this.docs = docs == null || docs.endsWith("/") ? docs : docs + "/";
    TreeSet<Code> met = new TreeSet<>();
    files.forEach(file -> shown(file).forEach(d -> met.add(d.code())));
    this.rules = List.copyOf(met);
  }

  /**
   * All diagnostics of all files.
   *
   * @param files what was compiled
   * @param hints whether hints are among them
   * @param docs address of the folder that holds the pages on the codes; null where there is none,
   *     then the rules carry the pages' text alone
   */
  public static String of(List<Compiled> files, boolean hints, @Nullable String docs) {
    return new SarifReport(files, hints, docs).write(files);
  }

  private List<Diagnostic> shown(Compiled file) {
    return file.diagnostics().stream().filter(d -> hints || d.severity() != Severity.HINT).toList();
  }

  private String write(List<Compiled> files) {
    json.object(
        () ->
            json.text("$schema", "https://json.schemastore.org/sarif-2.1.0.json")
                .text("version", "2.1.0")
                .array("runs", () -> json.object(() -> run(files))));
    return json.toString();
  }

  private void run(List<Compiled> files) {
    json.object(
        "tool",
        () ->
            json.object(
                "driver",
                () ->
                    json.text("name", "Tabor")
                        .text("version", Version.TEXT)
                        .text("semanticVersion", Version.TEXT)
                        .array("rules", () -> rules.forEach(this::rule))));
    json.object(
        "originalUriBaseIds",
        () ->
            json.object(
                ROOT,
                () ->
                    json.object(
                        "description",
                        () -> json.text("text", "The folder that Tabor was started in."))));
    json.text("columnKind", "utf16CodeUnits");
    json.array(
        "results",
        () ->
            files.forEach(
                file -> {
                  SourceView view = new SourceView(file);
                  shown(file).forEach(diagnostic -> result(view, diagnostic));
                }));
  }

  private void rule(Code code) {
    Explanation page = Explanation.of(code);
    json.object(
        () -> {
          json.text("id", code.word());
          json.object("shortDescription", () -> json.text("text", page.summary()));
          if (docs != null) {
            json.text("helpUri", docs + code.word() + ".md");
          }
          json.object(
              "help", () -> json.text("text", page.plain()).text("markdown", page.markdown()));
          json.object("defaultConfiguration", () -> json.text("level", level(code.severity())));
        });
  }

  /** A hint is SARIF's note. */
  private static String level(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case HINT -> "note";
    };
  }

  private void result(SourceView view, Diagnostic diagnostic) {
    json.object(
        () -> {
          json.text("ruleId", diagnostic.code().word());
          json.number("ruleIndex", rules.indexOf(diagnostic.code()));
          json.text("level", level(diagnostic.severity()));
          json.object("message", () -> json.text("text", message(diagnostic)));
          json.array("locations", () -> json.object(() -> location(view, diagnostic)));
          if (!diagnostic.labels().isEmpty()) {
            json.array("relatedLocations", () -> related(view, diagnostic.labels()));
          }
          if (!diagnostic.fixes().isEmpty()) {
            json.array("fixes", () -> diagnostic.fixes().forEach(fix -> fix(view, fix)));
          }
        });
  }

  private static String message(Diagnostic diagnostic) {
    Diagnostic.Place place = diagnostic.place();
    String help = diagnostic.help();
    return sentence((place == null ? "" : place.words() + ": ") + diagnostic.message())
        + (help == null ? "" : " " + sentence(help));
  }

  private static String sentence(String words) {
    boolean ended = words.endsWith(".") || words.endsWith("?");
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + (ended ? "" : ".");
  }

  private void location(SourceView view, Diagnostic diagnostic) {
    physical(view.find(diagnostic.spot()));
    Diagnostic.Place place = diagnostic.place();
    if (place != null) {
      json.array(
          "logicalLocations",
          () ->
              json.object(
                  () ->
                      json.text("name", place.section())
                          .text("fullyQualifiedName", place.words())
                          .text("kind", "module")));
    }
  }

  private void related(SourceView view, List<Diagnostic.Label> labels) {
    for (int i = 0; i < labels.size(); i++) {
      int id = i + 1;
      Diagnostic.Label label = labels.get(i);
      json.object(
          () -> {
            json.number("id", id);
            physical(view.find(label.spot()));
            json.object("message", () -> json.text("text", label.text()));
          });
    }
  }

  private void fix(SourceView view, Diagnostic.Fix fix) {
    Map<Path, List<Diagnostic.Edit>> byFile = new LinkedHashMap<>();
    for (Diagnostic.Edit edit : fix.edits()) {
      byFile.computeIfAbsent(view.find(edit.spot()).file(), f -> new ArrayList<>()).add(edit);
    }
    json.object(
        () -> {
          json.object("description", () -> json.text("text", fix.title()));
          json.array(
              "artifactChanges", () -> byFile.forEach((file, edits) -> change(view, file, edits)));
        });
  }

  private void change(SourceView view, Path file, List<Diagnostic.Edit> edits) {
    json.object(
        () -> {
          artifact(file);
          json.array(
              "replacements",
              () ->
                  edits.forEach(
                      edit ->
                          json.object(
                              () -> {
                                region("deletedRegion", view, edit.spot());
                                json.object(
                                    "insertedContent", () -> json.text("text", edit.text()));
                              })));
        });
  }

  private void physical(Found found) {
    json.object(
        "physicalLocation",
        () -> {
          artifact(found.file());
          if (!found.text().text().isEmpty()) {
            region("region", found);
          }
        });
  }

  private void region(String name, SourceView view, Spot spot) {
    region(name, view.find(spot));
  }

  private void region(String name, Found found) {
    json.object(
        name,
        () ->
            json.number("startLine", found.line() + 1)
                .number("startColumn", found.column() + 1)
                .number("endLine", found.endLine() + 1)
                .number("endColumn", found.endColumn() + 1));
  }

  private void artifact(Path file) {
    json.object(
        "artifactLocation",
        () -> {
          json.text("uri", uri(file));
          if (!file.isAbsolute()) {
            json.text("uriBaseId", ROOT);
          }
        });
  }

  /** A URI reference: relative where the path is, every byte that is not plain in percent form. */
  private static String uri(Path file) {
    StringBuilder uri = new StringBuilder(file.isAbsolute() ? "file://" : "");
    String path = file.normalize().toString().replace('\\', '/');
    for (byte b : path.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xFF);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "-._~/".indexOf(c) >= 0;
      if (plain) {
        uri.append(c);
      } else {
        uri.append(String.format("%%%02X", (int) c));
      }
    }
    return uri.toString();
  }
}
