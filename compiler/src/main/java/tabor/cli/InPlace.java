package tabor.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ConcurrentMap;
import tabor.cli.DocumentFiles.Document;
import tabor.weave.Problem;
import tabor.weave.Style;
import tabor.weave.Weaver;
import tabor.weave.Woven;

/** The work of {@code tabor weave --in-place}: documents keep their text and get their pictures. */
final class InPlace {
  private final String pictures;
  private final boolean check;
  private final ConcurrentMap<PageLessons.Asked, PageLessons.Shared> lessons = PageLessons.store();

  /**
   * Weaving in place.
   *
   * @param pictures the picture folder, from the folder of the documents
   * @param check true to write nothing
   */
  InPlace(String pictures, boolean check) {
    this.pictures = pictures;
    this.check = check;
  }

  /**
   * What became of a document.
   *
   * @param document the document
   * @param stale the files that were not as they should be
   * @param problems what was noticed; with an error among it nothing was written
   */
  record Outcome(Document document, List<Path> stale, List<Problem> problems) {}

  /** Weaves every Markdown document; links are left alone. */
  List<Outcome> run(List<Document> documents, Progress progress) {
    List<Document> own =
        documents.stream().filter(d -> d.isMarkdown() && !Files.isSymbolicLink(d.path())).toList();
    return AllCores.map(own, this::one, progress, d -> d.path().toString());
  }

  private Outcome one(Document document) {
    try {
      byte[] content = Files.readAllBytes(document.path());
      String text = Weave.text(content);
      if (text == null) {
        return new Outcome(document, List.of(), List.of(Weave.notUtf8(document)));
      }
      Style style = new Style(document.up() + pictures + "/", true, link -> false);
      PageLessons found = new PageLessons(document.root(), lessons);
      Woven woven = Weaver.markdown(document.path(), text, found, style);
      List<Path> stale = new ArrayList<>();
      if (!woven.hasErrors()) {
        for (Woven.Shown shown : woven.files()) {
          put(document.root(), pictures + "/" + shown.name(), shown.bytes(), stale);
        }
        byte[] bytes = woven.text().getBytes(StandardCharsets.UTF_8);
        put(document.root(), document.name(), bytes, stale);
      }
      return new Outcome(document, stale, woven.problems());
    } catch (IOException e) {
      throw Failure.outside(document.path() + " cannot be read: " + SourceReader.reason(e));
    }
  }

  private void put(Path root, String name, byte[] bytes, List<Path> stale) throws IOException {
    Path folder = root.toString().isEmpty() ? Path.of(".") : root;
    Path file = folder.resolve(name);
    if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), bytes)) {
      stale.add(file);
    }
    if (!check) {
      OutputFiles.write(SafeFolder.file(folder, name), bytes);
    }
  }
}
