package tabor.emit.pdf;

import java.io.IOException;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Mark;
import tabor.emit.font.SpareFonts;

/** The cuts of the text face that a document uses; closed when the document is written. */
final class EmbeddedFonts implements AutoCloseable {
  private final Map<Face, TrueTypeFont> taken = new EnumMap<>(Face.class);
  private final Map<Face, PDFont> fonts = new EnumMap<>(Face.class);

  /** The cuts that some sheets use. */
  EmbeddedFonts(PDDocument document, List<List<Mark>> sheets) throws IOException {
    Set<Face> used = EnumSet.noneOf(Face.class);
    sheets.forEach(marks -> faces(marks, used));
    for (Face face : used) {
      TrueTypeFont font = SpareFonts.take(face);
      taken.put(face, font);
      fonts.put(face, PDType0Font.load(document, font, true));
    }
  }

  private static void faces(List<Mark> marks, Set<Face> used) {
    for (Mark mark : marks) {
      if (mark instanceof Mark.Words words && !words.text().isBlank()) {
        used.add(words.face());
      } else if (mark instanceof Mark.Group group) {
        faces(group.marks(), used);
      }
    }
  }

  Map<Face, PDFont> byFace() {
    return fonts;
  }

  /** Leaves of each cut what is used; called when all pages are there. */
  void subset() throws IOException {
    for (PDFont font : fonts.values()) {
      font.subset();
    }
  }

  @Override
  public void close() {
    taken.forEach(SpareFonts::giveBack);
  }
}
