package tabor.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.build.DrawnSize;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.font.OpenFont;
import tabor.emit.pdf.Handout;
import tabor.emit.pdf.Paper;
import tabor.emit.pdf.PdfWriter;
import tabor.emit.svg.SvgWriter;
import tabor.emit.svg.XmlText;
import tabor.groove.Groove;
import tabor.words.Language;

/** What changed, as a page to look at: words, and old and new staves one above the other. */
public final class ChangePictures {
  private static final double WIDTH = Look.FULL.width();
  private static final double TITLE = 2.4;
  private static final double TEXT = 1.7;

  /** Room below a line of text, in its size, and between blocks, in staff spaces. */
  private static final double LEADING = 1.35;

  private static final double BETWEEN = 2.5;

  /** Room around the page, in points. */
  private static final double MARGIN = 42;

  private static final String KEY =
      "Hollow in a frame: left out or struck otherwise. Tinted: new or struck otherwise.";

  private final ChangeDrawing drawing = new ChangeDrawing(OpenFont.get());
  private final List<Block> blocks = new ArrayList<>();

  /** Marks of some height that are not torn; a title goes with what comes after it. */
  private record Block(String title, double height, List<Mark> marks, List<Drawing> staves) {}

  private ChangePictures(List<ComparedFile> files) {
    files.stream().filter(file -> !file.isSame() || !file.notes().isEmpty()).forEach(this::file);
    if (blocks.isEmpty()) {
      text("The music is the same.", TITLE, Face.REGULAR);
    }
  }

  /** Why nothing is drawn, in a sentence; empty if it is not too much. */
  public static Optional<String> refusal(List<ComparedFile> files) {
    List<Groove> before = new ArrayList<>();
    List<Groove> after = new ArrayList<>();
    for (ComparedFile file : files) {
      for (SectionChange section : file.change().sections()) {
        if (ChangeDrawing.isDrawn(section)) {
          if (section.before() instanceof Groove groove) {
            before.add(groove);
          }
          if (section.after() instanceof Groove groove) {
            after.add(groove);
          }
        }
      }
    }
    return DrawnSize.refusal(before, after);
  }

  /** One picture with everything. */
  public static String svg(List<ComparedFile> files) {
    List<Mark> marks = new ArrayList<>();
    double y = 1;
    ChangePictures pictures = new ChangePictures(files);
    for (Block block : pictures.blocks) {
      marks.addAll(Mark.moved(block.marks(), 1, y, 1));
      y += block.height();
    }
    Drawing whole = new Drawing(WIDTH + 2, y + 1, title(files), words(files), marks);
    return SvgWriter.file(whole, "changes");
  }

  /** A printable document on this paper. */
  public static byte[] pdf(List<ComparedFile> files, Paper paper) {
    ChangePictures pictures = new ChangePictures(files);
    double scale = (paper.width() - 2 * MARGIN) / WIDTH;
    List<Handout.Sheet> sheets = new ArrayList<>();
    List<Handout.Bookmark> bookmarks = new ArrayList<>();
    List<Mark> page = new ArrayList<>();
    double y = MARGIN;
    for (int i = 0; i < pictures.blocks.size(); i++) {
      Block block = pictures.blocks.get(i);
      double needed = block.height();
      // A title does not stand alone at the foot of a page.
      for (int k = i + 1; k < pictures.blocks.size() && isText(pictures.blocks.get(k - 1)); k++) {
        needed += pictures.blocks.get(k).height();
      }
      boolean fits = y + needed * scale <= paper.height() - MARGIN;
      if (!fits && !page.isEmpty() && needed * scale <= paper.height() - 2 * MARGIN) {
        sheets.add(new Handout.Sheet(page));
        page = new ArrayList<>();
        y = MARGIN;
      } else if (y + block.height() * scale > paper.height() - MARGIN && !page.isEmpty()) {
        sheets.add(new Handout.Sheet(page));
        page = new ArrayList<>();
        y = MARGIN;
      }
      if (!block.title().isEmpty()) {
        bookmarks.add(new Handout.Bookmark(block.title(), sheets.size(), y));
      }
      page.addAll(Mark.moved(block.marks(), MARGIN, y, scale));
      y += block.height() * scale;
    }
    sheets.add(new Handout.Sheet(page));
    return PdfWriter.write(new Handout(paper, title(files), "", Language.EN, sheets, bookmarks));
  }

