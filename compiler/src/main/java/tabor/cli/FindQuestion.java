package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tabor.body.RudimentFinder;
import tabor.compile.Compiled;
import tabor.diagnostic.Near;
import tabor.find.Finder;
import tabor.find.Found;
import tabor.find.Wanted;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.pattern.Rudiments;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.words.Words;

/** What the words after {@code tabor find} ask for. */
final class FindQuestion {
  private static final Pattern METER = Pattern.compile("([1-9][0-9]{0,2})/(1|2|4|8|16|32)");
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,6}");

  @Option(
      names = "--plays",
      paramLabel = "NAME",
      description = "The hands play this rudiment, however it is written.")
  private List<String> rudiments = List.of();

  @Option(
      names = "--uses",
      paramLabel = "SURFACE",
      description = "This is struck: hihat.open, or hihat for any way of striking it.")
  private List<String> surfaces = List.of();

  @Option(
      names = "--like",
      arity = "2",
      hideParamSyntax = true,
      paramLabel = "FILE SECTION",
      description = "The kick or the hands play nearly what they play in this section.")
  private List<String> like = List.of();

  @Option(
      names = "--up-to",
      paramLabel = "N",
      description =
          "With --like: at most so many strokes of difference, 0 to 100; ${DEFAULT-VALUE} if not"
              + " given.",
      defaultValue = "1")
  private String upTo = "1";

  @Option(
      names = "--tempo",
      paramLabel = "A-B",
      description = "From A to B beats per minute as written; one number for that tempo alone.")
  private @Nullable String tempo;

  @Option(names = "--meter", paramLabel = "M", description = "A bar has this meter: 7/8.")
  private @Nullable String meter;

  @Option(
      names = "--harder-than",
      paramLabel = "N",
      description =
          "The hardest limb is above N percent of its comfortable limit, as steps counts it.")
  private @Nullable String harderThan;

  @Option(
      names = "--text",
      paramLabel = "WORDS",
      description = "All these words stand in titles, goals and texts of the section or lesson.")
  private @Nullable String text;

  private final Set<String> known = new ConcurrentSkipListSet<>();

  FindQuestion() {
    Kits.NAMES.forEach(name -> Kits.named(name).ifPresent(kit -> note(kit.surfaceNames())));
  }

  /** The same as values; ends the command if something makes no sense. */
  Wanted wanted(Io io) {
    String words = text;
    List<String> texts = words == null ? List.of() : Finder.words(words);
    if (words != null && texts.isEmpty()) {
      throw Failure.usage("--text takes words to look for");
    }
    return new Wanted(
        rudiments.stream().map(FindQuestion::rudiment).toList(),
        surfaces,
        like(io),
        tempo == null ? null : range(tempo),
        meter == null ? null : meter(meter),
        harderThan == null ? null : number("--harder-than", harderThan, 100_000),
        texts);
  }

  /** What is asked, a few words for each option, in the language of a page. */
  List<String> inWords(Words page) {
    List<String> words = new ArrayList<>();
    rudiments.forEach(name -> words.add(page.text("asked.plays", rudiment(name))));
    surfaces.forEach(
        name ->
            words.add(
                page.text(
                    "asked.strikes",
                    Kits.FIVE_PIECE.surfaces().containsKey(name)
                        ? page.surface(Kits.FIVE_PIECE.surfaces().get(name))
                        : name)));
    if (!like.isEmpty()) {
      words.add(page.text("asked.like", like.get(1), like.get(0), Long.parseLong(upTo)));
    }
    if (tempo != null) {
      int dash = tempo.indexOf('-');
      words.add(
          dash < 0
              ? page.text("asked.tempo", tempo)
              : page.text("asked.tempi", tempo.substring(0, dash), tempo.substring(dash + 1)));
    }
    if (meter != null) {
      words.add(page.text("asked.meter", meter));
    }
    if (harderThan != null) {
      words.add(page.text("asked.harder", harderThan));
    }
    if (text != null) {
      words.add(page.text("asked.text", text.strip()));
    }
    return words;
  }

  private static String rudiment(String name) {
    return Rudiments.named(name)
        .map(RudimentFinder::spoken)
        .orElseThrow(
            () ->
                Failure.usage(
                    "there is no rudiment " + name + offer(Near.names(name, rudimentNames()))));
  }

  private static List<String> rudimentNames() {
    List<String> names = new ArrayList<>(Rudiments.all().keySet());
    Rudiments.all().values().forEach(one -> names.add(RudimentFinder.spoken(one)));
    return names.stream().distinct().toList();
  }

  private static String offer(List<String> near) {
    return near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?";
  }

  /** Kits of lessons may have surfaces of their own. */
  void noteSurfaces(Lesson lesson) {
    if (!surfaces.isEmpty()) {
      lesson.grooves().forEach(groove -> note(groove.setting().kit().surfaceNames()));
    }
  }

  private void note(Collection<String> names) {
    for (String name : names) {
      known.add(name);
      known.add(Surface.piece(name));
    }
  }

  /** Ends the command if a surface is none of the standard ones and none of the lessons'. */
  void refuseUnknownSurfaces() {
    for (String name : surfaces) {
      if (!known.contains(name)) {
        throw Failure.usage("there is no surface " + name + offer(Near.names(name, known)));
      }
    }
  }

  private Wanted.@Nullable Like like(Io io) {
    long strokes = number("--up-to", upTo, 100);
    if (like.isEmpty()) {
      return null;
    }
    if (like.size() > 2) {
      throw Failure.usage("--like is given once");
    }
    if (like.get(0).equals(SourceReader.STDIN)) {
      throw Failure.usage("--like takes a file, not standard input");
    }
    Compiled compiled = ReadyLesson.of(io, like.get(0), Options.NONE);
    Section section = ReadyLesson.section(compiled.lesson(), like.get(1));
    if (section instanceof Groove groove) {
      return new Wanted.Like(groove, (int) strokes);
    }
    throw Failure.usage(
        like.get(1) + " is no pattern of its own; --like takes a groove, a step or a variation");
  }

  /** True for the very section that others are compared with. */
  boolean isItself(Found found) {
    if (like.isEmpty() || !found.groove().name().equals(like.get(1))) {
      return false;
    }
    try {
      return Files.isSameFile(Path.of(found.file()), Path.of(like.get(0)));
    } catch (java.io.IOException e) {
      return false;
    }
  }

  private static Wanted.Range range(String typed) {
    int dash = typed.indexOf('-');
    try {
      Time from = PlayerOptions.tempo(dash < 0 ? typed : typed.substring(0, dash));
      Time to = dash < 0 ? from : PlayerOptions.tempo(typed.substring(dash + 1));
      if (!to.before(from)) {
        return new Wanted.Range(from, to);
      }
    } catch (Failure e) {
      throw Failure.usage(
          "--tempo takes one number from 1 to 1000 or two, such as 60-90, not " + typed);
    }
    throw Failure.usage("--tempo takes the lower number first, such as 60-90, not " + typed);
  }

  private static String meter(String typed) {
    Matcher matcher = METER.matcher(typed);
    if (!matcher.matches()) {
      throw Failure.usage("--meter takes a meter such as 4/4 or 7/8, not " + typed);
    }
    return typed;
  }

  private static long number(String option, String typed, long most) {
    if (!NUMBER.matcher(typed).matches() || Long.parseLong(typed) > most) {
      throw Failure.usage(option + " takes a whole number from 0 to " + most + ", not " + typed);
    }
    return Long.parseLong(typed);
  }
}
