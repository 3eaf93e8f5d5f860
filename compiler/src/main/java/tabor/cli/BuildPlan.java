package tabor.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.build.Output;
import tabor.source.VisibleText;

/**
 * What one source becomes.
 *
 * @param source as it was named
 * @param sections the names of its sections
 * @param parts one for each student; one for nobody in particular if none was named
 * @param sources what they are made of, with what these were like
 * @param settled false if it may not be what was read: it was saved at the same time
 * @param whole false if a student gets nothing
 * @param said what there is to say of it, as it is printed; empty for nothing
 */
record BuildPlan(
    Path source,
    List<String> sections,
    List<Part> parts,
    Map<Path, Fingerprint> sources,
    boolean settled,
    boolean whole,
    String said) {
  /** Copies the lists. */
  BuildPlan {
    sections = List.copyOf(sections);
    parts = List.copyOf(parts);
  }

  /** The same, with what there is to say of it. */
  BuildPlan saying(String words) {
    return new BuildPlan(source, sections, parts, sources, settled, whole, words);
  }

  /**
   * What one student gets.
   *
   * @param source as it was named
   * @param player the student's name; empty for nobody in particular
   * @param files the names of the files, in order
   * @param outputs makes them; null if they are there already
   */
  record Part(Path source, String player, List<String> files, @Nullable List<Output> outputs) {
    /** Copies the list. */
    Part {
      files = List.copyOf(files);
    }

    /** The source, and for whom. */
    String name() {
      return shown(source) + of(player);
    }
  }

  /** Every file that comes of it. */
  List<String> files() {
    return parts.stream().flatMap(part -> part.files().stream()).toList();
  }

  /** A path as it is printed. */
  static String shown(Path path) {
    return VisibleText.line(path.toString());
  }

  /** For whom, to stand after a path; empty for nobody in particular. */
  static String of(String player) {
    return player.isEmpty() ? "" : " for " + VisibleText.line(player);
  }
}
