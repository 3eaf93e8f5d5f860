package tabor.cli;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.jspecify.annotations.Nullable;

/**
 * What an output folder was made of, so that a second run does only what has changed. Kept in a
 * file in that folder, one tab-separated line for each fact; a unit's lines end with {@code end},
 * and are added as soon as it is finished, so that a run that was broken off goes on where it
 * stopped. Losing the file costs time and nothing else. Safe for several threads.
 */
final class BuildIndex {
  private static final String VERSION = "tabor-index 1";

  private final Path folder;
  private final Path file;
  private final String settings;
  private final boolean stale;
  private final ConcurrentMap<String, Unit> units = new ConcurrentHashMap<>();

  /** What units that are made anew wrote last time. */
  private final Map<String, Fingerprint> old = new LinkedHashMap<>();

  private boolean opened;

  /** True if the file ends within a line: the run that wrote it was broken off. */
  private boolean torn;

  /** Units of the file that later ones of it have replaced. */
  private int superseded;

  /**
   * One thing that is made.
   *
   * @param seenMillis when its sources were read
   * @param sources what it was made of
   * @param outputs what was written, by names within the folder
   * @param questions what else was asked, with the answers
   * @param said what there was to say of it, as it was printed
   */
  record Unit(
      long seenMillis,
      Map<Path, Fingerprint> sources,
      Map<String, Fingerprint> outputs,
      Map<String, String> questions,
      List<String> said) {
    Unit {
      // In the order given, so that the file is the same in every run.
      sources = Collections.unmodifiableMap(new LinkedHashMap<>(sources));
      outputs = Collections.unmodifiableMap(new LinkedHashMap<>(outputs));
      questions = Collections.unmodifiableMap(new LinkedHashMap<>(questions));
      said = List.copyOf(said);
    }
  }

  private BuildIndex(Path folder, String name, String settings, boolean stale) {
    this.stale = stale;
    this.folder = folder.toAbsolutePath().normalize();
    this.file = this.folder.resolve(name);
    this.settings = settings;
  }

  /**
   * Reads the index of a folder; whatever cannot be read counts as not made.
   *
   * @param name the index's file name
   * @param settings everything else that outputs depend on: other settings, nothing is known
   * @param stale true to take nothing for fresh
   */
  static BuildIndex read(Path folder, String name, String settings, boolean stale) {
    BuildIndex index = new BuildIndex(folder, name, settings.replaceAll("[\t\r\n]", " "), stale);
    try {
      if (Files.isRegularFile(index.file)) {
        index.parse(Files.readString(index.file));
      }
    } catch (IOException | RuntimeException broken) {
      index.units.clear();
    }
    return index;
  }

  private void parse(String text) {
    // Cut by hand: most runs find everything as it was, and reading this is then a good part of
    // their time.
    String head = VERSION + "\t" + settings + "\n";
    if (!text.startsWith(head)) {
      return;
    }
    opened = true;
    torn = !text.endsWith("\n");
    String name = "";
    long seen = 0;
    Map<Path, Fingerprint> sources = new LinkedHashMap<>();
    Map<String, Fingerprint> outputs = new LinkedHashMap<>();
    Map<String, String> questions = new LinkedHashMap<>();
    List<String> said = new ArrayList<>();
    Map<String, Path> folders = new HashMap<>();
    List<String> words = new ArrayList<>();
    for (int at = head.length(), end; (end = text.indexOf('\n', at)) >= 0; at = end + 1) {
      cut(text, at, end, words);
      String kind = words.get(0);
      if (kind.equals("unit") && words.size() == 3) {
        name = words.get(1);
        seen = Long.parseLong(words.get(2));
        sources.clear();
        outputs.clear();
        questions.clear();
        said.clear();
      } else if (kind.equals("from") && words.size() == 5) {
        sources.put(source(words.get(1), folders), fingerprint(words));
      } else if (kind.equals("to") && words.size() == 5) {
        outputs.put(words.get(1), fingerprint(words));
      } else if (kind.equals("asked") && words.size() == 3) {
        questions.put(words.get(1), words.get(2));
      } else if (kind.equals("said") && words.size() == 2) {
        said.add(words.get(1).translateEscapes());
      } else if (kind.equals("end") && !name.isEmpty()) {
        Unit unit = new Unit(seen, sources, outputs, questions, said);
        superseded += units.put(name, unit) == null ? 0 : 1;
        name = "";
      }
    }
  }

  private static void cut(String text, int from, int to, List<String> words) {
    words.clear();
    int at = from;
    for (int tab; (tab = text.indexOf('\t', at)) >= 0 && tab < to; at = tab + 1) {
      words.add(text.substring(at, tab));
    }
    words.add(text.substring(at, to));
  }

  /** A source's whole path; the folders of many are worked out once. */
  private Path source(String name, Map<String, Path> folders) {
    int slash = name.lastIndexOf(File.separatorChar);
    if (slash < 0 || name.endsWith("..")) {
      return folder.resolve(name).normalize();
    }
    String above = name.substring(0, slash + 1);
    Path known = folders.get(above);
    if (known == null) {
      known = folder.resolve(above).normalize();
      folders.put(above, known);
    }
    return known.resolve(name.substring(slash + 1));
  }

  private static Fingerprint fingerprint(List<String> words) {
    return new Fingerprint(
        Long.parseLong(words.get(2)), Long.parseLong(words.get(3)), words.get(4));
  }

