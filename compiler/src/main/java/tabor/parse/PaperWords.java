package tabor.parse;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import tabor.syntax.Numerals;
import tabor.syntax.SectionKind;

/**
 * Words that people say or write on paper, each with what is written here, tried in order. What
 * they mean is common practice, no source.
 */
final class PaperWords {
  private record Said(Pattern words, String written) {}

  private static final Pattern NUMERAL =
      Pattern.compile("(?<=\\b(?:by|bars?|beats?|at|in|on|and) )[a-z]+\\b|^[a-z]+(?= bars?\\b)");

  private static final List<Said> EVERYWHERE = new ArrayList<>();
  private static final Map<SectionKind, List<Said>> HERE = new EnumMap<>(SectionKind.class);

  private PaperWords() {}

  static {
    everywhere();
    header();
    player();
    kit();
    chart();
    strokes();
    places();
    changes();
    dynamics();
    parts();
  }

  private static void said(String words, String written) {
    EVERYWHERE.add(new Said(Pattern.compile(words), written));
  }

  private static void said(SectionKind kind, String words, String written) {
    HERE.computeIfAbsent(kind, k -> new ArrayList<>())
        .add(new Said(Pattern.compile(words), written));
  }

  /** In grooves, steps and sheets. */
  private static void change(String words, String written) {
    said(SectionKind.STEP, words, written);
  }

  private static void everywhere() {
    said("^(?:\\d+[.)]|[-*•–]) +", "");
    said(
        "^(title|by|goal|teacher|text|use|tempo|time|feel|on|bars|pickup|count-in|cue|mark)"
            + " ?[=:] ?",
        "$1 ");
    said("^(?:note|comment|remark|hint) ?[:=]? ?$", "text ");
    said("^tempo ((?:dotted-)?(?:half|quarter|eighth|sixteenth)) (?=\\d)", "tempo $1 = ");
    said("^feel (?:swing|swung|shuffled?|triplets?)$", "feel swing eighths as triplets");
    said("^feel swing (\\d+)%?$", "feel swing eighths $1%");
    said("^feel swing (?=\\d)", "feel swing eighths ");
    said("^on ([a-z]+) ([a-z]+)$", "on $1-$2");
    said("^tempo (?:♩|q|quarters?|quarter notes?) ?= ?(?=\\d)", "tempo quarter = ");
    said("(?<=\\d) ?(?:bpm|BPM)$", "");
    said("\\bsextuplet(?=s?\\b)", "sixteenth-triplet");
    said("\\b(?:16th|sixteenth)(?:[ -]notes?)?[ -]triplet(?=s?\\b)", "sixteenth-triplet");
    said("\\b(?:8th|eighth)(?:[ -]notes?)?[ -]triplet(?=s?\\b)", "triplet");
    said("\\b(?:4th|quarter)(?:[ -]notes?)?[ -]triplet(?=s?\\b)", "quarter-triplet");
    said("\\b(quarter|eighth|sixteenth)[ -]note\\b", "$1");
    said("^feel (?:swung|swing) (eighths|sixteenths)$", "feel swing $1 as triplets");
    said("^feel straight (?:eighths|8ths)$", "feel straight");
    said("^on (?:an? |the )", "on ");
    said("\\bin 1/16(?: notes?|s)?\\b", "in sixteenths");
    said("\\bin 1/8(?: notes?|s)?\\b", "in eighths");
    said("\\bin 1/4(?: notes?|s)?\\b", "in quarters");
    said("\\b(?:16th notes|16ths?|sixteenth[ -]notes)\\b", "sixteenths");
    said("\\b(?:8th notes|8ths?|eighth[ -]notes)\\b", "eighths");
    said("\\b(?:quarter[ -]notes|4ths)\\b", "quarters");
    said("\\btriplet[ -]notes\\b", "triplets");
  }

  private static void header() {
    SectionKind header = SectionKind.HEADER;
    said(header, "^(?:time signature|meter|metre|signature|time) ?[=:]? ?(?=\\d)", "time ");
    said(header, "^(?=\\d+/\\d+)", "time ");
    said(header, "^time (?:common|[cC])$", "time 4/4");
    said(header, "^time (?:cut|alla breve)$", "time 2/2");
    said(header, "^(?:lesson|name|heading) ?:? ?$", "title ");
    said(header, "^(?:author|made by|written by) ?:? ?$", "by ");
    said(header, "^time (\\d+)[ :-](\\d+)$", "time $1/$2");
    said(header, "^drums? (?=[a-z])", "on ");
    said(header, "^show (?:counting|numbers)$", "show counts");
    said(header, "^show (?:all|everything)$", "show counts sticking");
    said(header, "^language [Ee]nglish$", "language en");
    said(header, "^language [Gg]erman$", "language de");
    said(header, "^language [Ff]rench$", "language fr");
    said(header, "^language [Ss]panish$", "language es");
    said(header, "^(?:import|include) $", "use ");
    said(header, "^(?:count|say) (?:1|one) e (?:&|and) a$", "say 1-e-&-a");
  }

