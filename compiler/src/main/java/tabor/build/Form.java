package tabor.build;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tabor.audio.WavFile;
import tabor.diagnostic.Diagnostic;
import tabor.emit.midi.MidiLesson;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** A kind of output, as {@code --as} names it. */
@SuppressWarnings("ImmutableEnumChecker") // the makers are method references without state
public enum Form {
  /** {@code LESSON.SECTION.mid}: sound, one file for each groove, step and chart. */
  MIDI,
  /** {@code LESSON.txt}: the counted grid. */
  GRID,
  /** {@code LESSON.musicxml}: the whole lesson for notation programs. */
  MUSICXML,
  /** {@code LESSON.SECTION.svg}: engraved notation of each groove and step. */
  SVG,
  /** {@code LESSON.SECTION.png}: the same as a picture on white. */
  PNG,
  /** {@code LESSON.pdf}: the handout. */
  PDF,
  /** {@code LESSON.html}: the practice page. */
  HTML,
  /** {@code LESSON.SECTION.wav}: sound to play along with, one file for each section. */
  WAV;

  /**
   * True if {@code all} means this form too; sound files are large and are made only when they are
   * named.
   */
  public boolean isUsual() {
    return this != WAV;
  }

  /** As {@code --as} names it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The form that a word names. */
  public static Optional<Form> of(String word) {
    for (Form form : values()) {
      if (form.word().equals(word)) {
        return Optional.of(form);
      }
    }
    return Optional.empty();
  }

  /**
   * The files of this form, in order; their bytes are made only when asked for.
   *
   * @param lesson finished, without errors
   * @param asked what is asked for
   */
  public List<Output> outputs(Lesson lesson, BuildOptions asked) {
    BuildOptions options = asked.in(lesson);
    return switch (this) {
      case MIDI -> FormFiles.midi(lesson, options);
      case GRID -> FormFiles.grid(lesson, options);
      case MUSICXML -> FormFiles.musicxml(lesson, options);
      case SVG -> FormFiles.svg(lesson, options);
      case PNG -> FormFiles.png(lesson, options);
      case PDF -> FormFiles.pdf(lesson, options);
      case HTML -> FormFiles.html(lesson, options);
      case WAV -> FormFiles.wav(lesson, options);
    };
  }

  /**
   * Why this form cannot be made of a lesson, in a sentence; empty if it can.
   *
   * @param lesson finished, without errors
   * @param options what is asked for
   */
  public Optional<String> refusal(Lesson lesson, BuildOptions options) {
    return switch (this) {
      case MIDI, GRID, MUSICXML -> Optional.empty();
      case SVG, HTML ->
          DrawnSize.IN_LINES.refusal(lesson, options).map(why -> why + DrawnSize.WAY_OUT);
      case PNG -> DrawnSize.IN_DOTS.refusal(lesson, options).map(why -> why + DrawnSize.WAY_OUT);
      case PDF -> DrawnSize.ON_PAGES.refusal(lesson, options).map(why -> why + DrawnSize.WAY_OUT);
      case WAV -> tooLong(lesson, options);
    };
  }

  private static Optional<String> tooLong(Lesson lesson, BuildOptions options) {
    double together = 0;
    for (Section section : options.sections(lesson)) {
      if (WavFile.seconds(section) > WavFile.LONGEST_SECONDS) {
        return Optional.of(
            section.name()
                + " lasts longer than "
                + WavFile.LONGEST_SECONDS / 60
                + " minutes, which is too long for a sound file; leave it out with --only, or"
                + " play it with tabor play");
      }
      together += WavFile.lasting(section);
    }
    return together <= WavFile.MOST_SECONDS
        ? Optional.empty()
        : Optional.of(
            "its sound files would last more than "
                + WavFile.MOST_SECONDS / 3600
                + " hours together; choose some sections with --only, or play them with tabor"
                + " play");
  }

  /** What a person should know about the files of this form, such as times that are rounded. */
  public Optional<Diagnostic> warning(Lesson lesson) {
    return this == MIDI ? MidiLesson.of(lesson).rounded() : Optional.empty();
  }
}
