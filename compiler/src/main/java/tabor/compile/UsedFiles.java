package tabor.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.lists.Lists;
import tabor.source.Spot;
import tabor.source.VisibleText;

/** Says what keeps a file from using others. */
final class UsedFiles {
  private UsedFiles() {}

  /** What is wrong with the files in use, and with their names beside each other. */
  static List<Diagnostic> problems(List<Compiler.Used> used) {
    List<Diagnostic> problems = new ArrayList<>();
    Map<String, Spot> first = new HashMap<>();
    for (Compiler.Used file : used) {
      Spot spot = file.link().use().spot();
      Result result = file.result();
      if (result == null) {
        problems.add(trouble(file.link().trouble(), spot, quoted(file)));
        continue;
      }
      if (Lists.any(result.diagnostics(), d -> d.code() == Code.USE_CYCLE)) {
        problems.add(cycle(spot, quoted(file) + " leads back to where it began"));
      } else {
        errors(file, result, spot, problems);
      }
      for (String name : names(result)) {
        Spot other = first.putIfAbsent(name, spot);
        if (other != null && !other.equals(spot)) {
          problems.add(
              Diagnostic.of(
                      Code.DUPLICATE_NAME,
                      spot,
                      "the " + name + " is in another file in use as well")
                  .label(other, "the first one is kept")
                  .help("give one of the two another name"));
        }
      }
    }
    return problems;
  }

  private static String quoted(Compiler.Used file) {
    return "“" + file.link().use().name() + "”";
  }

  /**
   * Errors of a file in use: how many it has by itself, and each that only the settings of this
   * file bring about.
   */
  private static void errors(
      Compiler.Used file, Result result, Spot spot, List<Diagnostic> problems) {
    List<Diagnostic> alone = file.alone() == null ? List.of() : file.alone().errors();
    if (!alone.isEmpty()) {
      problems.add(
          Diagnostic.of(
                  Code.UNREADABLE,
                  spot,
                  quoted(file)
                      + " has "
                      + (alone.size() == 1 ? "an error" : alone.size() + " errors"))
              .help(
                  (alone.size() == 1 ? "fix it" : "fix them")
                      + " there first: tabor check "
                      + VisibleText.shellWord(file.link().use().name())));
      return;
    }
    record Told(Code code, Spot spot) {}
    Set<Told> told = new HashSet<>();
    for (Diagnostic error : result.errors()) {
      if (told.add(new Told(error.code(), error.spot()))) {
        Diagnostic.Place place = error.place();
        problems.add(
            Diagnostic.of(
                    error.code(),
                    spot,
                    "with the settings of this file, in "
                        + quoted(file)
                        + (place == null ? "" : ", " + place.words())
                        + ": "
                        + error.message())
                .help(error.help()));
      }
    }
  }

  private static List<String> names(Result result) {
    List<String> names = new ArrayList<>();
    result.kits().forEach(name -> names.add("kit “" + name + "”"));
    result.patterns().keySet().forEach(name -> names.add("pattern “" + name + "”"));
    result.grooves().keySet().forEach(name -> names.add("section “" + name + "”"));
    return names;
  }

  private static Diagnostic cycle(Spot spot, String message) {
    return Diagnostic.of(Code.USE_CYCLE, spot, message)
        .help("put what both need into a third file that uses neither");
  }

  private static Diagnostic trouble(Loader.@Nullable Trouble trouble, Spot spot, String name) {
    if (trouble == null) {
      return cycle(spot, "this file and " + name + " use each other");
    }
    return switch (trouble) {
      case OUTSIDE ->
          Diagnostic.of(Code.USE_OUTSIDE, spot, name + " lies outside the folder of this file")
              .help("put it into the folder, or into one below it");
      case TOO_LONG ->
          Diagnostic.of(Code.TOO_LONG, spot, name + " is longer than 4 MiB")
              .help("make several files of it");
      case MISSING ->
          Diagnostic.of(Code.UNREADABLE, spot, "there is no file " + name + " here")
              .help("look at the spelling; the name counts from this file's own folder");
      case UNREADABLE ->
          Diagnostic.of(Code.UNREADABLE, spot, name + " cannot be read as text")
              .help("a source is a text in UTF-8 that you may read");
    };
  }
}
