package tabor.emit.pdf;

import java.util.List;
import java.util.function.Function;
import tabor.groove.Caution;
import tabor.groove.Lesson;
import tabor.groove.PageWishes;
import tabor.words.Words;

/**
 * How a handout is printed.
 *
 * @param paper its size
 * @param large true for notes and letters to be read from a music stand a metre away
 * @param clean true for an examiner's copy: no counts, no stickings, no marks or words of change
 * @param caution what stands at the foot of every page; empty for nothing
 * @param note what stands under the title in the language of the page, such as for whom the page
 *     is; empty for nothing
 * @param columns narrow sections side by side at most, 1 to 3; 0 for as many as fit well
 * @param reader whose page it is
 */
public record HandoutLook(
    Paper paper,
    boolean large,
    boolean clean,
    String caution,
    Function<Words, String> note,
    int columns,
    Reader reader) {
  /** Stands for the usual caution, in the language of the page. */
  public static final String CAUTION = Caution.WORDS;

  /** What stands at the foot of every page, in its language. */
  String caution(Words words) {
    return caution.equals(CAUTION) ? Caution.in(words) : caution;
  }

  /** A4, ordinary size, everything shown. */
  public static final HandoutLook PLAIN = new HandoutLook(Paper.A4, false, false, CAUTION);

  /** Throws {@link IllegalArgumentException} for more than three columns. */
  public HandoutLook {
    if (columns < 0 || columns > 3) {
      throw new IllegalArgumentException("columns " + columns);
    }
  }

  /** No note, and sections laid out as looks best. */
  public HandoutLook(Paper paper, boolean large, boolean clean, String caution) {
    this(paper, large, clean, caution, words -> "", 0, Reader.NONE);
  }

  /** The same with a note under the title. */
  public HandoutLook withNote(Function<Words, String> text) {
    return new HandoutLook(paper, large, clean, caution, text, columns, reader);
  }

  /**
   * Whose page it is.
   *
   * @param name stands on the name line; empty for a line to write on
   * @param texts stand at the head of the page
   * @param teacher true for a copy with what the lesson says to the teacher alone
   * @param paperAsked true if the lesson has no say in paper
   */
  public record Reader(String name, List<String> texts, boolean teacher, boolean paperAsked) {
    /** Anybody, on the paper that the lesson asks for. */
    public static final Reader NONE = new Reader("", List.of(), false, false);

    /** Copies the list. */
    public Reader {
      texts = List.copyOf(texts);
    }
  }

  /** The same for a reader. */
  public HandoutLook withReader(Reader other) {
    return new HandoutLook(paper, large, clean, caution, note, columns, other);
  }

  /** The same with what a lesson says of its pages; what was asked for wins. */
  HandoutLook of(Lesson lesson) {
    PageWishes wishes = lesson.extras().wishes();
    Paper wanted =
        reader.paperAsked() || wishes.paper() == null
            ? paper
            : wishes.paper() == PageWishes.Paper.A4 ? Paper.A4 : Paper.LETTER;
    Integer most = wishes.columns();
    return new HandoutLook(
        wanted,
        large || wishes.large(),
        clean,
        caution,
        note,
        columns != 0 || most == null ? columns : most,
        reader);
  }
}
