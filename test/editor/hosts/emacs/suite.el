;;; What a recipe gets in Emacs from eglot, set up by the very lines of the README: findings, hover, completion, rename and a code
;;; action. It runs inside `emacs --batch' and leaves its results in the file that emacs.ts names.  -*- lexical-binding: t -*-

(require 'package)
(package-initialize)
(require 'json)
(load (getenv "TIDEMARK_SETUP") nil t)
(require 'flymake)

(setq eglot-send-changes-idle-time 0
      eglot-confirm-server-initiated-edits nil
      eglot-confirm-server-edits nil
      create-lockfiles nil
      make-backup-files nil)

(find-file "stairwell.grow.yaml")
;; The hook that waits for the first command; in a batch nobody gives one.
(run-hooks 'post-command-hook)

(defvar sound (buffer-string))

(defun put-back ()
  (erase-buffer)
  (insert sound)
  (eglot--signal-textDocument/didChange))

(defun go-to (part)
  "Goes to the beginning of PART, which stands in the recipe exactly once."
  (goto-char (point-min))
  (search-forward part)
  (let ((found (match-beginning 0)))
    (when (search-forward part nil t) (error "%s stands in the recipe more than once" part))
    (goto-char found)))

(defun replace-once (from to)
  (go-to from)
  (delete-char (length from))
  (insert to)
  (eglot--signal-textDocument/didChange))

(defun until (what so)
  (let ((end (+ (float-time) 8)) (is nil))
    (while (and (not (setq is (funcall so))) (< (float-time) end))
      (accept-process-output nil 0.05))
    (unless is (error "not so: %s" what))
    is))

(defun found (part)
  "The finding whose text names PART, if there is one."
  (flymake-start)
  (seq-find (lambda (one) (string-match-p (regexp-quote part) (flymake-diagnostic-text one)))
            (flymake-diagnostics)))

(defun contains (whole part)
  (unless (string-match-p (regexp-quote part) whole) (error "%s is not in: %s" part whole)))

(defvar tests
  `(("the README's lines start the server"
     . ,(lambda () (until "a server manages the recipe" #'eglot-current-server)))
    ("a misspelt name is found, and gone when it is put right"
     . ,(lambda ()
          (replace-once "water: cistern" "water: cistren")
          (until "it is found" (lambda () (found "cistren")))
          (put-back)
          (until "it is gone" (lambda () (not (found "cistren"))))))
    ("hover on a dose tells its amount for the batch"
     ;; 12 L at the label's 2 mL/L.
     . ,(lambda ()
          (go-to "meadow: label")
          (let (said)
            (eglot-hover-eldoc-function (lambda (text &rest _) (setq said text)))
            (contains (until "there is a hover" (lambda () said)) "24 mL"))))
    ("completion offers the names that may stand there"
     . ,(lambda ()
          (replace-once "water: cistern" "water: cis")
          (let ((offered (all-completions "cis" (nth 2 (eglot-completion-at-point)))))
            (unless (member "cistern" (mapcar #'string-trim offered)) (error "offered: %S" offered)))
          (put-back)))
    ("rename changes a name wherever it stands"
     . ,(lambda ()
          (go-to "cistern\n    volume")
          ;; It asks before it changes a file that is not open.
          (cl-letf (((symbol-function 'y-or-n-p) #'always)) (eglot-rename "roof"))
          (contains (buffer-string) "  roof:\n    pH: 7.4")
          (contains (buffer-string) "water: roof")
          (put-back)))
    ("a code action puts a misspelt key right"
     . ,(lambda ()
          (replace-once "volume: 12 L" "volme: 12 L")
          (let ((finding (until "it is found" (lambda () (found "volme")))))
            (eglot-code-actions (flymake-diagnostic-beg finding) (flymake-diagnostic-end finding) "quickfix" t))
          (unless (equal (buffer-string) sound) (error "the recipe is now: %s" (buffer-string)))))))

(defun result-of (test)
  (let ((started (float-time)) (failure nil))
    (condition-case problem
        (funcall (cdr test))
      (error
       (setq failure (error-message-string problem))
       (ignore-errors (put-back))))
    (append `((name . ,(car test)) (milliseconds . ,(round (* 1000 (- (float-time) started)))))
            (when failure `((failure . ,failure))))))

(let ((results (vconcat (mapcar #'result-of tests))))
  (with-temp-file (getenv "TIDEMARK_RESULTS") (insert (json-encode results))))
(set-buffer-modified-p nil)
(kill-emacs 0)
