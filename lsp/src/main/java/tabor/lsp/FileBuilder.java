package tabor.lsp;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.ExecuteCommandParams;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.lsp.Scheduler.Lane;

/**
 * Builds a lesson's files, as the lesson was when that was asked for: further edits neither wait
 * for it nor change what comes of it. The person can stop it; what is written by then is whole.
 */
record FileBuilder(Session session) {
  /**
   * Builds into a folder.
   *
   * @param word the folder: a path beside the file, or a URI
   * @return the names of the files that were built
   */
  CompletableFuture<?> build(
      OpenDocument document, ExecuteCommandParams params, String word, List<Form> forms) {
    if (!document.onDisk()) {
      throw Requests.refused("Save the file first: what is built is put beside it");
    }
    OutputFolder folder = folder(document, word);
    CompletableFuture<RunningWork.Progress> told = new CompletableFuture<>();
    CompletableFuture<Object> work =
        session
            .requests()
            .inFile(Lane.BUILDING, document, file -> write(file, folder, forms, told.join()));
    String title = "Building " + document.path().getFileName();
    told.complete(session.work().begin(session, params.getWorkDoneToken(), work, title));
    return work;
  }

  private List<String> write(
      FileContext file, OutputFolder folder, List<Form> forms, RunningWork.Progress progress) {
    if (file.compiled().hasErrors()) {
      throw Requests.refused("This lesson has errors: fix them first");
    }
    List<String> written = new ArrayList<>();
    try {
      folder.make();
      for (int i = 0; i < forms.size(); i++) {
        List<Output> outputs = forms.get(i).outputs(file.compiled().lesson(), BuildOptions.ALL);
        for (int k = 0; k < outputs.size(); k++) {
          Output output = outputs.get(k);
          file.wanted().check();
          int percent =
              (int)
                  (100L * (i * (long) outputs.size() + k) / (forms.size() * (long) outputs.size()));
          progress.report(output.name(), percent);
          byte[] bytes = output.bytes().get();
          session.work().write(() -> folder.write(output.name(), bytes));
          written.add(output.name());
        }
      }
      return written;
    } catch (IOException e) {
      throw Requests.refused("Cannot write into " + folder.path() + ": " + e.getMessage());
    }
  }

  private OutputFolder folder(OpenDocument document, String word) {
    try {
      Path folder =
          Uris.path(word).orElseGet(() -> document.path().resolveSibling(word).normalize());
      return new OutputFolder(session.workspace().rootOf(document.path()), folder);
    } catch (InvalidPathException e) {
      throw Requests.refused("Not a folder: " + word);
    }
  }
}
