package tabor.merge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Merges two texts that come from a third. Sections are matched by name, or by their lines where
 * they were renamed, and the lines inside by what they say about whom. What one side changed is
 * taken over; where both changed one statement otherwise, it stands in the text twice, between
 * markers. Comments and layout come along.
 */
public final class Merger {
  /**
   * How conflicts are marked.
   *
   * @param size how many signs a marker has; 7 is usual
   * @param ours what stands behind the upper marker
   * @param theirs what stands behind the lower one
   */
  public record Markers(int size, String ours, String theirs) {
    /** The usual ones. */
    public static final Markers USUAL = new Markers(7, "ours", "theirs");

    String open() {
      return "<".repeat(size) + " " + ours;
    }

    String middle() {
      return "=".repeat(size);
    }

    String close() {
      return ">".repeat(size) + " " + theirs;
    }
  }

  private static final Trio NONE = new Trio(-1, -1, -1);

  private final Side base;
  private final Side ours;
  private final Side theirs;
  private final MergedText out;
  private final List<String> notes = new ArrayList<>();
  private final List<String> silent = new ArrayList<>();
  private final Set<Trio> written = new HashSet<>();

  /** A text in its pieces. */
  private record Side(String text, List<Piece> pieces) {
    static Side of(String text, KnownRows known) {
      String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
      return new Side(text, Piece.of(bare, known));
    }

    @Nullable Piece piece(int index) {
      return index < 0 ? null : pieces.get(index);
    }

    boolean hasMark() {
      return text.startsWith("\uFEFF");
    }
  }

  private Merger(String base, String ours, String theirs, Markers markers) {
    KnownRows known = new KnownRows();
    this.base = Side.of(base, known);
    this.ours = Side.of(ours, known);
    this.theirs = Side.of(theirs, known);
    this.out = new MergedText(markers, lineEnd(base, ours, theirs));
  }

  /**
   * Merges; never throws, whatever the texts are.
   *
   * @param base the text that both come from
   * @param ours one side; where only order is in question it comes first
   * @param theirs the other side
   */
  public static Merged merge(String base, String ours, String theirs, Markers markers) {
    return new Merger(base, ours, theirs, markers).merge();
  }

  private Merged merge() {
    int[] oursToBase = Matching.pieces(base.pieces(), ours.pieces());
    int[] theirsToBase = Matching.pieces(base.pieces(), theirs.pieces());
    int[] theirsToOurs =
        Matching.newPieces(ours.pieces(), oursToBase, theirs.pieces(), theirsToBase);
    List<Trio> order = Order.of(base.pieces().size(), oursToBase, theirsToBase, theirsToOurs);
    Origins origins = new Origins(base.pieces(), ours.pieces(), theirs.pieces(), order);
    Trio above = NONE;
    for (Trio trio : order) {
      int from = out.rows().size();
      Written how = piece(trio);
      if (how != Written.NOT) {
        written.add(trio);
        if (how == Written.MERGED) {
          keepOrigin(origins, trio, above, from);
        }
        above = origins.isBase(trio) ? trio : above;
      }
    }
    Predicate<Row> comment = Row::isComment;
    out.dropDoubledComments(counts(base, comment), counts(ours, comment), counts(theirs, comment));
    if (out.conflicts().isEmpty()) {
      Predicate<Row> said = row -> row.isStatement() && !row.isHeading();
      silent.addAll(out.miscounted(counts(base, said), counts(ours, said), counts(theirs, said)));
    }
    boolean mark = ours.hasMark() == base.hasMark() ? theirs.hasMark() : ours.hasMark();
    List<String> conflicts = new ArrayList<>(out.conflicts());
    conflicts.addAll(silent);
    return new Merged((mark ? "\uFEFF" : "") + out, conflicts, out.conflicts().size(), notes);
  }

