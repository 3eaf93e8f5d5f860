package tabor.weave;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.build.DrawnSize;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.lists.Lists;
import tabor.report.TextReport;
import tabor.resolve.Options;
import tabor.source.LineIndex;
import tabor.source.Passage;
import tabor.source.Span;

/** From the blocks of one document to what they show. Not safe for several threads. */
final class FigureMaker {
  private final Path document;
  private final @Nullable String text;
  private final Lessons lessons;
  private final List<Problem> problems = new ArrayList<>();

  /** Staves in lines of text, by their words: a document says the same ones again and again. */
  private final Map<String, Picture> inlines = new HashMap<>();

  /**
   * For one document.
   *
   * @param text its text, for reports; null where it is not known
   */
  FigureMaker(Path document, @Nullable String text, Lessons lessons) {
    this.document = document;
    this.text = text;
    this.lessons = lessons;
  }

  /** What was noticed so far, in the order of the blocks. */
  List<Problem> problems() {
    return problems;
  }

  /** What a block shows; null if nothing can be made of it, which is then among the problems. */
  @Nullable Figure block(FencedBlock block) {
    return block(block, () -> WishReader.read(block.info()));
  }

  /** The same with the words already read; for documents that are no Markdown. */
  @Nullable Figure block(FencedBlock block, Map<String, String> values) {
    return block(block, () -> WishReader.of(values));
  }

  /** What is asked for, if it can be read. */
  private interface Asked {
    Wish read() throws Trouble;
  }

  private @Nullable Figure block(FencedBlock block, Asked asked) {
    try {
      Wish wish = asked.read();
      String file = wish.file();
      return file == null ? own(block, wish) : other(block, wish, file);
    } catch (Trouble trouble) {
      tell(block.line(), block.column(), trouble);
      return null;
    }
  }

  /** A staff in a line of text; null if nothing can be made of it. */
  @Nullable Picture inline(String words, int line, int column) {
    Picture known = inlines.get(words);
    if (known != null) {
      return known;
    }
    try {
      String source = InlineSource.of(words);
      Compiled compiled =
          new Compiler(lessons.loader(document)).compile(document, source, Options.NONE);
      for (Diagnostic diagnostic : compiled.diagnostics()) {
        if (diagnostic.severity() == Severity.ERROR) {
          throw new Trouble(diagnostic.message(), diagnostic.help());
        }
      }
      Picture made = Picture.inline(compiled.lesson().grooves().get(0), words.strip());
      inlines.put(words, made);
      return made;
    } catch (Trouble trouble) {
      tell(line, column, trouble);
      return null;
    }
  }

  private void tell(int line, int column, Trouble trouble) {
    problems.add(Problem.error(document, line + 1, column + 1, trouble.words(), trouble.help()));
  }

  private @Nullable Figure own(FencedBlock block, Wish wish) throws Trouble {
    if (block.text().isBlank()) {
      throw new Trouble(
          "this block is empty", "Write a groove in it, or name a lesson with file=.");
    }
    Compiler compiler = new Compiler(lessons.loader(document));
    Compiled plain = compiler.compile(document, block.text(), Options.NONE);
    BlockReader reader = BlockReader.of(wish, plain);
    Compiled compiled =
        reader == null ? plain : compiler.compile(document, block.text(), reader.options());
    report(placed(compiled, block));
    return compiled.hasErrors() ? null : figure(wish, compiled, reader);
  }

  private @Nullable Figure other(FencedBlock block, Wish wish, String file) throws Trouble {
    if (!block.text().isBlank()) {
      throw new Trouble(
          "this block names a lesson with file= and has notation of its own",
          "Leave out one of the two.");
    }
    Compiled plain = found(file, Options.NONE);
    BlockReader reader = BlockReader.of(wish, plain);
    Compiled compiled = reader == null ? plain : found(file, reader.options());
    report(compiled);
    if (compiled.hasErrors()) {
      throw new Trouble(file + " has errors, so nothing of it can be shown");
    }
    return figure(wish, compiled, reader);
  }

  private Compiled found(String file, Options options) throws Trouble {
    Lessons.Found found = lessons.find(document, file, options);
    Compiled compiled = found.lesson();
    if (compiled == null) {
      throw new Trouble(file + " " + found.trouble());
    }
    return compiled;
  }

