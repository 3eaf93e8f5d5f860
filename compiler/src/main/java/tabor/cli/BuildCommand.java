package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.PlayerLesson;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.png.PngWriter.Ground;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.report.Version;

/** {@code tabor build}: the words of its command line. */
@Command(
    name = "build",
    description = "Writes the outputs of lessons: sound, pages, notation for other programs.",
    footer = {
      "",
      "Files are named after the lesson and, where there is one for each, the section:",
      "lesson.txt, lesson.beat.mid. A file whose content has not changed is left alone.",
      "Nothing is written for a lesson with errors."
    })
final class BuildCommand implements Callable<Integer> {
  /** What a lesson becomes if nothing is said. */
  private static final String USUAL = "midi,grid,pdf,html";

  private final Io io;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE|FOLDER",
      description = "What to build; - is standard input.")
  private List<String> words = List.of();

  @Option(
      names = {"-o", "--out"},
      required = true,
      paramLabel = "DIR",
      description = "The folder to write into; made if it is not there.")
  private String folder = "";

  @Option(
      names = "--as",
      paramLabel = "FORMS",
      split = ",",
      description =
          "Which outputs, with commas between: ${COMPLETION-CANDIDATES}, or all (of"
              + " these but wav, whose files are large); if not given, ${DEFAULT-VALUE}: the sound,"
              + " the counted grid, the printed page and the practice page.",
      completionCandidates = FormWords.class,
      defaultValue = USUAL)
  private List<String> forms = List.of();

  @Option(
      names = "--only",
      paramLabel = "SECTION",
      split = ",",
      description = "Only these grooves, steps or charts, with commas between.")
  private List<String> only = List.of();

  @Option(names = "--no-count-in", description = "No clicks before grooves and steps.")
  private boolean noCountIn;

  @Option(
      names = "--transparent",
      description = "Pictures (png) on a transparent ground instead of a white one.")
  private boolean clear;

  @Option(
      names = "--systems",
      description = "Drawings (svg) of each line of music instead of one of each section.")
  private boolean systems;

  @Option(
      names = "--shard",
      paramLabel = "K/N",
      description = "Only the K-th of N parts of the lessons, the same parts each time: 2/8.")
  private @Nullable String shard;

  @Option(
      names = "--deps",
      paramLabel = "FILE",
      description = "Write what depends on what into FILE, as rules for make.")
  private @Nullable String deps;

  @Option(names = "--force", description = "Make everything, also what has not changed.")
  private boolean force;

  @Mixin private PageOptions page = new PageOptions();

  @Mixin private PlayerOptions player = new PlayerOptions();

  BuildCommand(Io io) {
    this.io = io;
  }

  /**
   * Builds with all as it is where nothing is said; returns the exit code.
   *
   * @param as the forms with commas between; null for the usual ones
   */
  static int plain(Io io, List<String> words, String folder, @Nullable String as) {
    BuildCommand command = new BuildCommand(io);
    command.words = words;
    command.folder = folder;
    command.forms = List.of((as == null ? USUAL : as).split(",", 0));
    return command.call();
  }

  /** The words of {@code --as}, for help and completion. */
  static final class FormWords extends ArrayList<String> {
    private static final long serialVersionUID = 1L;

    FormWords() {
      super(Arrays.stream(Form.values()).map(Form::word).toList());
    }
  }

  @Override
  public Integer call() {
    Path into = SourceFiles.path(folder);
    BuildOptions wanted =
        new BuildOptions(
            new HashSet<>(only),
            !noCountIn,
            page.look().withNote(player.note()),
            clear ? Ground.CLEAR : Ground.WHITE,
            systems);
    List<Form> made = forms();
    List<Path> sources = Shard.of(shard).of(SourceFiles.find(words));
    // A single lesson for nobody in particular is made sooner than looked up.
    boolean noted = sources.size() > 1 || !player.students().isEmpty();
    String dependencies = deps;
    Build.Extent extent =
        new Build.Extent(
            noted ? settings(made, wanted) : "",
            force,
            dependencies == null ? null : SourceFiles.path(dependencies));
    Toolchain toolchain = new Toolchain(io, player.options());
    return new Build(
            io,
            into,
            made,
            wanted,
            source -> toolchain.studentsOfOne(source, player.students()),
            student -> own(wanted, student),
            extent)
        .run(sources);
  }

  /** What is asked for of the outputs of a student. */
  private BuildOptions own(BuildOptions wanted, Student student) {
    Player who = student.player();
    if (who == null) {
      return wanted;
    }
    HandoutLook look = wanted.handout().withNote(player.note(who));
    Lesson lesson = student.compiled().lesson();
    return wanted.withHandout(look.withReader(PlayerLesson.reader(lesson, who, look.reader())));
  }

  /** Everything but the lessons that outputs depend on, the same for the same command line. */
  private String settings(List<Form> made, BuildOptions wanted) {
    return String.join(
        " ",
        Version.TEXT,
        made.toString(),
        new TreeSet<>(only).toString(),
        Boolean.toString(wanted.countIn()),
        page.settings(),
        wanted.ground().toString(),
        Boolean.toString(systems),
        player.settings(),
        player.students().toString());
  }

  private List<Form> forms() {
    List<Form> found = new ArrayList<>();
    for (String word : forms) {
      if (word.equals("all")) {
        return Arrays.stream(Form.values()).filter(Form::isUsual).toList();
      }
      Form form =
          Form.of(word)
              .orElseThrow(
                  () ->
                      Failure.usage(
                          "--as takes "
                              + Arrays.stream(Form.values())
                                  .map(Form::word)
                                  .collect(Collectors.joining(", "))
                              + " or all, not "
                              + word));
      if (!found.contains(form)) {
        found.add(form);
      }
    }
    return found;
  }
}