  private static void player() {
    SectionKind player = SectionKind.PLAYER;
    said(player, "^(?:lefty|left handed)$", "left-handed");
    said(player, "^open handed$", "open-handed");
    said(player, "^tempo (\\d+) ?(?:percent|%)$", "tempo $1%");
    said(player, "^half (?:the )?(?:speed|tempo)$", "tempo 50%");
    said(player, "^sections 1 to (\\d+)$", "sections first $1");
    said(player, "^only (?=[a-z])", "sections ");
    said(player, "(?<=^sections .{1,200}),", " ");
    said(player, "^show (?:only )?([a-z ]+?)(?: only)?$", "show $1");
  }

  private static void kit() {
    SectionKind kit = SectionKind.KIT;
    said(kit, "^letter (\\S) (?=[a-z])", "letter $1 = ");
    said(kit, "^(?:no|remove) (?=[a-z])", "without ");
    said(kit, "^add (?:surface )?(?=[a-z])", "surface ");
    said(kit, "^(?:lefty|left[ -]handed)(?: kit)?$", "left-handed");
    for (SectionKind kind : List.of(kit, SectionKind.STEP)) {
      said(kind, "\\b(?:first|high|1st) tom\\b", "tom1");
      said(kind, "\\b(?:second|mid|middle|2nd) tom\\b", "tom2");
      said(kind, "\\b(?:floor|low) tom\\b", "floor");
    }
  }

  private static void chart() {
    SectionKind chart = SectionKind.CHART;
    said(chart, "^(\\d+) (bars?) count[ -]in$", "count-in $1 $2");
    said(chart, "^count[ -]?(?:in|off)\\b", "count-in");
    said(chart, "^count-in(?: 4 beats)?$", "count-in 1 bar");
    said(chart, "^(?:metronome|click track)\\b", "click");
    said(chart, "^(?:no|without) (?:click|metronome)$", "click off");
    said(chart, "^click on (quarters|eighths)$", "click $1");
    said(chart, "^click (?:on )?(?=\\d+ and)", "click at ");
    said(chart, "\\bmins?\\b\\.?", "minutes");
    said(chart, "\\bsecs?\\b\\.?|(?<=^rest \\d{1,3}) ?s$", " seconds");
    said(chart, "\\b1 minutes\\b", "1 minute");
    said(chart, "^(?:break|pause|silence|wait|tacet)(?= \\d)", "rest");
    said(chart, "^(?:break|pause|silence)$", "rest 1 bar");
    said(chart, "^(?:hold (?:the )?last (?:note|stroke)|fermata)$", "hold 4 beats");
    said(chart, "^(?:section|letter|rehearsal mark|mark) ([A-Z])$", "mark \"$1\"");
    said(chart, "^trade (\\d+)s (?:with|on) ([a-z0-9-]+)$", "trade $2 $1 bars 4 times");
    said(chart, "^trade ([a-z0-9-]+) (\\d+ bars?)$", "trade $1 $2 4 times");
    said(chart, "(?<= )(\\d+)(?:[-–]| [-–] )(?=\\d)", "$1 to ");
    said(chart, "(?<= (?:without|no) )the ", "");
    said(chart, "^(play .*? \\d+ (?:times|bars|minutes)) no (?=[a-z])", "$1 without ");
    said(chart, "^rit\\. ", "ritardando ");
    said(
        chart,
        "^(?:tempo(?: up)?|speed up|slow down|accelerate|accelerando|ritardando) (?:from )?(\\d+ to \\d+)$",
        "tempo $1 over 4 bars");
    said(
        chart,
        "^(?:play|climb) (?!from )(\\S+) (?:from )?(\\d+) to (\\d+)$",
        "climb $1 from $2 to $3 by 5");
    said(chart, "^(climb .*) in steps of (?=\\d)", "$1 by ");
    said(chart, "^climb (?!from )(\\S+) (?=\\d)", "climb $1 from ");
    said(chart, "^(climb .* by \\d+)$", "$1 every 4 times");
    said(chart, "(?<=[a-z0-9]) ?(?:&|\\+|,) ?(?=[a-z])", " ");
    said(chart, "\\(([^()]*)\\)", "$1");
    said(chart, "^((?:play|trade) .*?) ?(?:at|@) ?(?=\\d+$)", "$1 at tempo ");
    said(chart, "(?<=\\d) (?:and|&) (?=\\d)", " ");
    said(
        chart,
        "^click on for (\\d+) bars?(?: and| then)? off for (\\d+)(?: bars?)?$",
        "click $1 bars on $2 off");
    said(chart, "^click on (?=\\d)", "click at ");
    said(
        chart,
        "^(.* (?:times|bars)) (?:end(?:ing)? with|with fill|with)(?: an?)? (?=[a-z0-9-]+$)",
        "$1 fill ");
    said(chart, "^(?:play )?(\\d+) times ([a-z][a-z0-9-]*)$", "play $2 $1 times");
    said(chart, "^(play .*?)(?<! at| until) tempo (?=\\d)", "$1 at tempo ");
    said(chart, "^play (\\S+) at (\\d+)(?: bpm)? (\\d+ times)$", "play $1 $3 at tempo $2");
    said(chart, "^(play \\S+) (\\d+ minutes?|\\d+ seconds)$", "$1 for $2");
  }

