"""The exit codes of the command, and what each says."""

from __future__ import annotations

READY, CRASHED, USAGE, REJECTED, HELD, NOT_PROVED, FAILED, INTERRUPTED = 0, 1, 2, 3, 4, 5, 6, 130
EXIT_CODES = {
    READY: "Every load is ready, and the plan is proved.",
    CRASHED: "The program crashed.",
    USAGE: "The command line is wrong, or there is no such file.",
    REJECTED: "The day workbook is rejected; nothing was written.",
    HELD: "At least one load is held, everything is proved; results were written.",
    NOT_PROVED: "Something is not proved within the time limit; results were written, marked.",
    FAILED: "The solver failed, the judgement disagreed or saving failed; nothing was written.",
    INTERRUPTED: "Interrupted; nothing was written.",
}
