;;; tabor-mode.el --- Tabor, the groove notation for the drum kit -*- lexical-binding: t; -*-

;; Put this file on the load path and say (require 'tabor-mode).
;; Needs Emacs 26.3 or later; the language client is Eglot (built in from Emacs 29).

;;; Code:

(defgroup tabor nil "The Tabor groove notation." :group 'languages)

(defcustom tabor-server '("tabor-lsp")
  "The command that starts the language server, as a list of strings."
  :type '(repeat string))

(defvar tabor-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?' "." table)
    table))

(defvar tabor-mode-font-lock
  `((,(rx bol (* blank) (group (or "groove" "step" "chart" "pattern" "kit")) symbol-end
          (? (+ blank) (group (+ (any "a-z0-9-")))))
     (1 font-lock-keyword-face) (2 font-lock-function-name-face nil t))
    (,(rx symbol-start
          (or "play" "plays" "split" "between" "add" "drop" "accent" "ghost" "plain" "double" "triple"
              "flam" "drag" "ruff" "buzz" "diddle" "choke" "open" "rimshot" "follows" "move" "shift"
              "swap" "only" "take" "fill" "at" "in" "from" "to" "where" "every")
          symbol-end)
     . font-lock-builtin-face)))

;;;###autoload
(define-derived-mode tabor-mode prog-mode "Tabor"
  "Major mode for Tabor lessons."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local font-lock-defaults '(tabor-mode-font-lock)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.tabor\\'" . tabor-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs (cons 'tabor-mode (lambda (&rest _) tabor-server))))

(provide 'tabor-mode)
;;; tabor-mode.el ends here
