package tabor.merge;

import java.util.List;

/**
 * What a merge came to.
 *
 * @param text the merged text; conflicts stand in it between markers
 * @param conflicts where the two sides do not fit, each in a sentence; empty for a clean merge
 * @param marked how many of them stand in the text between markers
 * @param notes what else was done so that the music stays, each in a sentence
 */
public record Merged(String text, List<String> conflicts, int marked, List<String> notes) {
  /** Copies the lists. */
  public Merged {
    conflicts = List.copyOf(conflicts);
    notes = List.copyOf(notes);
  }
}