  private static Map<String, Integer> counts(Side side, Predicate<Row> which) {
    List<Row> rows = new ArrayList<>();
    side.pieces().forEach(piece -> rows.addAll(piece.rows()));
    return MergedText.counts(rows, which);
  }

  /** What became of a section. */
  private enum Written {
    NOT,
    MERGED,
    IN_CONFLICT
  }

  /** Writes a section. */
  private Written piece(Trio trio) {
    Piece old = base.piece(trio.base());
    Piece our = ours.piece(trio.ours());
    Piece their = theirs.piece(trio.theirs());
    if (our != null && their != null) {
      if (old == null && !our.says(their)) {
        out.conflict("both sides have a new " + our.words(), our.rows(), their.rows());
        return Written.IN_CONFLICT;
      }
      rows(our, old, their);
      return Written.MERGED;
    }
    Piece left = our != null ? our : their;
    if (left == null) {
      return Written.NOT;
    }
    if (old == null) {
      left.rows().forEach(out::add);
      return Written.MERGED;
    }
    if (left.says(old)) {
      return Written.NOT;
    }
    out.conflict(
        "one side changed " + left.words() + " and the other took it out",
        our == null ? List.of() : our.rows(),
        their == null ? List.of() : their.rows());
    return Written.IN_CONFLICT;
  }

  private void rows(Piece our, @Nullable Piece from, Piece their) {
    Piece old = from == null ? our : from;
    int[] oursToBase = Matching.rows(old.rows(), our.rows());
    int[] theirsToBase = Matching.rows(old.rows(), their.rows());
    int[] theirsToOurs = Matching.newRows(our.rows(), oursToBase, their.rows(), theirsToBase);
    for (Trio trio : Order.of(old.rows().size(), oursToBase, theirsToBase, theirsToOurs)) {
      Row base = row(old, trio.base());
      Row mine = row(our, trio.ours());
      Row other = row(their, trio.theirs());
      RowMerge.Result result = RowMerge.of(base, mine, other);
      if (result.conflict()) {
        Row shown = mine != null ? mine : other;
        out.conflict(
            our.words() + ": both sides changed this line: " + (shown == null ? "" : shown.core()),
            mine == null ? List.of() : List.of(mine),
            other == null ? List.of() : List.of(other));
      } else if (result.row() != null) {
        out.add(result.row());
      }
    }
  }

  private static @Nullable Row row(Piece piece, int index) {
    return index < 0 ? null : piece.rows().get(index);
  }

  /** A step without {@code from} is made from the one above; that must stay the same one. */
  private void keepOrigin(Origins origins, Trio trio, Trio above, int from) {
    Origins.Origin origin = origins.of(trio);
    String why = origin.conflict();
    if (why != null) {
      silent.add(why);
    }
    Trio meant = origin.meant();
    if (meant == null || meant.equals(above)) {
      return;
    }
    String name = origins.name(meant);
    if (name == null || !written.contains(meant)) {
      silent.add(origins.words(trio) + " was made from a section that is not above it any more");
      return;
    }
    if (out.sayFrom(from, name)) {
      notes.add(origins.words(trio) + " now says from " + name + ", as it was made");
    }
  }

  /** The one line end of the merged text; empty where the lines keep their own. */
  private static String lineEnd(String base, String ours, String theirs) {
    String was = lineEnd(base);
    String our = lineEnd(ours);
    String their = lineEnd(theirs);
    if (was.isEmpty() || our.isEmpty() || their.isEmpty()) {
      return "";
    }
    return our.equals(was) ? their : our;
  }

  /** The line end that every line of a text has; empty where they are not alike. */
  private static String lineEnd(String text) {
    String found = "";
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c != '\n' && c != '\r') {
        continue;
      }
      String end = c == '\n' ? "\n" : "\r";
      if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
        end = "\r\n";
        i++;
      }
      if (!found.isEmpty() && !found.equals(end)) {
        return "";
      }
      found = end;
    }
    return found.isEmpty() ? "\n" : found;
  }
}
