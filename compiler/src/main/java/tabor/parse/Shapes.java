package tabor.parse;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** How each statement is written, in the words of the notation page, with an example. */
final class Shapes {
  private static final Map<String, String> EXAMPLES =
      Map.ofEntries(
          Map.entry("pattern", "pattern NAME : STROKES, such as `pattern mine : RlrrLrll`"),
          Map.entry("kit", "kit NAME like KIT, such as `kit studio like five-piece`"),
          Map.entry("groove", "groove NAME \"TITLE\", such as `groove pads \"On the snare\"`"),
          Map.entry(
              "step",
              "step NAME \"TITLE\" from SECTION, such as `step feet \"Kick on one\" from pads`;"
                  + " a name or a title must be there"),
          Map.entry("chart", "chart NAME \"TITLE\", such as `chart practice \"At home\"`"),
          Map.entry("title", "title \"…\""),
          Map.entry("by", "by \"…\""),
          Map.entry("use", "use \"FILE\", such as `use \"patterns.tabor\"`"),
          Map.entry("time", "`time 4/4`, `time 6/8 in 6` or `time 7/8 in 2+2+3`"),
          Map.entry("tempo", "`tempo 92` or `tempo dotted-quarter = 60`"),
          Map.entry(
              "feel",
              "`feel straight`, `feel swing eighths 62%` or `feel swing eighths as triplets`"),
          Map.entry("on", "on KIT, such as `on four-piece`"),
          Map.entry("levels", "`levels ghost 35 plain 78 accent 115`"),
          Map.entry("show", "`show counts sticking`, one of the two, or `show none`"),
          Map.entry(
              "limits", "`limits hands 6 to 9 feet 4 to 6 doubles 12 to 18 reach 200 to 300`"),
          Map.entry(
              "surface",
              "surface NAME letter L key N staff PLACE head SHAPE, such as"
                  + " `surface gong letter g key 52 staff a5 head x`"),
          Map.entry("letter", "letter L = SURFACE, such as `letter q = ride.bell`"),
          Map.entry("without", "without SURFACE plays SURFACE, such as `without tom2 plays floor`"),
          Map.entry("left-handed", "`left-handed`, alone on its line"),
          Map.entry("place", "`place floor 60 cm 50 degrees right 55 cm high`"),
          Map.entry("count-in", "`count-in 1 bar`"),
          Map.entry("click", "`click on`, `click off`, `click quarters` or `click eighths`"),
          Map.entry("play", "play SECTION N times at tempo T, such as `play feet answer 4 times`"),
          Map.entry("rest", "`rest 2 bars`"),
          Map.entry("climb", "`climb feet from 50 to 80 by 5 every 4 times`, or `every 4 bars`"),
          Map.entry("ostinato", "ostinato PART : BEATS, such as `ostinato kick : x . x .`"),
          Map.entry("next", "`next`, alone on its line"),
          Map.entry("pickup", "`pickup 1 beat`"),
          Map.entry("bars", "`bars 8`"),
          Map.entry(
              "plays",
              "LIMB plays SURFACE, such as `right plays ride` or"
                  + " `left plays snare ghosted at 2& in bar 2`"),
          Map.entry(
              "played",
              "PART play PATTERN in VALUE, such as `hands play paradiddle in sixteenths`"),
          Map.entry(
              "split",
              "split LIMB between SURFACE and SURFACE, such as"
                  + " `split left between tom2 and floor at 2.5 2.6`"),
          Map.entry("add", "add SURFACE at COUNTS, such as `add kick at 1 2&`"),
          Map.entry("drop", "drop PART at COUNTS, such as `drop snare at 4 in bar 2`"),
          Map.entry("follows", "SURFACE follows LIMB, such as `kick follows right at 2 2&`"),
          Map.entry("move", "move PART from COUNT to COUNT, such as `move kick from 3 to 3&`"),
          Map.entry(
              "shift", "shift PART later by N VALUE, such as `shift hands later by 1 sixteenth`"),
          Map.entry("swap", "`swap hands`"),
          Map.entry("only", "only PART, such as `only feet`"),
          Map.entry("take", "take PART from SECTION, such as `take left from answer`"),
          Map.entry(
              "fill", "fill SECTION in BARS from COUNT, such as `fill break in bar 4 from 3`"),
          Map.entry("dynamic", "`dynamic mf`, or `dynamic f at 3 in bar 2`"),
          Map.entry("text", "text \"…\"; over several lines it stands between \"\"\" and \"\"\""),
          Map.entry("lane", "PART : BEATS, such as `hands : rl rl rl rl | rl rl rl rlrl`"));

  private Shapes() {}

  /** {@code It is written …}; null for a word that no statement starts with. */
  static @Nullable String of(String word) {
    String shape = EXAMPLES.get(word);
    if (shape == null) {
      shape =
          switch (word) {
            case "accent", "ghost", "plain", "double", "triple", "flam", "drag", "ruff" ->
                word + " PART at COUNTS, such as `" + word + " left at 2`";
            case "buzz", "diddle", "rimshot" ->
                word + " PART at COUNTS, such as `" + word + " snare at 4`";
            case "choke" -> "choke PART at COUNTS, such as `choke crash at 1`";
            case "open" -> "open PART at COUNTS, such as `open hihat at 4&`";
            case "crescendo", "diminuendo" -> "`" + word + " to f from 1 in bar 2 to 1 in bar 4`";
            default -> null;
          };
    }
    return shape == null ? null : "It is written " + shape;
  }
}
