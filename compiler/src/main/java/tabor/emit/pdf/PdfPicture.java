package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;

/** Writes one drawing as a PDF page of just its size, for documents that are set elsewhere. */
public final class PdfPicture {
  private PdfPicture() {}

  /**
   * The bytes of a PDF file, the same for the same drawing.
   *
   * @param space points a staff space
   */
  public static byte[] write(Drawing drawing, double space) {
    List<Mark> marks = Mark.moved(drawing.marks(), 0, 0, space);
    try (PDDocument document = new PDDocument();
        EmbeddedFonts fonts = new EmbeddedFonts(document, List.of(marks))) {
      document.setVersion(1.7f);
      document.getDocumentInformation().setTitle(drawing.title());
      PDPage page =
          new PDPage(
              new PDRectangle(
                  (float) (drawing.width() * space), (float) (drawing.height() * space)));
      document.addPage(page);
      PageContent.of(fonts.byFace(), page.getMediaBox().getHeight(), marks)
          .on(document, page, new SignForms(document));
      fonts.subset();
      document.setDocumentId(drawing.words().hashCode() * 31L + drawing.title().hashCode());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
