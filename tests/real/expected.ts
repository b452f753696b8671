/**
 * Reads what a transcription says about itself: `// finds: left-off (01-1), covered (01-3)` at the end of a line
 * names the checks that must report that line, and the flaws of the published text that they are about.
 * `// later: …` names a flaw that no check is bound to find yet: a finding of that name is allowed there.
 * `// wrongly: …` names a report that is known to be false (flaw number 0: there is none). When the checker no
 * longer makes it, the test says so and the comment goes.
 */

export interface Expected {
  file: string;
  line: number;
  check: string;
  /** Case and number of the flaw, as listed where the case is described: `01-1`. */
  flaw: string;
}

export interface Expectations {
  finds: Expected[];
  later: Expected[];
  wrongly: Expected[];
  /** Comments that begin like an expectation and cannot be read as one. */
  unreadable: string[];
}

const COMMENT = /\/\/\s*(finds|later|wrongly):\s*(.*)$/;
const ONE = /^([a-z]+(?:-[a-z]+)*) \((\d\d-\d+)\)$/;

export function expectations(files: Readonly<Record<string, string>>): Expectations {
  const result: Expectations = { finds: [], later: [], wrongly: [], unreadable: [] };
  for (const [file, text] of Object.entries(files)) {
    text.split('\n').forEach((content, index) => {
      let rest = content;
      for (let found = COMMENT.exec(rest); found; found = COMMENT.exec(rest)) {
        const [list, ...others] = found[2]!.split(/(?=\/\/\s*(?:finds|later|wrongly):)/);
        for (const piece of list!.split(',')) {
          const one = ONE.exec(piece.trim());
          if (one) {
            result[found[1] as 'finds' | 'later' | 'wrongly'].push({
              file,
              line: index + 1,
              check: one[1]!,
              flaw: one[2]!,
            });
          } else result.unreadable.push(`${file}:${index + 1}: ${piece.trim()}`);
        }
        rest = others.join('');
      }
    });
  }
  return result;
}

/** The line, counted from 1, on which an offset stands. */
export function lineOf(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line++;
  return line;
}
