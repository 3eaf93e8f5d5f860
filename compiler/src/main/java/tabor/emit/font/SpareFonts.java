package tabor.emit.font;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import tabor.emit.engrave.Face;

/**
 * Font files that are read, for documents to embed. Reading one is a fourth of the work of a
 * handout, and none may be used by two documents at once: so a document takes one and gives it
 * back. Safe for several threads.
 */
public final class SpareFonts {
  private static final String FOLDER = "/com/mpobjects/jasperreports/fonts/liberation/";
  private static final Map<Face, Queue<TrueTypeFont>> SPARE = new EnumMap<>(Face.class);

  static {
    for (Face face : Face.values()) {
      SPARE.put(face, new ConcurrentLinkedQueue<>());
    }
  }

  private SpareFonts() {}

  /**
   * A cut that nobody else uses until it is given back; throws {@link UncheckedIOException} if it
   * cannot be read.
   */
  public static TrueTypeFont take(Face face) {
    TrueTypeFont spare = spare(face).poll();
    return spare == null ? read(face) : spare;
  }

  /** Gives back what {@link #take} gave. */
  public static void giveBack(Face face, TrueTypeFont font) {
    spare(face).add(font);
  }

  private static Queue<TrueTypeFont> spare(Face face) {
    return Objects.requireNonNull(SPARE.get(face));
  }

  /** A cut, read anew. */
  static TrueTypeFont read(Face face) {
    String name =
        FOLDER
            + switch (face) {
              case REGULAR -> "LiberationSans-Regular.ttf";
              case BOLD -> "LiberationSans-Bold.ttf";
              case ITALIC -> "LiberationSans-Italic.ttf";
            };
    try (InputStream in =
        Objects.requireNonNull(SpareFonts.class.getResourceAsStream(name), name)) {
      // Whole: parts of a stream are kept in pieces, through which every number is read.
      return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