  /** The same as if the document itself had been compiled, so that reports show its lines. */
  private Compiled placed(Compiled compiled, FencedBlock block) {
    FencedBlock.Shown shown = block.in(text);
    Map<Passage, Compiled.Where> places = new IdentityHashMap<>();
    compiled
        .places()
        .forEach(
            (passage, where) ->
                places.put(
                    passage,
                    where.file().equals(document)
                        ? new Compiled.Where(document, where.offset() + shown.offset())
                        : where));
    return new Compiled(
        document,
        shown.text(),
        compiled.lesson(),
        compiled.syntax(),
        compiled.diagnostics(),
        places);
  }

  private void report(Compiled compiled) {
    LineIndex lines = new LineIndex(compiled.text());
    List<Diagnostic> told =
        Lists.filter(compiled.diagnostics(), one -> one.severity() != Severity.HINT);
    List<String> reports = new TextReport(false).each(compiled, false);
    for (int i = 0; i < told.size(); i++) {
      Diagnostic diagnostic = told.get(i);
      Span span = compiled.span(diagnostic.spot());
      Path file = compiled.fileOf(diagnostic.spot());
      boolean here = file == null || file.equals(compiled.file());
      int start = here ? Math.min(span.start(), compiled.text().length()) : 0;
      problems.add(
          Problem.of(
              diagnostic,
              compiled.file(),
              lines.lineOf(start) + 1,
              lines.columnOf(start) + 1,
              reports.get(i)));
    }
  }

  private static Figure figure(Wish wish, Compiled compiled, @Nullable BlockReader reader)
      throws Trouble {
    Lesson lesson = reader == null ? compiled.lesson() : reader.lesson(compiled.lesson());
    List<Section> chosen = chosen(wish, lesson);
    String source =
        wish.sections().isEmpty()
            ? ShownSource.whole(compiled)
            : ShownSource.sections(compiled, chosen);
    Lesson shown = lesson.named(lesson.file(), title(lesson, chosen)).with(chosen);
    Optional<String> tooMuch = DrawnSize.refusalInADocument(shown);
    if (tooMuch.isPresent() && (wish.as() != Wish.As.SOURCE && wish.as() != Wish.As.GRID)) {
      throw new Trouble(
          tooMuch.get(),
          "Name some of its sections with section=, or make several sections of it.");
    }
    if (wish.as() == Wish.As.SVG || wish.as() == Wish.As.BOTH) {
      if (shown.grooves().isEmpty()) {
        throw new Trouble(
            chosen.get(0).name() + " is a chart, which has no staff of its own",
            "Write as=grid or as=player.");
      }
    }
    return new Figure(wish, source, shown);
  }

  private static List<Section> chosen(Wish wish, Lesson lesson) throws Trouble {
    if (lesson.sections().isEmpty()) {
      if (wish.as() == Wish.As.SOURCE && wish.sections().isEmpty()) {
        return List.of();
      }
      throw new Trouble(
          "there is no groove, step or chart here to show", "Write as=source to show the text.");
    }
    if (wish.sections().isEmpty()) {
      return lesson.sections();
    }
    Map<String, Section> named = new LinkedHashMap<>();
    lesson.sections().forEach(section -> named.putIfAbsent(section.name(), section));
    lesson.grooves().forEach(groove -> named.putIfAbsent(groove.name(), groove));
    List<Section> chosen = new ArrayList<>();
    for (String name : wish.sections()) {
      Section section = named.get(name);
      if (section == null) {
        List<String> near = Near.names(name, named.keySet());
        throw new Trouble(
            "there is no section " + name + " here",
            near.isEmpty()
                ? "To choose from: " + String.join(", ", named.keySet())
                : "Did you mean " + near.get(0) + "?");
      }
      chosen.add(section);
    }
    return chosen;
  }

  /** As the lesson calls itself; a text without a title is called after what it shows. */
  private static String title(Lesson lesson, List<Section> chosen) {
    boolean named = !lesson.title().equals(lesson.file());
    return named || chosen.isEmpty() ? lesson.title() : chosen.get(0).caption();
  }
}
