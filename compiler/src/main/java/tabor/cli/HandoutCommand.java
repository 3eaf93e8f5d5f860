package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.build.BuildOptions;
import tabor.build.DrawnSize;
import tabor.build.PlayerLesson;
import tabor.emit.font.OpenFont;
import tabor.emit.pdf.Handout;
import tabor.emit.pdf.HandoutBook;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.pdf.HandoutMaker;
import tabor.emit.pdf.PdfWriter;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.groove.Section;
import tabor.source.DisplayWidth;
import tabor.source.VisibleText;

/** {@code tabor handout}: the printed page. */
@Command(
    name = "handout",
    description = "Prints a lesson as a PDF handout: every step with its notes, ready to give out.",
    footer = {
      "",
      "Several lessons become one document with a table of contents and one key.",
      "With --for, every player gets one, and a table of the files is printed."
    })
final class HandoutCommand extends LessonCommand {
  @Parameters(
      index = "1..*",
      arity = "0..*",
      paramLabel = "FILE",
      description = "More lessons for the same document.")
  private List<String> more = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|DIR",
      description = "Where it goes; a folder takes it by the lesson's name (default: here).")
  private @Nullable String output;

  @Option(
      names = "--cover",
      paramLabel = "TEXT",
      description = "The title of a document of lessons, on a first page with its contents.")
  private String cover = "";

  @Option(
      names = "--only",
      paramLabel = "SECTION",
      split = ",",
      description = "Only these grooves, steps, sheets or charts, with commas between.")
  private List<String> only = List.of();

  @Mixin private PageOptions page = new PageOptions();

  HandoutCommand(Io io) {
    super(io);
  }

  /** One document. */
  private static final class Document {
    final @Nullable Player player;
    final Lesson compiled;
    final List<Lesson> lessons = new ArrayList<>();

    Document(@Nullable Player player, Lesson compiled) {
      this.player = player;
      this.compiled = compiled;
    }
  }

  @Override
  int run() {
    HandoutLook look = page.look();
    boolean book = !more.isEmpty() || !cover.isBlank();
    if (forSeveral() && output != null && !Files.isDirectory(SourceFiles.path(output))) {
      throw Failure.usage("-o takes a folder that is there for several players, not " + output);
    }
    List<String> files = new ArrayList<>(List.of(file()));
    files.addAll(more);
    Map<String, Document> documents = documents(files);
    List<String[]> table = new ArrayList<>();
    for (Document document : documents.values()) {
      HandoutLook own = look(document, look);
      Handout handout =
          book
              ? HandoutBook.make(document.lessons, cover, own, OpenFont.get())
              : HandoutMaker.make(document.lessons.get(0), own, OpenFont.get());
      Path target = target(name(document, book));
      OutputFiles.write(target, PdfWriter.write(handout));
      int pages = handout.sheets().size();
      table.add(
          new String[] {
            document.player == null ? "" : document.player.caption(),
            target.toString(),
            pages == 1 ? "1 page" : pages + " pages"
          });
    }
    print(table);
    return exitCode();
  }

  private Map<String, Document> documents(List<String> files) {
    Set<String> known = new TreeSet<>();
    Map<String, Document> documents = new LinkedHashMap<>();
    for (String file : files) {
      for (Student student : students(file)) {
        Lesson lesson = student.lesson();
        if (lesson == null) {
          continue;
        }
        if (lesson.sections().isEmpty()) {
          throw Failure.outside(file + " has no groove, step or chart to print");
        }
        lesson.sections().forEach(section -> known.add(section.name()));
        lesson.grooves().forEach(groove -> known.add(groove.name()));
        List<Section> wanted =
            new BuildOptions(new HashSet<>(only), true).in(lesson).sections(lesson);
        if (!wanted.isEmpty()) {
          DrawnSize.ON_PAGES
              .refusal(lesson, new BuildOptions(new HashSet<>(only), true))
              .ifPresent(
                  why -> {
                    throw Failure.outside(file + ": " + why + DrawnSize.WAY_OUT);
                  });
          Player player = student.player();
          documents
              .computeIfAbsent(
                  player == null ? "" : player.name(),
                  name -> new Document(player, student.compiled().lesson()))
              .lessons
              .add(lesson.only(wanted));
        }
      }
    }
    for (String name : only) {
      if (!known.contains(name)) {
        throw Failure.usage(
            "there is no section " + name + "; to choose from: " + String.join(", ", known));
      }
    }
    return documents;
  }

  private HandoutLook look(Document document, HandoutLook asked) {
    Player player = document.player;
    HandoutLook look = asked.withNote(player().note(player));
    return player == null
        ? look
        : look.withReader(PlayerLesson.reader(document.compiled, player, look.reader()));
  }

  private static String name(Document document, boolean book) {
    Player player = document.player;
    String of = player == null ? "" : "." + player.name();
    return book ? "handout" + of + ".pdf" : document.lessons.get(0).file() + ".pdf";
  }

  /** The files; with players, whose each is and how long. */
  private void print(List<String[]> table) {
    int names = table.stream().mapToInt(row -> DisplayWidth.of(row[0])).max().orElse(0);
    int files = table.stream().mapToInt(row -> DisplayWidth.of(row[1])).max().orElse(0);
    for (String[] row : table) {
      String line = VisibleText.line(row[1]);
      io().out()
          .print(
              names == 0
                  ? line + "\n"
                  : DisplayWidth.padded(VisibleText.line(row[0]), names)
                      + "  "
                      + DisplayWidth.padded(line, files)
                      + "  "
                      + row[2]
                      + "\n");
    }
  }

  private Path target(String name) {
    if (output == null) {
      return Path.of(name);
    }
    Path wanted = SourceFiles.path(output);
    if (Files.isDirectory(wanted)) {
      return wanted.resolve(name);
    }
    Path folder = wanted.toAbsolutePath().getParent();
    if (folder != null) {
      OutputFiles.makeFolder(folder);
    }
    return wanted;
  }
}