  private static void strokes() {
    change("\\b(?:rim click|cross[ -]?stick|side[ -]?stick)\\b", "snare.cross");
    change("\\bthe ", "");
    change("\\b(ride|crash|splash|china) cymbal\\b", "$1");
    change("\\bsnare drum\\b", "snare");
    change("\\b(?:bass|kick) drum\\b", "kick");
    change("\\btom ([12])\\b", "tom$1");
    change("^drop (?:all|everything) (?:but|except) ", "only ");
    change("\\b(?:hi hat|high hat|high-hat|hi-hat)\\b", "hihat");
    change("^(add|put) an? ", "$1 ");
    change("^hihat open$", "open hihat");
    change("\\bhihat (?:pedal|foot)\\b", "hihat.foot");
    change("\\bride bell\\b", "ride.bell");
    change("^(?:open hihat|hihat open)(?= ?:)", "hihat.open");
    change("^hihat open at\\b", "open hihat at");
    change("\\b(?:all )?(right|left) hands\\b", "$1 hand");
    change("\\ball (?=right|left|hands|feet)", "");
    change(
        "^add (ghost|accent)(?:ed)?(?: notes?| strokes?)? (?!notes?|strokes?)([a-z.]+[12]?) (?=on|at)",
        "add $2 $1ed ");
    change("^add ([a-z.]+[12]?) \\(?(ghost|accent)(?: notes?)?\\)? (?=on|at)", "add $1 $2ed ");
    change("^add ghost(?:ed)? (?:notes?|strokes?)\\b", "add snare ghosted");
    change("^add open hihat\\b", "add hihat.open");
    change("^(add [a-z.]+[12]?) (?:hits?|strokes?|notes?)\\b", "$1");
    change("^add accents?\\b", "accent");
    change("^add (flam|drag|ruff|buzz|diddle|roll|rimshot)(?:e?s)?\\b", "$1");
    change(
        "^add (\\S+) ((?:at|on) .*?) with ((?:right|left)(?: hand| foot)?)$", "add $1 with $3 $2");
    change("^add (.+?) ((?:at|on) .*?) (ghosted|accented)$", "add $1 $3 $2");
    change(
        "^((?:right|left)(?: hand| foot)?|hands|snare|hihat|ride|kick)"
            + " (?:ghosted|quiet|quieter|soft|softer)\\b",
        "ghost $1");
    change(
        "^((?:right|left)(?: hand| foot)?|hands|snare|hihat|ride|kick)"
            + " (?:accented|loud|louder)\\b",
        "accent $1");
    change("^buzz(?:es|ed)? rolls?\\b", "buzz");
    change("^ghost(?:ed)? (?:notes?|strokes?)\\b", "ghost");
    change("^accent(?:ed)? (?:notes?|strokes?)\\b", "accent");
    change("^(flam|drag|ruff|buzz|diddle|roll|accent|ghost)s (?=on|at|in)", "$1 ");
    change("^(ghost|accent) (?:on|at) (?=right|left|hands)", "$1 ");
    change(
        "^([a-z]+) first (right|left|hihat|snare|kick)(?: (?:hand|stroke|note))?$", "$1 $2 at 1");
  }

