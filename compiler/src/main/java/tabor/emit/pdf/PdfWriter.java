package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import tabor.cores.SpareCores;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Mark;
import tabor.emit.font.OpenFont;

/**
 * Writes a handout as PDF: real text in an embedded subset of the text font, filled paths, an
 * outline, title and language. The same handout gives the same bytes: no date is written and the
 * document's identifier follows from its title and outline.
 */
public final class PdfWriter {
  private PdfWriter() {}

  /** The bytes of a PDF file. */
  public static byte[] write(Handout handout) {
    try (PDDocument document = new PDDocument()) {
      Map<Face, PDFont> fonts =
          fonts(document, handout.sheets().stream().map(Handout.Sheet::marks).toList());
      document.setVersion(1.7f);
      document.getDocumentInformation().setTitle(handout.title());
      if (!handout.by().isEmpty()) {
        document.getDocumentInformation().setAuthor(handout.by());
      }
      document.getDocumentCatalog().setLanguage(handout.language().word());
      PDViewerPreferences preferences =
          new PDViewerPreferences(document.getDocumentCatalog().getCOSObject());
      preferences.setDisplayDocTitle(true);
      document.getDocumentCatalog().setViewerPreferences(preferences);
      PDRectangle paper =
          new PDRectangle((float) handout.paper().width(), (float) handout.paper().height());
      double height = paper.getHeight();
      SignForms forms = new SignForms(document);
      for (PageContent content :
          SpareCores.map(handout.sheets(), sheet -> PageContent.of(fonts, height, sheet.marks()))) {
        PDPage page = new PDPage(paper);
        document.addPage(page);
        content.on(document, page, forms);
      }
      for (PDFont font : fonts.values()) {
        font.subset();
      }
      outline(document, handout);
      document.setDocumentId(identity(handout));
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The cuts that some sheets use. */
  static Map<Face, PDFont> fonts(PDDocument document, List<List<Mark>> sheets) throws IOException {
    Set<Face> used = EnumSet.noneOf(Face.class);
    sheets.forEach(marks -> faces(marks, used));
    Map<Face, PDFont> fonts = new EnumMap<>(Face.class);
    for (Face face : used) {
      try (InputStream in = OpenFont.stream(face)) {
        fonts.put(face, PDType0Font.load(document, in, true));
      }
    }
    return fonts;
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

  /** A number that follows from title, outline and length. */
  private static long identity(Handout handout) {
    long identity = handout.title().hashCode() * 31L + handout.sheets().size();
    for (Handout.Bookmark bookmark : handout.bookmarks()) {
      identity = identity * 31 + bookmark.title().hashCode();
    }
    return identity;
  }

  private static void outline(PDDocument document, Handout handout) {
    PDDocumentOutline outline = new PDDocumentOutline();
    for (Handout.Bookmark bookmark : handout.bookmarks()) {
      PDPageXYZDestination place = new PDPageXYZDestination();
      place.setPage(document.getPage(bookmark.sheet()));
      place.setTop((int) Math.round(handout.paper().height() - bookmark.y()) + 6);
      PDOutlineItem item = new PDOutlineItem();
      item.setTitle(bookmark.title());
      item.setDestination(place);
      outline.addLast(item);
    }
    if (!handout.bookmarks().isEmpty()) {
      document.getDocumentCatalog().setDocumentOutline(outline);
    }
  }
}
