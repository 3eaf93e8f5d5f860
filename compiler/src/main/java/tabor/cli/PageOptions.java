package tabor.cli;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.pdf.Paper;

/** The options that say how a handout is printed. */
final class PageOptions {
  @Option(names = "--paper", paramLabel = "PAPER", description = "a4 (the default) or letter.")
  private @Nullable String page;

  @Option(names = "--large", description = "Notes and letters to be read from a metre away.")
  private boolean large;

  @Option(
      names = "--clean",
      description = "Without counts, stickings and marks of change: notes only.")
  private boolean clean;

  @Option(names = "--teacher", description = "With the notes for the teacher; in no other output.")
  private boolean teacher;

  @Option(
      names = "--caution",
      paramLabel = "TEXT",
      description = "Your own words on hearing and strain at the foot of every page.")
  private @Nullable String caution;

  @Option(names = "--no-caution", description = "No words on hearing and strain.")
  private boolean noCaution;

  /** What they ask for, as a text that is the same in every run. */
  String settings() {
    return page + " " + large + " " + clean + " " + teacher + " " + caution + " " + noCaution;
  }

  /** What they ask for. */
  HandoutLook look() {
    if (noCaution && caution != null) {
      throw Failure.usage("--caution and --no-caution cannot both be meant");
    }
    String asked = page == null ? "a4" : page;
    Paper paper =
        Paper.of(asked.toLowerCase(Locale.ROOT))
            .orElseThrow(() -> Failure.usage("--paper takes a4 or letter, not " + asked));
    String words = noCaution ? "" : caution == null ? HandoutLook.CAUTION : caution;
    return new HandoutLook(paper, large, clean, words)
        .withReader(new HandoutLook.Reader("", List.of(), teacher, page != null));
  }
}