  private static boolean isText(Block block) {
    return block.staves().isEmpty();
  }

  /** A page of its own, light and dark, without script. */
  public static String html(List<ComparedFile> files) {
    StringBuilder html = new StringBuilder();
    html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    html.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    html.append("<title>").append(XmlText.text(title(files))).append("</title>\n<style>\n");
    html.append(":root { color-scheme: light dark; }\n");
    html.append("body { font: 1rem/1.5 sans-serif; max-width: 64rem; margin: 1rem auto; ");
    html.append("padding: 0 1rem; }\nsvg { max-width: 100%; height: auto; display: block; ");
    html.append("margin: 1rem 0; }\n</style>\n</head>\n<body>\n<h1>");
    html.append(XmlText.text(title(files))).append("</h1>\n");
    ChangePictures pictures = new ChangePictures(List.of());
    int number = 0;
    boolean any = false;
    for (ComparedFile file : files) {
      if (file.isSame() && file.notes().isEmpty()) {
        continue;
      }
      any = true;
      html.append("<h2>").append(XmlText.text(file.name())).append("</h2>\n");
      list(html, lines(file));
      ChangeWords words = new ChangeWords(file.change());
      for (SectionChange section : file.change().sections()) {
        html.append("<h3>").append(XmlText.text(section.name())).append("</h3>\n");
        list(html, lines(words, section));
        for (Drawing staves : pictures.drawing.systems(section)) {
          html.append(SvgWriter.element(staves, "change-" + ++number));
        }
      }
    }
    html.append("<p>").append(any ? KEY : "The music is the same.").append("</p>\n");
    return html.append("</body>\n</html>\n").toString();
  }

  private static void list(StringBuilder html, List<String> lines) {
    if (!lines.isEmpty()) {
      html.append("<ul>\n");
      lines.forEach(line -> html.append("<li>").append(XmlText.text(line)).append("</li>\n"));
      html.append("</ul>\n");
    }
  }

  private void file(ComparedFile file) {
    title(file.name());
    lines(file).forEach(line -> text(line, TEXT, Face.REGULAR));
    text(KEY, TEXT * 0.8, Face.ITALIC);
    ChangeWords words = new ChangeWords(file.change());
    for (SectionChange section : file.change().sections()) {
      title(section.name());
      lines(words, section).forEach(line -> text(line, TEXT, Face.REGULAR));
      for (Drawing staves : drawing.systems(section)) {
        blocks.add(new Block("", staves.height() + BETWEEN, staves.marks(), List.of(staves)));
      }
    }
  }

  /** What is said of a file as a whole. */
  private static List<String> lines(ComparedFile file) {
    List<String> lines = new ArrayList<>(file.notes());
    if (!file.words().isEmpty()) {
      lines.add(0, "The file " + file.words() + ".");
    }
    file.change().details().forEach(detail -> lines.add(detail.words()));
    return lines;
  }

  private static List<String> lines(ChangeWords words, SectionChange section) {
    return words.about(section).stream()
        // The section stands above as a title.
        .map(said -> said.about().isEmpty() ? said.text() : said.text().replaceFirst("^[,:]? ", ""))
        .toList();
  }

  private void title(String title) {
    double y = BETWEEN / 2 + TITLE;
    List<Mark> marks = List.of(drawing.words(title, 0, y, TITLE, Face.BOLD));
    blocks.add(new Block(title, y + TITLE * (LEADING - 1), marks, List.of()));
  }

  /** A line of text, on as many lines as it takes. */
  private void text(String text, double size, Face face) {
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (!line.isEmpty() && OpenFont.get().width(line + " " + word, size, face) > WIDTH) {
        line(line.toString(), size, face);
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    line(line.toString(), size, face);
  }

  private void line(String text, double size, Face face) {
    List<Mark> marks = List.of(drawing.words(text, 0, size, size, face));
    blocks.add(new Block("", size * LEADING, marks, List.of()));
  }

  private static String title(List<ComparedFile> files) {
    return files.size() == 1 ? "What changed in " + files.get(0).name() : "What changed";
  }

  private static String words(List<ComparedFile> files) {
    return ChangeReport.text(files, files.size() > 1, false).strip();
  }
}
