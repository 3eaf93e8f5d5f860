package tabor.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Spot;

/** Says what keeps a file from using others. */
final class UsedFiles {
  private UsedFiles() {}

  /** What is wrong with the files in use, and with their names beside each other. */
  static List<Diagnostic> problems(List<Compiler.Used> used) {
    List<Diagnostic> problems = new ArrayList<>();
    Map<String, Spot> first = new HashMap<>();
    for (Compiler.Used file : used) {
      Spot spot = file.use().spot();
      Result result = file.result();
      if (result == null) {
        problems.add(trouble(file));
        continue;
      }
      if (result.diagnostics().stream().anyMatch(d -> d.code() == Code.USE_CYCLE)) {
        problems.add(cycle(spot, "“" + file.use().file() + "” leads back to where it began"));
      } else if (result.errors() > 0) {
        problems.add(
            Diagnostic.of(
                    Code.UNREADABLE,
                    spot,
                    "“" + file.use().file() + "” has " + errors(result.errors()))
                .help("mend them there first: tabor check " + file.use().file()));
      }
      for (String name : names(result)) {
        Spot other = first.putIfAbsent(name, spot);
        if (other != null && !other.equals(spot)) {
          problems.add(
              Diagnostic.of(
                      Code.DUPLICATE_NAME,
                      spot,
                      "the " + name + " is in an other file in use as well")
                  .label(other, "the first one is kept")
                  .help("give one of the two another name"));
        }
      }
    }
    return problems;
  }

  private static String errors(long count) {
    return count == 1 ? "an error" : count + " errors";
  }

  private static List<String> names(Result result) {
    List<String> names = new ArrayList<>();
    result.kits().keySet().forEach(name -> names.add("kit “" + name + "”"));
    result.patterns().keySet().forEach(name -> names.add("pattern “" + name + "”"));
    result.grooves().keySet().forEach(name -> names.add("section “" + name + "”"));
    return names;
  }

  private static Diagnostic cycle(Spot spot, String message) {
    return Diagnostic.of(Code.USE_CYCLE, spot, message)
        .help("put what both need into a third file that uses neither");
  }

  private static Diagnostic trouble(Compiler.Used file) {
    Spot spot = file.use().spot();
    String name = "“" + file.use().file() + "”";
    return switch (file.problems()) {
      case "CYCLE" -> cycle(spot, "this file and " + name + " use each other");
      case "OUTSIDE" ->
          Diagnostic.of(Code.USE_OUTSIDE, spot, name + " lies outside the folder of this file")
              .help("put it into the folder, or into one below it");
      case "TOO_LONG" ->
          Diagnostic.of(Code.TOO_LONG, spot, name + " is longer than 4 MiB")
              .help("make several files of it");
      case "MISSING" ->
          Diagnostic.of(Code.UNREADABLE, spot, "there is no file " + name + " here")
              .help("look at the spelling; the name counts from this file's own folder");
      default ->
          Diagnostic.of(Code.UNREADABLE, spot, name + " cannot be read as text")
              .help("a source is a text in UTF-8 that you may read");
    };
  }
}
