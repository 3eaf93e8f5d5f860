;;; company.el --- Every example typed with company: run by company.sh -*- lexical-binding: t; -*-

(require 'eglot)
(require 'company)
(require 'tabor-mode)

(defvar passed 0)
(defvar failed 0)

(defun check (what good &optional detail)
  (if good (setq passed (1+ passed))
    (setq failed (1+ failed))
    (princ (format "FAILED: %s %S\n" what (or detail "")))))

;; Company waits for an idle moment before it asks; without a screen there is none, so it is told to.
(setq company-idle-delay 0
      company-minimum-prefix-length 1
      company-frontends nil
      company-backends '(company-capf)
      company-require-match nil
      eglot-sync-connect 30
      eglot-autoreconnect nil)

(defun run-key (command)
  "Run COMMAND as the command loop does."
  (setq this-command command)
  (run-hooks 'pre-command-hook)
  (setq this-command (or this-command command))
  (call-interactively this-command)
  (run-hooks 'post-command-hook)
  (setq last-command this-command))

(defun offer ()
  "What company does after a moment without a key."
  (company-cancel)
  (let ((this-command 'self-insert-command))
    (company-idle-begin (current-buffer) (selected-window) (buffer-chars-modified-tick) (point))))

(defun type-char (char)
  (setq last-command-event char)
  (run-key #'self-insert-command))

(defun type-enter ()
  (setq last-command-event ?\C-m)
  (run-key (or (and company-candidates (lookup-key company-active-map (kbd "RET")))
               (key-binding (kbd "RET")))))

(defun type-line (line last)
  "LINE letter by letter; indentation that the editor made is kept where it is wanted."
  (let ((wanted (- (length line) (length (string-trim-left line)))))
    (when (or last (not (string-empty-p line)))
      (while (> (current-column) wanted) (delete-char -1)))
    (when (> (length line) (current-column))
      (let ((rest (substring line (current-column))))
        (dotimes (i (length rest))
          (type-char (aref rest i))
          ;; A person stops at the ends of words, and there a list may show up.
          (when (or (= (1+ i) (length rest)) (eq (char-syntax (aref rest (1+ i))) ?\s))
            (offer)))))))

(defun type-lesson (file)
  (let* ((text (with-temp-buffer (insert-file-contents file) (buffer-string)))
         (lines (split-string text "\n"))
         (count (length lines))
         typed)
    (find-file file)
    (erase-buffer)
    (eglot--maybe-activate-editing-mode)
    (company-mode 1)
    (let ((i 0))
      (dolist (line lines)
        (setq i (1+ i))
        (type-line line (= i count))
        (when (< i count) (type-enter))))
    (setq typed (buffer-string))
    (check file (equal typed text)
           (let ((pairs (cl-mapcar #'cons lines (split-string typed "\n"))))
             (cl-find-if (lambda (pair) (not (equal (car pair) (cdr pair)))) pairs)))
    (set-buffer-modified-p nil)
    (kill-buffer)))

(condition-case problem
    (let ((files (directory-files-recursively (getenv "TABOR_WORK") "\\.tabor\\'"))
          (first (expand-file-name "first.tabor" (getenv "TABOR_WORK"))))
      (setq tabor-server (list (getenv "TABOR_SERVER")))
      (with-temp-file first (insert "groove a\n"))
      (find-file first)
      (apply #'eglot--connect (eglot--guess-contact))
      (eglot--maybe-activate-editing-mode)
      (company-mode 1)
      ;; The server offers something, or nothing below would mean anything.
      (goto-char (point-max))
      (mapc #'type-char "  hi")
      (offer)
      (check "a list shows up" (member "hihat" company-candidates) company-candidates)
      (type-enter)
      (check "and Enter takes from it" (string-match-p "  hihat\\'" (buffer-string)) (buffer-string))
      (mapc #'type-lesson files)
      (with-current-buffer (find-buffer-visiting first) (set-buffer-modified-p nil))
      (eglot-shutdown (eglot-current-server)))
  (error (setq failed (1+ failed))
         (princ (format "FAILED: %S\n" problem))))

(princ (format "%d passed, %d failed\n" passed failed))
(kill-emacs (if (= failed 0) 0 1))
;;; company.el ends here
