package tabor.emit.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import tabor.kit.Limb;

/** What every page has: script, style, desk and the list of keys. */
final class Furniture {
  /** The one script, in a block of its own names. */
  static final String SCRIPT =
      "\n\"use strict\";\n"
          + resource("ui.js")
          + resource("sounds.js")
          + resource("shelf.js")
          + resource("timeline.js")
          + resource("desk.js")
          + resource("bead.js")
          + resource("player.js")
          + resource("practice.js")
          + resource("bigview.js")
          + resource("keys.js")
          + resource("controls.js")
          + resource("page.js");

  /** The one style sheet. */
  static final String STYLE = "\n" + resource("page.css");

  private static final String DESK = resource("desk.html");

  /** What the keys do; the last line switches the letters and digits off. */
  static final String KEYS =
      """
      <details class="keys">
      <summary>Keys</summary>
      <dl>
      <div><dt><kbd>space</kbd></dt><dd>play or stop</dd></div>
      <div><dt><kbd>←</kbd> <kbd>→</kbd></dt><dd>the section before, the section after</dd></div>
      <div><dt><kbd>+</kbd> <kbd>−</kbd></dt><dd>one beat per minute faster, slower</dd></div>
      <div><dt><kbd>0</kbd></dt><dd>the written tempo</dd></div>
      <div><dt><kbd>1</kbd> <kbd>2</kbd></dt><dd>left hand, right hand on or off</dd></div>
      <div><dt><kbd>3</kbd> <kbd>4</kbd></dt><dd>left foot, right foot on or off</dd></div>
      <div><dt><kbd>n</kbd> <kbd>l</kbd> <kbd>c</kbd></dt><dd>count-in, loop, click on or off</dd></div>
      <div><dt><kbd>t</kbd></dt><dd>tap the tempo</dd></div>
      <div><dt><kbd>f</kbd></dt><dd>big view and back</dd></div>
      <div><dt><kbd>esc</kbd></dt><dd>leave the big view; else stop</dd></div>
      </dl>
      <p><label><input type="checkbox" id="KeysOn" checked> Letters and digits work as keys</label></p>
      </details>
      """;

  private Furniture() {}

  /** The player at the foot of the window; the limbs stand as the player sees them. */
  static String desk(String icon, List<Limb> limbs) {
    StringBuilder switches = new StringBuilder();
    for (Limb limb : List.of(limbs.get(1), limbs.get(0), limbs.get(3), limbs.get(2))) {
      switches
          .append("<label class=\"switch\"><input type=\"checkbox\" checked data-limb=\"")
          .append(limb.ordinal())
          .append("\"><span>")
          .append(limb.words())
          .append("</span></label>\n");
    }
    return DESK.formatted(icon, switches);
  }

  /** The source expression by which a policy allows exactly this text. */
  static String hash(String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] sum = digest.digest(text.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(sum);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java has it
    }
  }

  static String resource(String name) {
    try (InputStream in = Furniture.class.getResourceAsStream(name)) {
      byte[] bytes = Objects.requireNonNull(in, name).readAllBytes();
      // As a browser reads it, whatever line ends the sources were checked out with.
      return new String(bytes, StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
