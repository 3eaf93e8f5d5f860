package tabor.lsp;

import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;

/** Tells the client how far long work has come, if it wants to know. */
final class Progress {
  private final Client client;
  private final @Nullable Either<String, Integer> token;
  private boolean ended;

  private Progress(Client client, @Nullable Either<String, Integer> token) {
    this.client = client;
    this.token = token;
  }

  /** Begins, under the client's own token if it gave one. */
  static Progress begin(Session session, @Nullable Either<String, Integer> given, String title) {
    Either<String, Integer> token = given;
    if (token == null && session.capabilities().has("window", "workDoneProgress")) {
      token = Either.forLeft("tabor-" + System.nanoTime());
      session.client().createProgress(token.getLeft());
    }
    Progress progress = new Progress(session.client(), token);
    if (token != null) {
      WorkDoneProgressBegin begin = new WorkDoneProgressBegin();
      begin.setTitle(title);
      begin.setCancellable(true);
      begin.setPercentage(0);
      progress.client.progress(token, begin);
    }
    return progress;
  }

  /** Says what is being done. */
  void report(String message, int percent) {
    if (token != null) {
      WorkDoneProgressReport report = new WorkDoneProgressReport();
      report.setMessage(message);
      report.setPercentage(percent);
      client.progress(token, report);
    }
  }

  /** Ends; a second time does nothing. */
  void end(String message) {
    if (token != null && !ended) {
      ended = true;
      WorkDoneProgressEnd end = new WorkDoneProgressEnd();
      end.setMessage(message);
      client.progress(token, end);
    }
  }
}
