package tabor.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Runs the usual commands once on a small lesson and throws the results away. The build records the
 * classes of this run in an archive that later starts read instead of the jar.
 */
final class Rehearsal {
  private Rehearsal() {}

  /** A lesson without errors that uses most of the notation. */
  static final String FINE =
      """
      title "Rehearsal"
      by "Nobody"
      goal "Even"
      log 7 days
      teacher "Nothing."
      say fours e & a
      page 4 bars a line
      time 4/4
      tempo quarter = 92
      feel swing eighths 60%
      levels ghost 30 plain 78 accent 115
      show counts sticking
      on mine
      kit mine like four-piece
        surface gong  letter g  key 52  staff a5  head x
        without tom2  plays floor
        place gong 60 cm 50 degrees right 55 cm high
      player one "One"
        on junior
        left-handed
        open-handed
        tempo 80%
        sections beat to few
        limits hands 6 to 9
        text "The [right] hand."
      pattern six : RlrrLl
      groove six-eight
        time 6/8
        tempo 60
        pickup 1 beat
        hands : rlr | Rlrrll r.l'r | % | rlr:2
        left foot : . | p p | p p | p p
      groove roll
        hands play six in triplets
      groove beat "A beat"
        hihat : rr rr rrrr rr=
        snare : . l {ll}. l
        ostinato kick : x . .x .
        text "Prose."
      sheet many-kicks "Kicks" from beat
        each add kick at 1& 2
        each kick : x . x . | x x . .
          and snare : . x . x | . . x .
      step up "Up"
        right plays ride
        ghost left at 2
        add kick at 2&
        split left between snare and tom1 at 4
        buzz left at 2
        kick follows right at 3&
        rimshot left at 3
        diddle right at every & in bar 1
        hihat.foot : x . x .
        drop hihat.foot
      step many "Many" from beat
        bars 4
        drop hihat at every & in bar 2
        accent hands at 1 to 2& in bars 1 to 3
        double right at 1 in last bar
        triple right at 2 in bars 1 3
        move kick from 1 to 1& in every 2nd bar
        fill roll in bar 4 from 3
        take feet from beat in bar 3
        plain hands at 1
        swap hands
        shift hands later by 1 eighth
        dynamic p
        crescendo to f from 1 to 4
      step few
        only hands
        bars 2
      groove lines
        line : rlkk rlkk rlrl kkR.
        feet : . . r l
      groove lead
        right plays hihat
        hands play double-paradiddle left-lead in triplets
        kick play spread 3 over 8 in eighths
      groove odd
        time 7/8 in 2+2+3
        hands : 'rl rl rlr
        crash : . . x
        choke crash at 3
      chart c
        tempo 80
        count-in 1 bar
        click quarters
        play up few 2 times at tempo 70
        rest 1 bar
        climb beat from 60 to 80 by 10 every 2 times
        mark "A"
        cue "Look" in bar 1
        click at 2 4
        play many-kicks each 1 times
        click 2 bars on 1 off
        dynamic f
        trade beat 1 bar 2 times
        play beat 4 bars without hands fill lines
        tempo 80 to 60 over 2 bars
        play beat for 30 seconds
        rest 10 seconds
        hold 4 beats
      """;

  private static final String BROKEN =
      FINE
          + """
          groove broken
            hands : rl rl rlr
            hnads : r
          groove quick
            hands : rlrl rlrl rlrl rlrl
            kick : x . xx xxxx
          step quicker
            accent left at 2a 3.2/3
            ghost hands at every a where accented
          chart fast
            climb quick from 60 to 380 by 40 every 2 times
            play roll at tempo 400
          """;

  /** Takes from the lesson beside it. */
  private static final String TAKING =
      """
      use "fine.tabor"
      on mine
      kit other like mine
        letter q = gong
      groove own
        hands play six in sixteenths
      step taken from beat
        take kick from many
        add gong at 4&
      """;

