package tabor.emit.html;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tabor.kit.Limb;
import tabor.source.ResourceText;
import tabor.words.Words;

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
  private static final String KEYS =
      """
      <details class="keys">
      <summary>[[title]]</summary>
      <dl>
      <div><dt><kbd>[[space]]</kbd></dt><dd>[[play]]</dd></div>
      <div><dt><kbd>←</kbd> <kbd>→</kbd></dt><dd>[[walk]]</dd></div>
      <div><dt><kbd>+</kbd> <kbd>−</kbd></dt><dd>[[nudge]]</dd></div>
      <div><dt><kbd>0</kbd></dt><dd>[[written]]</dd></div>
      <div><dt><kbd>1</kbd> <kbd>2</kbd></dt><dd>[[hands]]</dd></div>
      <div><dt><kbd>3</kbd> <kbd>4</kbd></dt><dd>[[feet]]</dd></div>
      <div><dt><kbd>n</kbd> <kbd>l</kbd> <kbd>c</kbd></dt><dd>[[switches]]</dd></div>
      <div><dt><kbd>t</kbd></dt><dd>[[tap]]</dd></div>
      <div><dt><kbd>f</kbd></dt><dd>[[big]]</dd></div>
      <div><dt><kbd>[[escape]]</kbd></dt><dd>[[leave]]</dd></div>
      </dl>
      <p><label><input type="checkbox" id="KeysOn" checked> [[letters]]</label></p>
      </details>
      """;

  /** Of scripts and style sheets, which are the same on all pages. */
  private static final Map<String, String> HASHES = new ConcurrentHashMap<>();

  private Furniture() {}

  /** The player at the foot of the window; the limbs stand as the player sees them. */
  static String desk(Words words, String icon, List<Limb> limbs) {
    StringBuilder switches = new StringBuilder();
    for (Limb limb : List.of(limbs.get(1), limbs.get(0), limbs.get(3), limbs.get(2))) {
      switches
          .append("<label class=\"switch\"><input type=\"checkbox\" checked data-limb=\"")
          .append(limb.ordinal())
          .append("\"><span>")
          .append(Markup.text(words.limb(limb)))
          .append("</span></label>\n");
    }
    return filled(DESK, "desk.", words)
        .replace("[[=icon]]", icon)
        .replace("[[=limbs]]", switches.toString());
  }

  /** What the keys do. */
  static String keys(Words words) {
    return filled(KEYS, "keys.", words);
  }

  /**
   * A text with words of a language in place of their keys between double brackets; what begins
   * with an equals sign there stays.
   */
  private static String filled(String text, String prefix, Words words) {
    StringBuilder filled = new StringBuilder();
    int at = 0;
    for (int from = text.indexOf("[["); from >= 0; from = text.indexOf("[[", at)) {
      int to = text.indexOf("]]", from);
      String key = text.substring(from + 2, to);
      filled.append(text, at, from);
      filled.append(
          key.startsWith("=") ? "[[" + key + "]]" : Markup.text(words.text(prefix + key)));
      at = to + 2;
    }
    return filled.append(text.substring(at)).toString();
  }

  /**
   * The head of a page, which may load nothing and runs nothing but what is in it.
   *
   * @param script what of its policy speaks of scripts; empty where there is none
   */
  static String head(String title, Words words, String script, String style) {
    return "<!DOCTYPE html>\n<html lang=\""
        + words.language().word()
        + "\">\n<head>\n<meta charset=\"utf-8\">\n"
        + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
        + script
        + "style-src '"
        + hash(style)
        + "'; base-uri 'none'; form-action 'none'\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        + "<meta name=\"color-scheme\" content=\"light dark\">\n"
        + "<meta name=\"referrer\" content=\"no-referrer\">\n"
        + "<meta name=\"generator\" content=\"Tabor\">\n<title>"
        + Markup.text(title)
        + "</title>\n<style>"
        + style
        + "</style>\n</head>\n";
  }

  /** The source expression by which a policy allows exactly this text, one of few. */
  static String hash(String text) {
    return HASHES.computeIfAbsent(text, Furniture::hashed);
  }

  private static String hashed(String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] sum = digest.digest(text.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(sum);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java has it
    }
  }

  static String resource(String name) {
    return ResourceText.of(Furniture.class, name);
  }
}
