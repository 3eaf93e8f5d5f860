package tabor.build;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import tabor.audio.WavFile;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.font.OpenFont;
import tabor.emit.grid.Grid;
import tabor.emit.html.PageMaker;
import tabor.emit.html.PageWriter;
import tabor.emit.midi.MidiLesson;
import tabor.emit.musicxml.MusicXml;
import tabor.emit.pdf.HandoutMaker;
import tabor.emit.pdf.PdfWriter;
import tabor.emit.png.PngWriter;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.notation.Speller;
import tabor.words.Words;

/** The files that a lesson becomes in each form. */
final class FormFiles {
  private FormFiles() {}

  static List<Output> midi(Lesson lesson, BuildOptions options) {
    MidiLesson midi = MidiLesson.of(lesson);
    return each(lesson, options.sections(lesson), "mid", one -> midi.bytes(one, options.countIn()));
  }

  static List<Output> wav(Lesson lesson, BuildOptions options) {
    return each(
        lesson, options.sections(lesson), "wav", one -> WavFile.bytes(one, options.countIn()));
  }

  static List<Output> grid(Lesson lesson, BuildOptions options) {
    return List.of(text(lesson.file() + ".txt", () -> Grid.of(lesson, options::wants)));
  }

  static List<Output> musicxml(Lesson lesson, BuildOptions options) {
    String name = lesson.file() + ".musicxml";
    return List.of(new Output(name, () -> MusicXml.bytes(lesson, options::wants)));
  }

  static List<Output> svg(Lesson lesson, BuildOptions options) {
    if (options.systems()) {
      return systems(lesson, options);
    }
    Printing printing = Printing.of(lesson);
    return each(
        lesson,
        grooves(lesson, options),
        "svg",
        groove -> bytes(SvgWriter.file(drawing(printing, groove), groove.name())));
  }

  static List<Output> png(Lesson lesson, BuildOptions options) {
    Printing printing = Printing.of(lesson);
    return each(
        lesson,
        grooves(lesson, options),
        "png",
        groove -> PngWriter.write(drawing(printing, groove), options.ground()));
  }

  static List<Output> pdf(Lesson lesson, BuildOptions options) {
    return List.of(
        new Output(
            lesson.file() + ".pdf",
            () ->
                PdfWriter.write(
                    HandoutMaker.make(
                        lesson.only(options.sections(lesson)),
                        options.handout(),
                        OpenFont.get()))));
  }

  static List<Output> html(Lesson lesson, BuildOptions options) {
    return List.of(
        text(lesson.file() + ".html", () -> page(lesson.only(options.sections(lesson)), options)));
  }

  private static String page(Lesson lesson, BuildOptions options) {
    boolean clean = options.handout().clean();
    PageDrawings drawings = new PageDrawings(lesson, clean, OpenFont.get());
    Lesson headed =
        headed(
            lesson,
            options.handout().note().apply(Words.of(lesson.setting().wording().language())));
    return PageWriter.write(PageMaker.of(headed, drawings, !clean, options.handout().caution()));
  }

  /** With what is other than written, below the name of the student. */
  private static Lesson headed(Lesson lesson, String note) {
    List<String> head = new ArrayList<>(lesson.extras().head());
    if (head.isEmpty() || note.isBlank()) {
      return lesson;
    }
    head.add(1, note);
    return lesson.with(lesson.extras().withHead(head));
  }

  /** A file for each system, its number after the section's name. */
  private static List<Output> systems(Lesson lesson, BuildOptions options) {
    List<Output> files = new ArrayList<>();
    for (Groove groove : grooves(lesson, options)) {
      List<Engraving.StaffSystem> systems = engraving(Printing.of(lesson), groove).systems();
      for (int i = 0; i < systems.size(); i++) {
        Drawing drawing = systems.get(i).drawing();
        String name = groove.name() + "." + (i + 1);
        files.add(text(lesson.file() + "." + name + ".svg", () -> SvgWriter.file(drawing, name)));
      }
    }
    return files;
  }

  private static Drawing drawing(Printing printing, Groove groove) {
    return engraving(printing, groove).whole();
  }

  private static Engraving engraving(Printing printing, Groove whole) {
    Groove groove = printing.printed(whole);
    return Engraver.engrave(
        Speller.spell(groove, Changes.of(groove).strokes()),
        printing.look(Look.FULL.withHeading(), groove),
        OpenFont.get());
  }

  /** The grooves and steps wanted. */
  private static List<Groove> grooves(Lesson lesson, BuildOptions options) {
    return lesson.grooves().stream().filter(options::wants).toList();
  }

  /** One file for each of some sections. */
  private static <S extends Section> List<Output> each(
      Lesson lesson, List<S> sections, String ending, Function<S, byte[]> maker) {
    List<Output> files = new ArrayList<>();
    for (S section : sections) {
      String name = lesson.file() + "." + section.name() + "." + ending;
      files.add(new Output(name, () -> maker.apply(section)));
    }
    return files;
  }

  private static Output text(String name, Supplier<String> text) {
    return new Output(name, () -> bytes(text.get()));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
