package tabor.weave;

import java.util.List;
import tabor.lists.Lists;

/**
 * A document with its pictures.
 *
 * @param text the document
 * @param files what it shows, to be put into its picture folder; each name once
 * @param problems in the order of the blocks
 */
public record Woven(String text, List<Shown> files, List<Problem> problems) {
  /** Copies the lists. */
  public Woven {
    files = List.copyOf(files);
    problems = List.copyOf(problems);
  }

  /**
   * A file that a document shows.
   *
   * @param name without a folder; it follows from the content
   * @param bytes the content
   */
  public record Shown(String name, byte[] bytes) {}

  /** True if something in the document could not be shown. */
  public boolean hasErrors() {
    return Lists.any(problems, Problem::isError);
  }
}
