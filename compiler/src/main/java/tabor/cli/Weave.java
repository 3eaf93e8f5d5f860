package tabor.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.jspecify.annotations.Nullable;
import tabor.cli.DocumentFiles.Document;
import tabor.lists.Lists;
import tabor.report.Version;
import tabor.weave.Problem;
import tabor.weave.Style;
import tabor.weave.Weaver;
import tabor.weave.Woven;

/** The work of {@code tabor weave} into a folder. */
final class Weave {
  /** The index in the output folder. */
  static final String INDEX = ".tabor-weave";

  /** Asked in place of a link: where the document lies, which what is said of it names. */
  private static final String WHERE = "";

  private final Path folder;
  private final To to;
  private final boolean keepGoing;
  private final String pictures;
  private final @Nullable Path below;
  private final FutureTask<BuildIndex> read;
  private final ConcurrentMap<PageLessons.Asked, PageLessons.Shared> lessons = PageLessons.store();
  private final Set<String> pages = new HashSet<>();

  /** What documents become. */
  enum To {
    MARKDOWN,
    HTML;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * What became of a document.
   *
   * @param document the document
   * @param state how it ended
   * @param problems what was noticed in it now
   * @param said what there is to say of it, now or as it was said when it was made
   */
  record Outcome(Document document, State state, List<Problem> problems, List<String> said) {
    /** What was made now. */
    static Outcome made(Document document, State state, List<Problem> problems) {
      return new Outcome(document, state, problems, Lists.map(problems, Problem::report));
    }
  }

  /** How a document ended. */
  enum State {
    /** It was as before, and nothing was done. */
    FRESH,
    /** It was woven, or copied. */
    DONE,
    /** It has errors, and nothing was written. */
    FAILED
  }

  /**
   * Weaving into a folder.
   *
   * @param keepGoing true to write documents with problems, each shown in a box
   * @param force true to weave everything anew
   * @param pictures the picture folder's name
   * @param below the folder that lessons are read from, in it and below; null for each document's
   *     own
   */
  Weave(
      Path folder, To to, boolean keepGoing, boolean force, String pictures, @Nullable Path below) {
    this.folder = folder;
    this.to = to;
    this.keepGoing = keepGoing;
    this.pictures = pictures;
    this.below = below;
    String settings =
        Version.TEXT + " " + to.word() + " " + pictures + (below == null ? "" : " " + below);
    this.read = new FutureTask<>(() -> BuildIndex.read(folder, INDEX, settings, force));
    // The index is read while the documents are looked for.
    Thread reader = new Thread(read, "index");
    reader.setDaemon(true);
    reader.start();
  }

  /** Weaves what is not as it was last time, on all cores; outcomes in the order given. */
  List<Outcome> run(List<Document> documents, Progress progress) {
    for (Document document : documents) {
      if (document.isMarkdown()) {
        pages.add(document.name());
      }
    }
    refuseClashes(documents);
    BuildIndex index = index();
    List<Document> made =
        AllCores.without(documents, d -> isFresh(d, index), progress, "what has changed");
    // By identity: the hash of a record is made by code that is spun at run time.
    Map<Document, Outcome> outcomes = new IdentityHashMap<>();
    if (!made.isEmpty()) {
      OutputFiles.makeFolder(folder);
      AllCores.map(made, d -> make(d, index), progress, d -> d.path().toString())
          .forEach(outcome -> outcomes.put(outcome.document(), outcome));
    }
    Set<String> kept = new HashSet<>();
    List<Outcome> all = new ArrayList<>();
    for (Document document : documents) {
      Outcome outcome = outcomes.get(document);
      all.add(outcome == null ? fresh(document, index) : outcome);
      kept.add(target(document));
    }
    index.finish(kept);
    return all;
  }

  private Outcome fresh(Document document, BuildIndex index) {
    BuildIndex.Unit known = index.unit(target(document));
    return new Outcome(document, State.FRESH, List.of(), known == null ? List.of() : known.said());
  }

