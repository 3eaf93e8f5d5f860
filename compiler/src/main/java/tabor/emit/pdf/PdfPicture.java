package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Face;
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
    try (PDDocument document = new PDDocument()) {
      List<Mark> marks = Mark.moved(drawing.marks(), 0, 0, space);
      Map<Face, PDFont> fonts = PdfWriter.fonts(document, List.of(marks));
      document.setVersion(1.7f);
      document.getDocumentInformation().setTitle(drawing.title());
      PDPage page =
          new PDPage(
              new PDRectangle(
                  (float) (drawing.width() * space), (float) (drawing.height() * space)));
      document.addPage(page);
      PageContent.of(fonts, page.getMediaBox().getHeight(), marks)
          .on(document, page, new SignForms(document));
      for (PDFont font : fonts.values()) {
        font.subset();
      }
      document.setDocumentId(drawing.words().hashCode() * 31L + drawing.title().hashCode());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