  private static void places() {
    change("(?<!every )(?:first|1st) (bar|beat)\\b", "$1 1");
    change("(?<!every )(?:second|2nd) (bar|beat)\\b", "$1 2");
    change("(?<!every )(?:third|3rd) (bar|beat)\\b", "$1 3");
    change("(?<!every )(?:fourth|4th) (bar|beat)\\b", "$1 4");
    change("(?<!every )\\b([1-9])(?:st|nd|rd|th)\\b", "$1");
    change("^(fill .* in bar \\d+) (?:beat|at|on|from beat|on beat) (?=\\d)", "$1 from ");
    change("\\b(?:at|on|in) bar (\\d+),? (?:beat|on|at|count) (\\d\\S*)", "at $2 in bar $1");
    change("(?<=\\b(?:on|at|and|to|from) )beats? (?=\\d)", "");
    change("(?<= \\d[^ ]{0,3}) of (?=bar)", " in ");
    change("(?<= )(?:&|and) of (\\d+)", "$1&");
    change("(?<= \\d) ?(?:\\+|and|&)$", "&");
    change("(?<=\\d), ?(?=\\d)", " ");
    change("\\b(?:on|at) (?=bars? \\d|last bar)", "in ");
    change("(?<= )e of (\\d+)", "$1e");
    change("(?<= )(?:a|ah|uh) of (\\d+)", "$1a");
    change("(?<= )(?:on |at )?(?:all |every )?(?:ands|&s|off-?beats|upbeats)$", "at every &");
    change("(?<= )(?:on |at )?(?:all |every )?(?:the )?down-?beats?$", "at every beat");
    change("(?<= )(?:on |at )?(?:all |every )?(?:the )?back-?beats?$", "at 2 4");
    change("(?<= )on e and a$", "at every e every a");
    change(
        "(?<= )(?:on |at )?(?:all |each |every )(quarter|eighth|sixteenth|beat)s?\\b",
        "at every $1");
    change("(?<= \\d{1,3}[&ea]?) ?(?:through|thru|until|till|[-–]) ?(?=\\d)", " to ");
    change("(?<= \\d[^ ]{0,3}) (?:and|or|&) (?=\\d)", " ");
    change("(?<= )on (?=\\d|every)", "at ");
    change("(?<! at| in| every [^ ]{1,3}) every (?=[^ ]+$)", " at every ");
  }

  private static void changes() {
    change("^(?:no|without|leave out|take out|take away|mute|skip|silence) (?=[a-z])", "drop ");
    change("^cut (?=[a-z])", "drop ");
    change("^drop (?=bars? \\d)", "drop all in ");
    change("^copy (?=.* (?:from|of) )", "take ");
    change("^(take .*) of (?=[a-z0-9-]+$)", "$1 from ");
    change("^(\\S+) follows hands(.*)$", "$1 follows right$2\n$1 follows left$2");
    change(
        "^(?!start|lead|begin)([a-z.]+) (?:with|plays with|doubles) (right|left)(?: hand)?$",
        "$1 follows $2");
    change("^(roll|buzz) from (?=\\d)", "$1 hands at ");
    change(
        "^swap (?:right|left)(?: hand)?(?: and|,| with) (?:right|left)(?: hand)?$", "swap hands");
    change("^(?:reverse|switch|exchange|flip|mirror) (?:hands|sticking)$", "swap hands");
    change("^(?:start|lead|begin) with left(?: hand)?$", "swap hands");
    change(
        "^fill (?:in )?((?:last )?bars?\\b.*?) with (?:an? )?([a-z][a-z0-9-]*)$", "fill $2 in $1");
    change("^fill ([a-z0-9-]+) (?=bars? |last )", "fill $1 in ");
    change("^(?=(?:pp|p|mp|mf|f|ff)(?: |$))", "dynamic ");
    change("^dynamic (?:soft|quiet)\\b", "dynamic p");
    change("^dynamic loud\\b", "dynamic f");
    change("^split (.+?) (?:over|across|among|on) ", "split $1 between ");
    change("^(split .+?), ", "$1 and ");
    change("^((?:right|left)(?: foot| hand)?) plays? (?=\\d)", "add $1 at ");
    change(
        "^(flam|drag|ruff|buzz|diddle|roll|accent|ghost|double|rimshot) on (?=[a-z.]+[12]? )",
        "$1 ");
    change("^shift (.+?) (?:by )?one ", "shift $1 by 1 ");
    change("^cresc\\.? ", "crescendo ");
    change("^(?:decrescendo|decresc\\.?|dim\\.?) ", "diminuendo ");
    change(
        "^(crescendo|diminuendo) (?:from )?bar (\\d+) to (?:bar )?(\\d+)$",
        "$1 from 1 in bar $2 to 1 in bar $3");
    change("^crescendo from (?=\\d)", "crescendo to f from ");
    change("^diminuendo from (?=\\d)", "diminuendo to p from ");
    change("(?<=\\bby )an? (?=[a-z])", "1 ");
    change("^delay (.+?) by ", "shift $1 later by ");
    change("^shift (.+?) (?:forwards?|(?:to )?right) by ", "shift $1 later by ");
    change("^shift (.+?) (?:back(?:wards?)?|(?:to )?left) by ", "shift $1 earlier by ");
    change("^shift (.+?) (?:by )?(\\d+ [a-z-]+) (later|earlier)$", "shift $1 $3 by $2");
    change("^move (right|left)(?: (hand|foot))? to\\b", "$1 $2 to");
    change("^play (right|left|hands)( hand)? (?=on )", "$1$2 ");
    change(
        "^(right|left|hands)( (?:hand|foot))? +(?:moves? |goes )?(?:to|on) (?!toms|cymbals|drums)",
        "$1$2 plays ");
    change("^hands plays ", "hands play ");
    change("^(accent|ghost|plain|drop)(?: at)?(?: beats?)? (?=\\d|at every)", "$1 all at ");
    change(
        "^(flam|drag|ruff|buzz|diddle|roll|double|triple|rimshot)(?: at)?(?: beats?)? (?=\\d)",
        "$1 hands at ");
    change("\\bat at ", "at ");
  }

