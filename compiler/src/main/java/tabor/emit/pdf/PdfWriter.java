package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import tabor.cores.SpareCores;
import tabor.lists.Lists;

/**
 * Writes a handout as PDF: real text in an embedded subset of the text font, filled paths, an
 * outline, title and language. The same handout gives the same bytes: no date is written and the
 * document's identifier follows from its title and outline.
 */
public final class PdfWriter {
  private PdfWriter() {}

  /** The bytes of a PDF file. */
  public static byte[] write(Handout handout) {
    try (PDDocument document = new PDDocument();
        EmbeddedFonts fonts =
            new EmbeddedFonts(document, Lists.map(handout.sheets(), Handout.Sheet::marks))) {
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
          SpareCores.map(
              handout.sheets(), sheet -> PageContent.of(fonts.byFace(), height, sheet.marks()))) {
        PDPage page = new PDPage(paper);
        document.addPage(page);
        content.on(document, page, forms);
      }
      fonts.subset();
      outline(document, handout);
      document.setDocumentId(identity(handout));
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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
