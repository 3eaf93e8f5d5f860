package tabor.emit.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Sign;

/**
 * The signs of a document, each kept once as a form that pages put where it stands: a page of notes
 * is the same few shapes a thousand times over.
 */
final class SignForms {
  /** Room around a sign, in points: a viewer cuts off what leaves the box of a form. */
  private static final double AROUND = 1;

  private final PDDocument document;
  private final Map<Shape, PDFormXObject> forms = new LinkedHashMap<>();

  /** A sign in a size; its base point is the origin. */
  record Shape(Sign sign, double scale) {}

  SignForms(PDDocument document) {
    this.document = document;
  }

  PDFormXObject form(Shape shape) throws IOException {
    PDFormXObject known = forms.get(shape);
    return known == null ? made(shape) : known;
  }

  private PDFormXObject made(Shape shape) throws IOException {
    PDFormXObject form = new PDFormXObject(document);
    Box box = shape.sign().boxAt(0, 0, shape.scale());
    form.setBBox(
        new PDRectangle(
            (float) (box.left() - AROUND),
            (float) (-box.bottom() - AROUND),
            (float) (box.right() - box.left() + 2 * AROUND),
            (float) (box.bottom() - box.top() + 2 * AROUND)));
    form.setResources(new PDResources());
    try (OutputStream out = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
      out.write(PageContent.filled(shape.sign().at(0, 0, shape.scale())));
    }
    forms.put(shape, form);
    return form;
  }
}
