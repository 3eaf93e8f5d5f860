package tabor.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import tabor.report.Version;
import tabor.source.VisibleText;

/** The list of commands, and how their words are read. */
final class Commands {
  private Commands() {}

  /** Every command by name, in the order that help shows them. */
  private static final Map<String, Function<Io, Object>> ALL = new LinkedHashMap<>();

  static {
    ALL.put("new", NewCommand::new);
    ALL.put("check", CheckCommand::new);
    ALL.put("build", BuildCommand::new);
    ALL.put("list", ListCommand::new);
    ALL.put("play", PlayCommand::new);
    ALL.put("grid", GridCommand::new);
    ALL.put("handout", HandoutCommand::new);
    ALL.put("weave", WeaveCommand::new);
    ALL.put("watch", WatchCommand::new);
    ALL.put("pandoc", PandocCommand::new);
    ALL.put("format", FormatCommand::new);
    ALL.put("sticking", StickingCommand::new);
    ALL.put("fastest", FastestCommand::new);
    ALL.put("steps", StepsCommand::new);
    ALL.put("find", FindCommand::new);
    ALL.put("overview", OverviewCommand::new);
    ALL.put("diff", DiffCommand::new);
    ALL.put("merge", MergeCommand::new);
    ALL.put("git-setup", GitSetupCommand::new);
    ALL.put("explain", ExplainCommand::new);
    ALL.put("completion", CompletionCommand::new);
  }

  /** What stands above the commands. */
  @Command(
      name = "tabor",
      description = "Turns groove notation for the drum kit into sound, pages and practice.",
      mixinStandardHelpOptions = true,
      version = "Tabor " + Version.TEXT,
      synopsisSubcommandLabel = "COMMAND",
      commandListHeading = "%nCommands:%n",
      footerHeading = "%n",
      footer = {
        "tabor COMMAND --help says more about one of them.",
        "Exit codes: 0 fine, 1 a file has errors or something failed, 2 wrong usage."
      })
  static final class Top {}

  /** Reads the words, runs the command, and returns its exit code. */
  static int run(String[] args, Io io) {
    String first = args.length == 0 ? "" : args[0];
    CommandLine line = line(io, ALL.containsKey(first) ? first : null);
    if (args.length == 0) {
      line.usage(line.getErr());
      return ExitCode.USAGE;
    }
    int code = line.execute(args);
    line.getOut().flush();
    line.getErr().flush();
    return code;
  }

  /** The parser of one command, which is all that most runs need, or of every one. */
  static CommandLine line(Io io, @Nullable String only) {
    CommandLine line = new CommandLine(new Top());
    ALL.forEach(
        (name, make) -> {
          if (only == null || only.equals(name)) {
            line.addSubcommand(name, make.apply(io));
          }
        });
    line.getSubcommands()
        .values()
        .forEach(command -> command.getCommandSpec().mixinStandardHelpOptions(true));
    line.setOut(new PrintWriter(io.out(), false, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(io.err(), false, StandardCharsets.UTF_8));
    line.setColorScheme(CommandLine.Help.defaultColorScheme(io.colourOut() ? Ansi.ON : Ansi.OFF));
    line.setExpandAtFiles(false);
    line.setAbbreviatedOptionsAllowed(false);
    line.setUsageHelpWidth(90);
    line.setParameterExceptionHandler((wrong, words) -> usage(wrong, io));
    line.setExecutionExceptionHandler(
        (failed, command, parsed) -> {
          if (failed instanceof Failure failure) {
            return Main.complain(io, failure);
          }
          return Faults.tell(io, failed);
        });
    return line;
  }

  private static int usage(ParameterException wrong, Io io) {
    io.err().print("tabor: " + VisibleText.line(wrong.getMessage()) + "\n");
    PrintWriter err = wrong.getCommandLine().getErr();
    CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err);
    err.print(wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help says how.\n");
    err.flush();
    return ExitCode.USAGE;
  }
}
