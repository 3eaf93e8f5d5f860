package tabor.compile;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.compile.UseGraph.Link;
import tabor.compile.UseGraph.Source;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.kit.Kit;
import tabor.lists.Lists;
import tabor.resolve.HandWords;
import tabor.resolve.Header;
import tabor.resolve.Options;
import tabor.resolve.SectionDefaults;
import tabor.source.Passage;
import tabor.syntax.SectionSyntax;

/**
 * Compiles files, and compiles them again when their text has changed at the cost of what the
 * change touches: passages with the same text keep their trees, and sections whose questions get
 * the same answers keep their results. The outcome is that of a fresh compilation.
 *
 * <p>The order: text to passages ({@code parse}), passages to trees ({@code parse}), the files in
 * use and all kits ({@link UseGraph}), then file by file, those in use first: header to settings,
 * headings to names, grooves and steps from top to bottom, charts ({@code resolve}), and last the
 * names that nobody used.
 *
 * <p>Not safe for several threads at once.
 */
public final class Compiler {
  /** Most characters of a text; a file of more bytes is refused by whoever reads it. */
  public static final int MOST_CHARACTERS = 4 * 1024 * 1024;

  /** Most files in use, counted once for each settings that they are handed. */
  private static final int MOST_USED = 10_000;

  private final Loader loader;
  private final Supplier<Known> origin;
  private final Map<Path, SourceDocument> documents = new HashMap<>();

  /** Compiles with files in use from {@code loader}. */
  public Compiler(Loader loader) {
    this(loader, () -> Known.NOTHING);
  }

  /**
   * Compiles with files in use from {@code loader}.
   *
   * @param origin what another compiler knew: a file that this one has not met yet costs no more
   *     than its difference from what it was there
   */
  public Compiler(Loader loader, Supplier<Known> origin) {
    this.loader = loader;
    this.origin = origin;
  }

  /** What a compiler knew of its files at some moment; any thread may keep it and start from it. */
  public static final class Known {
    /** Nothing. */
    public static final Known NOTHING = new Known(Map.of());

    private final Map<Path, SourceDocument> documents;

    private Known(Map<Path, SourceDocument> documents) {
      this.documents = documents;
    }

    private SourceDocument document(Path path) {
      SourceDocument known = documents.get(path);
      return known == null ? new SourceDocument(path) : known.copy();
    }
  }

  /** What it knows now, for others to start from. */
  public Known known() {
    Map<Path, SourceDocument> copies = new HashMap<>();
    documents.forEach((path, document) -> copies.put(path, document.copy()));
    return new Known(copies);
  }

  /**
   * Compiles a text.
   *
   * @param path the file it is the text of; the same path again means a newer text of that file
   * @param text its text; never refused, whatever it is
   * @param options what is asked for over what the file says
   */
  public Compiled compile(Path path, String text, Options options) {
    List<Source> sources =
        UseGraph.of(path, text, loader, p -> documents.computeIfAbsent(p, origin.get()::document));
    Source root = sources.get(sources.size() - 1);
    Result result = new Run(options).result(root);
    Map<Passage, Compiled.Where> places = new IdentityHashMap<>();
    sources.forEach(source -> place(source.document, places));
    SourceDocument document = root.document;
    List<SectionSyntax> syntax = new ArrayList<>(document.nodes().size() + 1);
    syntax.add(document.headerSyntax());
    document.nodes().forEach(node -> syntax.add(node.syntax));
    return new Compiled(
        path,
        text,
        lesson(document, result, options),
        syntax,
        result.diagnostics(),
        places,
        result.unused(),
        result.uses());
  }

  /** True if something is kept of a file, so that its next version costs less. */
  public boolean keeps(Path path) {
    return documents.containsKey(path);
  }

  /** Forgets a file that will not be compiled again soon. */
  public void forget(Path path) {
    documents.remove(path);
  }

  /**
   * A file in use.
   *
   * @param link where that is said
   * @param result what it comes to; null if it could not be had
   * @param alone what it comes to by itself; the same where it is handed nothing unusual, or has no
   *     errors
   */
  record Used(Link link, @Nullable Result result, @Nullable Result alone) {}

  /** One compilation of a file and all that it uses, each once for each settings it is handed. */
  private static final class Run {
    private final Options options;
    private final Map<Edition, Result> results = new IdentityHashMap<>();
    private final Deque<Step> steps = new ArrayDeque<>();
    private int count;

    Run(Options options) {
      this.options = options;
    }

    /** A file being compiled. */
    private record Step(Source source, Edition edition) {}