  private static void dynamics() {
    for (SectionKind kind : List.of(SectionKind.STEP, SectionKind.CHART)) {
      said(kind, "^(?:dynamics? |volume )?pianissimo\\b", "dynamic pp");
      said(kind, "^(?:dynamics? |volume )?(?:piano|softer|quieter|softly)\\b", "dynamic p");
      said(kind, "^(?:dynamics? |volume )?mezzo[ -]piano\\b", "dynamic mp");
      said(kind, "^(?:dynamics? |volume )?mezzo[ -]forte\\b", "dynamic mf");
      said(kind, "^(?:dynamics? |volume )?(?:forte|louder)\\b", "dynamic f");
      said(kind, "^(?:dynamics? |volume )?fortissimo\\b", "dynamic ff");
    }
  }

  private static void parts() {
    change("^(?:play )(?=[a-z0-9 -]+ in [a-z-]+$)", "hands play ");
    change("^(\\S+ plays? \\S+) as (?=[a-z-]+$)", "$1 in ");
    change(
        "^(right|left)(?: hand)? plays? (quarter|eighth|sixteenth)s on ([a-z.]+)$",
        "add $3 with $1 at every $2");
    change(
        "^(?!hands|feet|right|left)([a-z]+[12]?(?:\\.[a-z]+)?) (?:in|plays?)"
            + " (quarter|eighth|sixteenth)s$",
        "add $1 at every $2");
    change(
        "^(hands|right|left)( hand)? (?!plays?\\b)([a-z0-9 -]+?) (?:in )?"
            + "(?=(?:sixteenth|eighth|quarter|triplet)s$)",
        "$1$2 plays $3 in ");
    change("^((?:right|left)(?: hand)? plays? [a-z.]+[12]?) ghosts?$", "$1 ghosted");
    change("^(?:extend to )?(\\d+) bars(?: long)?$", "bars $1");
    change("^length (\\d+)(?: bars?)?$", "bars $1");
    change("^RH(?= ?:)", "right");
    change("^LH(?= ?:)", "left");
    change("^RF(?= ?:)", "right foot");
    change("^LF(?= ?:)", "left foot");
    change("^SD(?= ?:)", "snare");
    change("^BD(?= ?:)", "kick");
    change("^HH(?= ?:)", "hihat");
    change("^RD(?= ?:)", "ride");
    change("^CC(?= ?:)", "crash");
    change("^FT(?= ?:)", "floor");
    change("^T(?=[12] ?:)", "tom");
  }

  /** A line that somebody says, as it is written in a section of a kind. */
  static String written(String said, SectionKind kind) {
    SectionKind like =
        kind == SectionKind.GROOVE || kind == SectionKind.SHEET ? SectionKind.STEP : kind;
    String written = replaced(said, EVERYWHERE);
    boolean time = like == SectionKind.HEADER && written.startsWith("time ");
    if (like == SectionKind.STEP || time) {
      written = numerals(written);
    }
    written = replaced(written, HERE.getOrDefault(like, List.of()));
    return SaidRudiments.written(written).replaceAll("  +", " ");
  }

  private static String replaced(String said, List<Said> words) {
    String written = said;
    for (Said one : words) {
      written = one.words().matcher(written).replaceAll(one.written());
    }
    return written;
  }

  private static String numerals(String said) {
    return NUMERAL
        .matcher(said)
        .replaceAll(
            found -> {
              Integer number = Numerals.number(found.group());
              return number == null ? found.group() : number.toString();
            });
  }
}
