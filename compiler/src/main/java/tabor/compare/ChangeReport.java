package tabor.compare;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.report.Json;
import tabor.report.Version;
import tabor.rhythm.CountNames;

/** Writes down what changed in files: as people read it, as Markdown, as JSON. */
public final class ChangeReport {
  private ChangeReport() {}

  /**
   * As people read it: nothing for files that are the same.
   *
   * @param names true if each file is named above its changes
   * @param rewritten true if files are named too whose text alone is other
   */
  public static String text(List<ComparedFile> files, boolean names, boolean rewritten) {
    StringBuilder text = new StringBuilder();
    for (ComparedFile file : files) {
      if (file.isSame() && file.notes().isEmpty() && (file.sameText() || !rewritten)) {
        continue;
      }
      String indent = names ? "  " : "";
      String words = file.words();
      if (names) {
        text.append(file.name()).append(words.isEmpty() ? "" : ": " + words).append('\n');
      } else if (!words.isEmpty() && !file.isSame()) {
        text.append("the file ").append(words).append('\n');
      }
      file.notes().forEach(note -> text.append(indent).append(note).append('\n'));
      for (ChangeWords.Said said : ChangeWords.of(file.change())) {
        text.append(indent).append(said).append('\n');
      }
    }
    return text.toString();
  }

  /** A list for a message or a page; a sentence where nothing changed. */
  public static String markdown(List<ComparedFile> files) {
    StringBuilder text = new StringBuilder();
    for (ComparedFile file : files) {
      if (file.isSame() && file.notes().isEmpty()) {
        continue;
      }
      String words = file.words();
      text.append(text.isEmpty() ? "" : "\n").append("### ").append(escaped(file.name()));
      text.append("\n\n").append(words.isEmpty() ? "" : "The file " + words + ".\n\n");
      file.notes().forEach(note -> text.append("- ").append(escaped(note)).append('\n'));
      for (ChangeWords.Said said : ChangeWords.of(file.change())) {
        String about = said.about().isEmpty() ? "" : "**" + escaped(said.about()) + "**";
        text.append("- ").append(about).append(escaped(said.text())).append('\n');
      }
    }
    return text.isEmpty() ? "The music is the same.\n" : text.toString();
  }

  /** The signs that Markdown would read as its own. */
  private static String escaped(String text) {
    return text.replace("&", "&amp;").replaceAll("[\\\\`*_\\[\\]<>|#~]", "\\\\$0");
  }

  /** Everything, for programs: described in docs/version-control.md. */
  public static String json(List<ComparedFile> files) {
    Json json = new Json();
    json.object(
        () ->
            json.text("tabor", Version.TEXT)
                .flag("same", files.stream().allMatch(ComparedFile::isSame))
                .array("files", () -> files.forEach(file -> file(json, file))));
    return json.toString();
  }

  private static void file(Json json, ComparedFile file) {
    json.object(
        () -> {
          json.text("before", file.before()).text("after", file.after());
          json.flag("same", file.isSame());
          json.texts("notes", file.notes());
          json.texts(
              "words",
              ChangeWords.of(file.change()).stream().map(ChangeWords.Said::toString).toList());
          details(json, file.change().details());
          json.array("sections", () -> file.change().sections().forEach(one -> section(json, one)));
        });
  }

  private static void details(Json json, List<Detail> details) {
    json.array(
        "details",
        () ->
            details.forEach(
                detail ->
                    json.object(
                        () ->
                            json.text("what", detail.what())
                                .text("before", detail.before())
                                .text("after", detail.after()))));
  }

  private static void section(Json json, SectionChange section) {
    json.object(
        () -> {
          json.text("kind", section.isVariation() ? "variation" : section.kind().word());
          json.text("name", section.after() == null ? section.label() : section.after().name());
          json.text("before", section.before() == null ? null : section.before().name());
          json.text("state", section.state().name().toLowerCase(java.util.Locale.ROOT));
          details(json, section.details());
          json.array(
              "bars",
              () ->
                  section
                      .bars()
                      .forEach(
                          bar ->
                              json.object(
                                  () ->
                                      json.number("before", bar.before() == 0 ? null : bar.before())
                                          .number(
                                              "after", bar.after() == 0 ? null : bar.after()))));
          json.array(
              "strokes",
              () ->
                  section
                      .strokes()
                      .forEach(
                          stroke ->
                              json.object(
                                  () -> {
                                    stroke(json, "before", section.before(), stroke.before());
                                    stroke(json, "after", section.after(), stroke.after());
                                  })));
        });
  }

  private static void stroke(
      Json json, String name, @Nullable Section section, @Nullable Stroke stroke) {
    if (stroke == null || !(section instanceof Groove groove)) {
      return;
    }
    json.object(
        name,
        () -> {
          json.number("bar", stroke.bar());
          json.text("at", stroke.at().toString());
          json.text("count", CountNames.of(stroke.slot(), groove.meter(stroke.bar())).toString());
          json.text("limb", stroke.limb().words());
          json.text("surface", stroke.surface().name());
          json.text("level", stroke.level().word());
          json.texts("ornaments", stroke.ornaments().list().stream().map(Ornament::word).toList());
          json.text("length", stroke.ornaments().isRolled() ? stroke.length().toString() : null);
        });
  }
}
