package tabor.build;

import java.util.List;
import java.util.Optional;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Lesson;

/** A kind of output, as {@code --as} names it. */
public enum Form {
  /** {@code LESSON.SECTION.mid}: sound, one file for each groove, step and chart. */
  MIDI("midi", SoundFiles::midi),
  /** {@code LESSON.txt}: the counted grid. */
  GRID("grid", PageFiles::grid),
  /** {@code LESSON.musicxml}: the whole lesson for notation programs. */
  MUSICXML("musicxml", PageFiles::musicxml),
  /** {@code LESSON.SECTION.svg}: engraved notation of each groove and step. */
  SVG("svg", PageFiles::svg),
  /** {@code LESSON.SECTION.png}: the same as a picture on white. */
  PNG("png", PageFiles::png),
  /** {@code LESSON.pdf}: the handout. */
  PDF("pdf", PageFiles::pdf),
  /** {@code LESSON.html}: the page that plays. */
  HTML("html", PageFiles::html);

  private final String word;
  private final Maker maker;

  Form(String word, Maker maker) {
    this.word = word;
    this.maker = maker;
  }

  /** Lists the files of one form. */
  private interface Maker {
    List<Output> make(Lesson lesson, BuildOptions options);
  }

  /** As {@code --as} names it. */
  public String word() {
    return word;
  }

  /** The form that a word names. */
  public static Optional<Form> of(String word) {
    for (Form form : values()) {
      if (form.word.equals(word)) {
        return Optional.of(form);
      }
    }
    return Optional.empty();
  }

  /**
   * The files of this form, in order; their bytes are made only when asked for.
   *
   * @param lesson finished, without errors
   * @param options what is asked for
   */
  public List<Output> outputs(Lesson lesson, BuildOptions options) {
    return maker.make(lesson, options);
  }

  /** What a person should know about the files of this form, such as times that are rounded. */
  public Optional<Diagnostic> warning(Lesson lesson) {
    return this == MIDI ? SoundFiles.rounded(lesson) : Optional.empty();
  }
}
