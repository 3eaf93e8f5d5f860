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
    (modify-syntax-entry ?. "_" table)
    (modify-syntax-entry ?' "." table)
    table))

(defconst tabor-mode-lane "\\(?:[[:alnum:].-]\\)[ \t]*:\\([^#\"\n]*\\)"
  "What follows the colon of a part or a pattern.")

;; begin generated words
(defconst tabor-mode-surface-words
  '("hihat.splash"
    "snare.cross"
    "hihat.foot"
    "hihat.half"
    "hihat.open"
    "ride.bell"
    "cowbell"
    "crash2"
    "splash"
    "china"
    "crash"
    "floor"
    "hihat"
    "snare"
    "kick"
    "ride"
    "tom1"
    "tom2"))
(defconst tabor-mode-heading-words
  '("pattern"
    "groove"
    "player"
    "chart"
    "sheet"
    "step"
    "kit"))
(defconst tabor-mode-limb-words
  '("hands"
    "right"
    "feet"
    "foot"
    "hand"
    "left"
    "line"
    "all"))
(defconst tabor-mode-level-words
  '("accented"
    "ghosted"
    "accent"
    "ghost"
    "plain"))
(defconst tabor-mode-value-words
  '("sixteenth-triplets"
    "sixteenth-triplet"
    "dotted-sixteenth"
    "quarter-triplets"
    "quarter-triplet"
    "dotted-quarter"
    "thirty-seconds"
    "dotted-eighth"
    "thirty-second"
    "dotted-half"
    "quintuplets"
    "no-changes"
    "quintuplet"
    "septuplets"
    "sixteenths"
    "septuplet"
    "sixteenth"
    "circle-x"
    "quarters"
    "sticking"
    "straight"
    "triangle"
    "triplets"
    "changes"
    "diamond"
    "doubles"
    "eighths"
    "quarter"
    "triplet"
    "counts"
    "eighth"
    "halves"
    "normal"
    "reach"
    "swing"
    "half"
    "none"
    "off"
    "as"
    "ff"
    "mf"
    "mp"
    "on"
    "pp"
    "f"
    "p"
    "x"))
(defconst tabor-mode-word-words
  '("left-handed"
    "open-handed"
    "ta-ka-di-mi"
    "diminuendo"
    "crescendo"
    "left-lead"
    "count-in"
    "language"
    "ostinato"
    "sections"
    "between"
    "columns"
    "degrees"
    "dynamic"
    "earlier"
    "follows"
    "grouped"
    "minutes"
    "rimshot"
    "seconds"
    "surface"
    "teacher"
    "through"
    "without"
    "column"
    "diddle"
    "double"
    "letter"
    "levels"
    "limits"
    "minute"
    "pickup"
    "second"
    "spread"
    "threes"
    "triple"
    "beats"
    "blank"
    "choke"
    "click"
    "climb"
    "every"
    "first"
    "fours"
    "large"
    "later"
    "place"
    "plays"
    "shift"
    "split"
    "staff"
    "tempo"
    "times"
    "title"
    "trade"
    "weeks"
    "where"
    "bars"
    "beat"
    "buzz"
    "days"
    "drag"
    "drop"
    "each"
    "feel"
    "fill"
    "flam"
    "from"
    "goal"
    "head"
    "high"
    "hold"
    "last"
    "like"
    "mark"
    "move"
    "next"
    "only"
    "open"
    "over"
    "page"
    "play"
    "rest"
    "roll"
    "ruff"
    "show"
    "swap"
    "take"
    "text"
    "time"
    "twos"
    "week"
    "with"
    "add"
    "and"
    "bar"
    "cue"
    "day"
    "for"
    "key"
    "log"
    "new"
    "say"
    "use"
    "a4"
    "at"
    "by"
    "cm"
    "de"
    "en"
    "es"
    "fr"
    "in"
    "of"
    "to"
    "a"
    "e"))
;; end generated words

(defun tabor-mode-words (words)
  "A pattern for whole WORDS: hyphens and dots are part of a name."
  (regexp-opt words 'symbols))

(defun tabor-mode-lane-rule (pattern face)
  "Colours PATTERN with FACE in the beats of a part."
  `(,tabor-mode-lane (,pattern (progn (goto-char (match-beginning 1)) (match-end 1)) nil (0 ,face t))))

(defvar tabor-mode-font-lock
  `((,(rx bol (* blank) (or "groove" "step" "sheet" "chart" "player" "pattern" "kit") (+ blank)
          (group (any "a-z") (* (any "a-z0-9-"))))
     (1 font-lock-function-name-face))
    ,@(mapcar (lambda (each) (list (tabor-mode-words (car each)) 0 (cdr each)))
              `((,tabor-mode-surface-words . font-lock-type-face)
                (,tabor-mode-heading-words . font-lock-keyword-face)
                (,tabor-mode-limb-words . font-lock-variable-name-face)
                (,tabor-mode-level-words . font-lock-preprocessor-face)
                (,tabor-mode-value-words . font-lock-constant-face)
                (,tabor-mode-word-words . font-lock-builtin-face)))
    ("\\_<[0-9]+\\(?:[ea&+]\\|[[:alpha:]][[:alpha:]'’-]*\\)?\\(?:\\.[0-9]+\\)*" . font-lock-constant-face)
    ,(tabor-mode-lane-rule "[a-z]" 'font-lock-string-face)
    ,(tabor-mode-lane-rule "[A-Z]" 'font-lock-warning-face)
    ,(tabor-mode-lane-rule "([^) \t|]*)" 'font-lock-doc-face)))

(defun tabor-mode-indent ()
  "Headings stand at the margin, what is below them two spaces in."
  (interactive)
  (indent-line-to
   (save-excursion
     (back-to-indentation)
     (cond ((looking-at (concat (regexp-opt tabor-mode-heading-words) "\\_>")) 0)
           ((re-search-backward (concat "^" (regexp-opt tabor-mode-heading-words) "\\_>") nil t) 2)
           (t 0)))))

;;;###autoload
(define-derived-mode tabor-mode prog-mode "Tabor"
  "Major mode for Tabor lessons."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2)
  (setq-local standard-indent 2)
  (setq-local indent-line-function #'tabor-mode-indent)
  (setq-local fill-column 100)
  (setq-local font-lock-defaults '(tabor-mode-font-lock)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.tabor\\'" . tabor-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs (cons 'tabor-mode (lambda (&rest _) tabor-server))))

(provide 'tabor-mode)
;;; tabor-mode.el ends here