  private static final String PAGE =
      """
      # Page

      | a | b |
      | --- | --- |
      | `tabor: rlrr lrll` | [link](page.md) |

      ```tabor as=player file=fine.tabor section=beat,up
      ```

      ```tabor as=player file=fine.tabor caption="All of it"
      ```

      ```tabor
      pattern idle : rl
      groove beat
        snare : x . x .
      ```

      ```tabor as=both counts
      groove beat
        snare : x . x .
      ```
      """;

  /**
   * Runs the commands; always ends well.
   *
   * @param args {@code all}, or {@code check}, {@code build} or {@code weave} to run nothing else;
   *     then a folder of lessons such as people write, which need not be there
   */
  public static void main(String[] args) throws IOException {
    String part = args.length == 0 ? "all" : args[0];
    boolean all = part.equals("all");
    String lessons = args.length > 1 && Files.isDirectory(Path.of(args[1])) ? args[1] : null;
    Path folder = Files.createTempDirectory("tabor");
    try {
      Main.prepare();
      Io.ofProcess();
      Files.writeString(folder.resolve("rehearsal.tabor"), BROKEN);
      Files.writeString(folder.resolve("fine.tabor"), FINE);
      Files.writeString(folder.resolve("taking.tabor"), TAKING);
      if (all || part.equals("weave")) {
        weave(folder);
      }
      if (all || part.equals("build")) {
        build(folder, lessons);
      }
      if (all || part.equals("check")) {
        check(folder, lessons);
      }
      if (all) {
        others(folder, lessons);
      }
    } finally {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  /** Once all of it, once nothing, once what has changed. */
  private static void weave(Path folder) throws IOException {
    Path page = Files.writeString(folder.resolve("page.md"), PAGE);
    Path pages = Files.createDirectory(folder.resolve("pages"));
    Path out = folder.resolve("out");
    Files.writeString(pages.resolve("fine.tabor"), FINE);
    for (String more : List.of("", "", "One more.\n")) {
      Files.writeString(page, PAGE + more);
      Files.writeString(pages.resolve("page.md"), PAGE + more);
      run("", "weave", page.toString(), "-o", out.toString());
      run("", "weave", pages.toString(), "-o", out.resolve("pages").toString());
    }
  }

  private static void build(Path folder, @Nullable String lessons) throws IOException {
    Path fine = folder.resolve("fine.tabor");
    String out = folder.resolve("out").toString();
    for (String more : List.of("", "", "# One more.\n")) {
      Files.writeString(fine, FINE + more);
      run("", "build", fine.toString(), "-o", out);
      run("", "build", folder.toString(), "-o", out);
    }
    if (lessons != null) {
      run("", "build", lessons, "-o", out);
    }
  }

  private static void check(Path folder, @Nullable String lessons) {
    for (String name : List.of("rehearsal.tabor", "fine.tabor", "taking.tabor")) {
      run("", "check", folder.resolve(name).toString());
    }
    if (lessons != null) {
      run("", "check", lessons);
    }
  }

  private static void others(Path folder, @Nullable String lessons) {
    String all = lessons == null ? folder.toString() : lessons;
    String fine = folder.resolve("fine.tabor").toString();
    Path out = folder.resolve("out");
    run(BROKEN, "check", "--hints", "--report", "json", "-");
    run(BROKEN, "explain", "bar-length");
    run(BROKEN, "--help");
    run(FINE, "list", "-");
    run(FINE, "grid", "-");
    run(FINE, "build", "-", "--as", "all", "-o", out.toString());
    run("", "format", "--check", fine);
    run("", "diff", fine, folder.resolve("rehearsal.tabor").toString());
    run("", "find", all, "--plays", "paradiddle", "--like", fine, "beat");
    run("", "find", all, "--as", "html");
    run("", "overview", all, "-o", out.resolve("term.html").toString());
  }

  private static void run(String source, String... words) {
    Main.run(
        words,
        Io.of(
            new ByteArrayInputStream(source.getBytes(StandardCharsets.UTF_8)),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream(),
            false,
            false,
            Map.of()));
  }
}
