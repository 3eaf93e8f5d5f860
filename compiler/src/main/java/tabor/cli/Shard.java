package tabor.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tabor.weave.Names;

/**
 * One of several parts of the lessons, for machines that share the work. A lesson's part follows
 * from its name alone: lessons that come and go leave the others where they are.
 *
 * @param part from 1
 * @param of how many, 1 to 1000
 */
record Shard(int part, int of) {
  /** The part that a word such as {@code 2/8} names; no word means the whole. */
  static Shard of(@Nullable String word) {
    if (word == null) {
      return new Shard(1, 1);
    }
    Matcher matcher = Pattern.compile("([0-9]{1,4})/([0-9]{1,4})").matcher(word);
    if (matcher.matches()) {
      int part = Integer.parseInt(matcher.group(1));
      int of = Integer.parseInt(matcher.group(2));
      if (part >= 1 && part <= of && of <= 1000) {
        return new Shard(part, of);
      }
    }
    throw Failure.usage("--shard takes a part and how many there are, such as 2/8, not " + word);
  }

  /** Those of this part, in their order. */
  List<Path> of(List<Path> sources) {
    return of == 1 ? sources : sources.stream().filter(this::holds).toList();
  }

  private boolean holds(Path source) {
    String name = source.normalize().toString().replace('\\', '/');
    byte[] digest = Names.sha256(name.getBytes(StandardCharsets.UTF_8));
    long number = 0;
    for (int i = 0; i < 7; i++) {
      number = (number << 8) | (digest[i] & 0xff);
    }
    return number % of == part - 1;
  }
}
