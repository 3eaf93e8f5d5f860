package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Outline;
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
    try (PDDocument document = new PDDocument();
        InputStream in = OpenFont.stream()) {
      PDFont font = PDType0Font.load(document, in, true);
      document.setVersion(1.7f);
      document.getDocumentInformation().setTitle(handout.title());
      if (!handout.by().isEmpty()) {
        document.getDocumentInformation().setAuthor(handout.by());
      }
      document.getDocumentCatalog().setLanguage("en");
      PDViewerPreferences preferences =
          new PDViewerPreferences(document.getDocumentCatalog().getCOSObject());
      preferences.setDisplayDocTitle(true);
      document.getDocumentCatalog().setViewerPreferences(preferences);
      PDRectangle paper =
          new PDRectangle((float) handout.paper().width(), (float) handout.paper().height());
      Map<Double, PDExtendedGraphicsState> tints = new HashMap<>();
      for (Handout.Sheet sheet : handout.sheets()) {
        PDPage page = new PDPage(paper);
        document.addPage(page);
        try (PDPageContentStream content = new PDPageContentStream(document, page)) {
          new Page(content, font, handout.paper().height(), tints).all(sheet.marks());
        }
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

  /** Draws marks on a page, turning y upwards. */
  private record Page(
      PDPageContentStream content,
      PDFont font,
      double height,
      Map<Double, PDExtendedGraphicsState> tints)
      implements Mark.Cases<Boolean> {
    void all(List<Mark> marks) {
      for (Mark mark : marks) {
        mark.match(this);
      }
    }

    @Override
    public Boolean ink(Mark.Ink ink) {
      try {
        if (ink.strength() < 1) {
          content.saveGraphicsState();
          content.setGraphicsStateParameters(tint(ink.strength()));
        }
        ink.outline().draw(new Tracer(content, height));
        content.fill();
        if (ink.strength() < 1) {
          content.restoreGraphicsState();
        }
        return true;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private PDExtendedGraphicsState tint(double strength) {
      return tints.computeIfAbsent(
          strength,
          s -> {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setNonStrokingAlphaConstant(s.floatValue());
            return state;
          });
    }

    @Override
    public Boolean words(Mark.Words words) {
      if (words.text().isBlank()) {
        return false;
      }
      try {
        content.beginText();
        content.setFont(font, (float) words.size());
        content.newLineAtOffset((float) words.left(), (float) (height - words.y()));
        content.showText(words.text());
        content.endText();
        return true;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public Boolean group(Mark.Group group) {
      all(group.marks());
      return true;
    }
  }

  private record Tracer(PDPageContentStream content, double height) implements Outline.Pen {
    @Override
    public void move(double x, double y) {
      try {
        content.moveTo((float) x, (float) (height - y));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void line(double x, double y) {
      try {
        content.lineTo((float) x, (float) (height - y));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      try {
        content.curveTo(
            (float) x1,
            (float) (height - y1),
            (float) x2,
            (float) (height - y2),
            (float) x,
            (float) (height - y));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void close() {
      try {
        content.closePath();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
