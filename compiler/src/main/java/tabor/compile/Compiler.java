package tabor.compile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.resolve.Header;
import tabor.resolve.KitBuilder;
import tabor.resolve.Options;
import tabor.rhythm.Meter;
import tabor.source.Passage;
import tabor.syntax.SectionSyntax;

/**
 * Compiles files, and compiles them again when their text has changed at the cost of what the
 * change touches: passages with the same text keep their trees, and sections whose questions get
 * the same answers keep their results. The outcome is that of a fresh compilation.
 *
 * <p>The order: text to passages ({@code parse}), passages to trees ({@code parse}), header to
 * settings, headings to names, kits, grooves and steps from top to bottom, then charts ({@code
 * resolve}), and last the names that nobody used.
 *
 * <p>Not safe for several threads at once.
 */
public final class Compiler {
  /** Most characters of a text; a file of more bytes is refused by whoever reads it. */
  public static final int MOST_CHARACTERS = 4 * 1024 * 1024;

  private final Loader loader;
  private final Map<Path, Document> documents = new HashMap<>();

  /** Compiles with files in use from {@code loader}. */
  public Compiler(Loader loader) {
    this.loader = loader;
  }

  /**
   * Compiles a text.
   *
   * @param path the file it is the text of; the same path again means a newer text of that file
   * @param text its text; never refused, whatever it is
   * @param options what is asked for over what the file says
   */
  public Compiled compile(Path path, String text, Options options) {
    Set<Path> inWork = new LinkedHashSet<>();
    Document document = documents.computeIfAbsent(path, Document::new);
    Map<Passage, Compiled.Where> places = new IdentityHashMap<>(document.nodes.size() + 16);
    Result result = compile(document, text, options, inWork, places, true);
    List<SectionSyntax> syntax = new ArrayList<>(document.nodes.size() + 1);
    syntax.add(document.headerSyntax());
    for (Node node : document.nodes) {
      syntax.add(node.syntax);
    }
    return new Compiled(path, text, lesson(document, result), syntax, result.diagnostics(), places);
  }

  /** Forgets a file that will not be compiled again soon. */
  public void forget(Path path) {
    documents.remove(path);
  }

  private Result compile(
      Document document,
      String text,
      Options options,
      Set<Path> inWork,
      Map<Passage, Compiled.Where> places,
      boolean checked) {
    inWork.add(document.path);
    try {
      if (document.update(text.length() > MOST_CHARACTERS ? "" : text)) {
        document.revision++;
      }
      if (!options.equals(document.options)) {
        document.options = options;
        document.nodes.forEach(node -> node.result = null);
        document.revision++;
      }
      List<Used> used = new ArrayList<>();
      for (Header.Used use : document.header().uses()) {
        used.add(used(document.path, use, options, inWork, places));
      }
      place(document, places);
      List<Object> results = new ArrayList<>();
      used.forEach(u -> results.add(u.result() == null ? u.problems() : u.result()));
      Document.Answer answer = checked ? document.checked : document.inUse;
      Result before = answer.result;
      if (before != null && answer.revision == document.revision && same(results, answer.used)) {
        return before;
      }
      answer.used = results;
      answer.revision = document.revision;
      Result result =
          new FileCompiler(document, options, used, text.length() > MOST_CHARACTERS, checked)
              .compile();
      answer.result = result;
      return result;
    } finally {
      inWork.remove(document.path);
    }
  }

  /** Results are compared as objects: a file in use that did not change has the same one. */
  private static boolean same(List<Object> now, List<Object> before) {
    if (now.size() != before.size()) {
      return false;
    }
    for (int i = 0; i < now.size(); i++) {
      Object a = now.get(i);
      Object b = before.get(i);
      if (a != b && !(a instanceof String && a.equals(b))) {
        return false;
      }
    }
    return true;
  }

  /**
   * A file in use.
   *
   * @param use where that is said
   * @param result what it comes to; null if it could not be had
   * @param problems why not
   */
  record Used(Header.Used use, @Nullable Result result, String problems) {}

  private Used used(
      Path user,
      Header.Used use,
      Options options,
      Set<Path> inWork,
      Map<Passage, Compiled.Where> places) {
    Loader.Found found = loader.load(user, use.file());
    String text = found.text();
    if (text == null) {
      return new Used(use, null, String.valueOf(found.trouble()));
    }
    if (inWork.contains(found.path())) {
      return new Used(use, null, "CYCLE");
    }
    Document document = documents.computeIfAbsent(found.path(), Document::new);
    return new Used(use, compile(document, text, options, inWork, places, false), "");
  }

  private static void place(Document document, Map<Passage, Compiled.Where> places) {
    int at = 0;
    Passage header = document.headerSyntax().passage();
    places.put(header, new Compiled.Where(document.path, at));
    at += header.text().length();
    for (Node node : document.nodes) {
      places.put(node.passage, new Compiled.Where(document.path, at));
      at += node.passage.text().length();
    }
  }

  private static Lesson lesson(Document document, Result result) {
    Header header = document.header();
    Path name = document.path.getFileName();
    String file = name == null ? "lesson" : name.toString();
    if (file.endsWith(".tabor")) {
      file = file.substring(0, file.length() - ".tabor".length());
    }
    Meter meter = header.meter() == null ? Meter.COMMON : header.meter();
    Kit kit = kit(header, result);
    Groove.Setting setting =
        new Groove.Setting(
            meter,
            kit,
            header.tempo(meter),
            header.feel(),
            header.levels(),
            header.showCounts(),
            header.showSticking());
    String title = header.title();
    return new Lesson(
        file,
        title == null || title.isBlank() ? file : title,
        header.by(),
        setting,
        result.sections());
  }

  /** The kit that all sections are played on, wherever it was made; else the one in the header. */
  private static Kit kit(Header header, Result result) {
    List<Kit> played = new ArrayList<>();
    for (Section section : result.sections()) {
      if (section instanceof Groove groove) {
        played.add(groove.setting().kit());
      }
    }
    if (!played.isEmpty()
        && played.stream().allMatch(kit -> kit.name().equals(played.get(0).name()))) {
      return played.get(0);
    }
    KitBuilder.Built own = result.kits().get(header.kit());
    return own != null ? own.kit() : Kits.named(header.kit()).orElse(Kits.FIVE_PIECE);
  }
}
