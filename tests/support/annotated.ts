/**
 * Fixtures whose lines of carets also name the finding (places alone: marked.ts): the carets mark a range of
 * the line above, then comes the finding's name and, after a colon, a piece of its message. Findings too few
 * and too many both fail.
 *
 *     removee cover
 *     ^^^^^^^ unknown-verb: did you mean “remove”
 */

export interface Mark {
  start: number;
  end: number;
  check: string;
  /** A piece of the message; empty where the fixture does not say. */
  says: string;
}

export interface Annotated {
  /** The text without its lines of carets. */
  text: string;
  marks: Mark[];
}

const CARETS = /^(\s*)(\^+)\s*([a-z-]*)\s*(?::\s*(.*))?$/;

export function annotated(fixture: string): Annotated {
  const lines: string[] = [];
  const marks: Mark[] = [];
  let lineStart = 0;
  let nextStart = 0;
  for (const line of fixture.replace(/^\n/, '').split('\n')) {
    const found = CARETS.exec(line);
    if (found && lines.length > 0) {
      const start = lineStart + found[1]!.length;
      marks.push({ start, end: start + found[2]!.length, check: found[3]!, says: found[4] ?? '' });
      continue;
    }
    lineStart = nextStart;
    nextStart += line.length + 1;
    lines.push(line);
  }
  return { text: lines.join('\n'), marks };
}

interface Found {
  start: number;
  end: number;
  check: string;
  message: string;
}

/** Marks and findings as comparable lines: `3:5 “cover” unknown-verb`, ordered by place. */
export function asLines(text: string, found: readonly (Mark | Found)[]): string[] {
  return [...found]
    .sort((a, b) => a.start - b.start || a.end - b.end || (a.check < b.check ? -1 : 1))
    .map((one) => {
      const before = text.slice(0, one.start).split('\n');
      const covered = JSON.stringify(text.slice(one.start, one.end));
      return `${before.length}:${before[before.length - 1]!.length + 1} ${covered} ${one.check}`;
    });
}

/** The messages that lack what their mark says, with what they say instead. */
export function unsaid(marks: readonly Mark[], found: readonly Found[]): string[] {
  const lacking: string[] = [];
  for (const mark of marks) {
    const message = found.find(
      (one) => one.start === mark.start && one.end === mark.end && one.check === mark.check,
    )?.message;
    if (message !== undefined && !message.includes(mark.says))
      lacking.push(`${message} (wanted: ${mark.says})`);
  }
  return lacking;
}