  /** What is known of a unit; null for nothing. */
  @Nullable Unit unit(String name) {
    return units.get(name);
  }

  /** True if a unit's sources and outputs are all as they were. */
  boolean isFresh(String name) {
    Unit unit = unit(name);
    if (unit == null || stale) {
      return false;
    }
    for (Map.Entry<Path, Fingerprint> source : unit.sources().entrySet()) {
      if (!source.getValue().stillHolds(source.getKey(), unit.seenMillis())) {
        return false;
      }
    }
    for (Map.Entry<String, Fingerprint> output : unit.outputs().entrySet()) {
      // Outputs are written by us: their time is always that of the run, and tells.
      if (!output.getValue().stillHolds(folder.resolve(output.getKey()), Long.MAX_VALUE)) {
        return false;
      }
    }
    return true;
  }

  /** Notes a finished unit, on disk at once. */
  synchronized void add(String name, Unit unit) {
    superseded += units.put(name, unit) == null ? 0 : 1;
    StringBuilder lines = new StringBuilder();
    if (!opened) {
      lines.append(VERSION).append('\t').append(settings).append('\n');
    }
    if (torn) {
      lines.append('\n');
      torn = false;
    }
    write(name, unit, lines);
    try {
      Files.writeString(
          file,
          lines,
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE,
          opened ? StandardOpenOption.APPEND : StandardOpenOption.TRUNCATE_EXISTING,
          StandardOpenOption.WRITE);
      opened = true;
    } catch (IOException e) {
      throw Failure.outside("cannot write " + file + ": " + SourceReader.reason(e));
    }
  }

  /** Names with a tab or a line end are not kept: such a unit is made anew each time. */
  private void write(String name, Unit unit, StringBuilder lines) {
    List<String> words = new ArrayList<>(List.of(name));
    unit.sources().keySet().forEach(source -> words.add(source.toString()));
    words.addAll(unit.outputs().keySet());
    unit.questions().forEach((asked, answer) -> words.addAll(List.of(asked, answer)));
    for (String word : words) {
      if (word.indexOf('\t') >= 0 || word.indexOf('\r') >= 0 || word.indexOf('\n') >= 0) {
        return;
      }
    }
    lines.append("unit\t").append(name).append('\t').append(unit.seenMillis()).append('\n');
    unit.sources().forEach((path, print) -> line("from", relative(path), print, lines));
    unit.outputs().forEach((path, print) -> line("to", path, print, lines));
    unit.questions()
        .forEach(
            (asked, answer) ->
                lines.append("asked\t").append(asked).append('\t').append(answer).append('\n'));
    unit.said().forEach(said -> lines.append("said\t").append(escaped(said)).append('\n'));
    lines.append("end\n");
  }

  /** On one line, for {@link String#translateEscapes}. */
  private static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace("\t", "\\t")
        .replace("\r", "\\r")
        .replace("\n", "\\n");
  }

  /** As seen from the folder, so that both may be moved together. */
  private String relative(Path path) {
    Path whole = path.toAbsolutePath().normalize();
    return java.util.Objects.equals(whole.getRoot(), folder.getRoot())
        ? folder.relativize(whole).toString()
        : whole.toString();
  }

  private static void line(String kind, String path, Fingerprint print, StringBuilder lines) {
    lines.append(kind).append('\t').append(path).append('\t').append(print.size()).append('\t');
    lines.append(print.stamp()).append('\t').append(print.digest()).append('\n');
  }

  /**
   * Forgets the units that are no longer made and removes what only they wrote, unless somebody has
   * changed it since.
   *
   * @param kept the names of all units that are made
   */
  synchronized void finish(Set<String> kept) {
    Map<String, Fingerprint> before = new LinkedHashMap<>(old);
    boolean dropped = false;
    for (Map.Entry<String, Unit> made : units.entrySet()) {
      if (!kept.contains(made.getKey())) {
        before.putAll(made.getValue().outputs());
        units.remove(made.getKey());
        dropped = true;
      }
    }
    if (!before.isEmpty()) {
      units.values().forEach(unit -> unit.outputs().keySet().forEach(before::remove));
      before.forEach(this::remove);
    }
    if (dropped) {
      rewrite();
    } else {
      tidy();
    }
  }

  /** Says that a unit is made anew: what it wrote last time may be left over. */
  synchronized void supersede(String name) {
    Unit unit = units.remove(name);
    if (unit != null) {
      superseded++;
      old.putAll(unit.outputs());
    }
  }

  private void remove(String output, Fingerprint print) {
    Path path = folder.resolve(output).normalize();
    try {
      if (path.startsWith(folder)
          && !Files.isSymbolicLink(path)
          && print.stillHolds(path, Long.MAX_VALUE)) {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      // It stays: nobody is worse off.
    }
  }

  /**
   * Writes the index anew if much in it was superseded: what is added stands at its end, and all of
   * it is written only now and then.
   */
  synchronized void tidy() {
    if (superseded > units.size() / 10) {
      rewrite();
    }
  }

  private void rewrite() {
    superseded = 0;
    torn = false;
    StringBuilder lines = new StringBuilder(VERSION).append('\t').append(settings).append('\n');
    for (String name : new TreeSet<>(units.keySet())) {
      write(name, java.util.Objects.requireNonNull(units.get(name)), lines);
    }
    OutputFiles.write(file, lines.toString());
  }
}