    Result result(Source root) {
      Edition top = root.document.edition(SectionDefaults.USUAL, true);
      steps.push(new Step(root, top));
      while (!steps.isEmpty()) {
        Step step = steps.peek();
        if (results.containsKey(step.edition()) || compiled(step)) {
          steps.pop();
        }
      }
      return java.util.Objects.requireNonNull(results.get(top));
    }

    /** Compiles a file if all that it uses is there; else sees to that first. */
    private boolean compiled(Step step) {
      SectionDefaults defaults = step.edition().defaults(step.source().kits());
      SectionDefaults handed = defaults.handedDown();
      List<Used> used = new ArrayList<>();
      for (Link link : step.source().links) {
        Source target = link.target();
        if (target == null) {
          used.add(new Used(link, null, null));
          continue;
        }
        Result result = known(target, handed);
        if (result == null) {
          return false;
        }
        Result alone =
            result.errors().isEmpty() || handed.equals(SectionDefaults.USUAL)
                ? result
                : known(target, SectionDefaults.USUAL);
        if (alone == null) {
          return false;
        }
        used.add(new Used(link, result, alone));
      }
      results.put(step.edition(), compile(step, defaults, used));
      return true;
    }

    private @Nullable Result known(Source target, SectionDefaults handed) {
      // Too many ways to be handed settings: from here on each file is handed nothing.
      SectionDefaults kept = ++count > MOST_USED ? SectionDefaults.USUAL : handed;
      Edition edition = target.document.edition(kept, false);
      Result result = results.get(edition);
      if (result == null) {
        steps.push(new Step(target, edition));
      }
      return result;
    }

    private Result compile(Step step, SectionDefaults defaults, List<Used> used) {
      List<Object> basis = new ArrayList<>();
      basis.add(defaults);
      for (Used one : used) {
        Loader.Trouble trouble = one.link().trouble();
        basis.add(one.result() != null ? one.result() : trouble == null ? "circle" : trouble);
        basis.add(one.alone() == null ? "" : one.alone());
      }
      Result before = step.edition().known(options, basis);
      if (before != null) {
        return before;
      }
      Result result = new FileCompiler(step.source(), step.edition(), options, used).compile();
      step.edition().keep(result, basis);
      return result;
    }
  }

  private static void place(SourceDocument document, Map<Passage, Compiled.Where> places) {
    int at = 0;
    Passage header = document.headerSyntax().passage();
    places.put(header, new Compiled.Where(document.path, at));
    at += header.text().length();
    for (SectionNode node : document.nodes()) {
      places.put(node.passage, new Compiled.Where(document.path, at));
      at += node.passage.text().length();
    }
  }

  private static Lesson lesson(SourceDocument document, Result result, Options options) {
    Header header = document.header();
    Path name = document.path.getFileName();
    String file = name == null ? "lesson" : name.toString();
    if (file.endsWith(".tabor")) {
      file = file.substring(0, file.length() - ".tabor".length());
    }
    String title = header.title();
    Groove.Setting setting = setting(result, options);
    return new Lesson(
        file,
        title == null || title.isBlank() ? file : title,
        header.by(),
        setting,
        result.sections(),
        extras(header.extras(), result, setting));
  }

  private static Lesson.Extras extras(Lesson.Extras header, Result result, Groove.Setting setting) {
    HandWords hands =
        new HandWords(setting.kit().leftHanded(), () -> result.setting().wording().language());
    return new Lesson.Extras(
        header.wishes(),
        Lists.map(header.goals(), hands::in),
        Lists.map(header.teacher(), hands::in),
        header.log(),
        header.words(),
        header.language(),
        List.copyOf(result.players().values()),
        List.of(),
        null);
  }

  /** What the header says, on the kit that all sections are played on where they share one. */
  private static Groove.Setting setting(Result result, Options options) {
    Groove.Setting of = result.setting();
    List<Kit> played = new ArrayList<>();
    for (Section section : result.sections()) {
      if (section instanceof Groove groove) {
        played.add(groove.setting().kit());
      }
    }
    Kit first = played.isEmpty() ? of.kit() : played.get(0);
    boolean shared = Lists.all(played, kit -> kit.name().equals(first.name()));
    return new Groove.Setting(
        of.meters(),
        shared ? first : of.kit(),
        options.tempo() == null ? options.view().tempo(of.tempo()) : of.tempo().at(options.tempo()),
        of.feel(),
        of.levels(),
        of.showCounts(),
        of.showSticking(),
        of.showChanges(),
        options.view().wording(of.wording()));
  }
}