  private BuildIndex index() {
    try {
      return read.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw Failure.outside("broken off");
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  private boolean isFresh(Document document, BuildIndex index) {
    String target = target(document);
    BuildIndex.Unit known = index.unit(target);
    return known != null && answersHold(document, known) && index.isFresh(target);
  }

  /** The name of a document's outcome in the output folder. */
  String target(Document document) {
    return document.isMarkdown() && to == To.HTML
        ? Style.pageName(document.name())
        : document.name();
  }

  private void refuseClashes(List<Document> documents) {
    Map<String, Document> taken = new HashMap<>();
    for (Document document : documents) {
      String target = target(document).toLowerCase(Locale.ROOT);
      Document before = taken.put(target, document);
      if (before != null) {
        throw Failure.outside(
            before.path()
                + " and "
                + document.path()
                + " would both be written to "
                + folder.resolve(target(document))
                + "; nothing is written: rename one of them");
      }
    }
  }

  private Outcome make(Document document, BuildIndex index) {
    String target = target(document);
    long seen = System.currentTimeMillis();
    byte[] content;
    try {
      content = Files.readAllBytes(document.path());
    } catch (IOException e) {
      throw Failure.outside(document.path() + " cannot be read: " + SourceReader.reason(e));
    }
    Map<Path, Fingerprint> sources = new LinkedHashMap<>();
    sources.put(document.path(), Fingerprint.of(document.path(), content));
    Map<String, String> questions = new LinkedHashMap<>();
    Map<String, byte[]> outputs = new LinkedHashMap<>();
    List<Problem> problems = List.of();
    if (document.isMarkdown()) {
      PageLessons found = new PageLessons(below == null ? document.root() : below, lessons);
      Style style =
          new Style(
              document.up() + pictures + "/",
              false,
              link -> {
                boolean page = isPage(document, link);
                questions.put(link, Boolean.toString(page));
                return page;
              });
      String text = text(content);
      if (text == null) {
        return Outcome.made(document, State.FAILED, List.of(notUtf8(document)));
      }
      Woven woven =
          to == To.HTML
              ? Weaver.html(document.path(), text, found, style)
              : Weaver.markdown(document.path(), text, found, style);
      problems = woven.problems();
      if (woven.hasErrors() && !keepGoing) {
        return Outcome.made(document, State.FAILED, problems);
      }
      sources.putAll(found.asked());
      for (Woven.Shown shown : woven.files()) {
        outputs.put(pictures + "/" + shown.name(), shown.bytes());
      }
      outputs.put(target, woven.text().getBytes(StandardCharsets.UTF_8));
    } else {
      outputs.put(target, content);
    }
    Outcome outcome = Outcome.made(document, State.DONE, problems);
    if (!problems.isEmpty()) {
      questions.put(WHERE, document.path().toString());
    }
    // What an error lacks may come from anywhere: such a document is made anew each time.
    boolean whole = !Lists.any(problems, Problem::isError);
    write(index, target, seen, whole ? sources : withNothing(sources), questions, outputs, outcome);
    return outcome;
  }

  private void write(
      BuildIndex index,
      String unit,
      long seen,
      Map<Path, Fingerprint> sources,
      Map<String, String> questions,
      Map<String, byte[]> outputs,
      Outcome outcome) {
    index.supersede(unit);
    Map<String, Fingerprint> written = new LinkedHashMap<>();
    outputs.forEach(
        (name, bytes) -> {
          Path file = SafeFolder.file(folder, name);
          OutputFiles.write(file, bytes);
          written.put(name, Fingerprint.of(file, bytes));
        });
    index.add(unit, new BuildIndex.Unit(seen, sources, written, questions, outcome.said()));
  }

  /** Sources that are never as they were. */
  private static Map<Path, Fingerprint> withNothing(Map<Path, Fingerprint> sources) {
    Map<Path, Fingerprint> never = new LinkedHashMap<>();
    sources.forEach((path, print) -> never.put(path, new Fingerprint(Long.MAX_VALUE, 0, "")));
    return never;
  }

  private boolean answersHold(Document document, BuildIndex.Unit known) {
    for (Map.Entry<String, String> question : known.questions().entrySet()) {
      String asked = question.getKey();
      String answer =
          asked.equals(WHERE)
              ? document.path().toString()
              : Boolean.toString(isPage(document, asked));
      if (!question.getValue().equals(answer)) {
        return false;
      }
    }
    return true;
  }

  /** True if a link in a document leads to another that becomes a page. */
  private boolean isPage(Document from, String link) {
    List<String> parts = new ArrayList<>(List.of(from.name().split("/", -1)));
    parts.remove(parts.size() - 1);
    for (String part : link.split("/", -1)) {
      if (part.equals("..")) {
        if (parts.isEmpty()) {
          return false;
        }
        parts.remove(parts.size() - 1);
      } else if (!part.equals(".")) {
        parts.add(part);
      }
    }
    return pages.contains(String.join("/", parts));
  }

  /** The text of a file; null if it is not UTF-8. */
  static @Nullable String text(byte[] content) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(content)).toString();
    } catch (CharacterCodingException e) {
      return null;
    }
  }

  static Problem notUtf8(Document document) {
    return Problem.error(
        document.path(),
        0,
        0,
        "this document is not UTF-8",
        "Save it again with the encoding UTF-8.");
  }
}
