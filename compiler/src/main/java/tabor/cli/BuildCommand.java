package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.emit.png.PngWriter.Ground;

/** {@code tabor build}: the words of its command line. */
@Command(
    name = "build",
    description = "Writes the outputs of lessons: sound, pages, notation for other programs.",
    mixinStandardHelpOptions = true,
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
      names = "--clear",
      description = "Pictures (png) on a clear ground instead of a white one.")
  private boolean clear;

  @Option(
      names = "--systems",
      description = "Drawings (svg) of each line of music instead of one of each section.")
  private boolean systems;

  @Mixin private PageOptions page = new PageOptions();

  @Mixin private PlayerOptions player = new PlayerOptions();

  BuildCommand(Io io) {
    this.io = io;
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
            page.look(),
            clear ? Ground.CLEAR : Ground.WHITE,
            systems);
    return Build.run(io, words, into, forms(), wanted, player);
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
