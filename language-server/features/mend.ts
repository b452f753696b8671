/**
 * Mends: changes to a procedure after which a finding is gone and nothing new is wrong. Every mend was checked
 * before it is offered, so that none undoes what is right; where nothing clean is found there is none. Pure
 * but for the host that gives the texts.
 */
import { formatRange } from '../../grammar/format/format.ts';
import type { SourceHost } from '../project/project.ts';
import type { Finding, Mend } from '../report/finding.ts';
import { changedSpan, edited } from './mend-edits.ts';
import { editsBetween } from './mend-lines.ts';
import { counts, keyOf, type Mended, search } from './mend-search.ts';
import { titleOf } from './mend-words.ts';
import { Trial, type Tried } from './trial.ts';

/** So many texts are tried for one finding. */
const LIMIT = 80;
/** In a long file fewer, so that a mend never takes much longer than reading a few MB. */
const MOST_READ = 8_000_000;
const FEWEST = 8;
/** Findings that are tried once more after others were mended. */
const MOST_RETRIES = 12;
/** So many mends are offered for one finding. */
const OFFERED = 3;

/**
 * Mends for one finding of a file, best first: those that leave fewest findings, then those most natural to
 * the trade. Empty where none is known. The finding must be one that the checker gives for this text.
 * A trial of the same file can be given again, as long as the files that it uses are the same.
 */
export function mendsFor(
  host: SourceHost,
  path: string,
  finding: Finding,
  trial: Trial = new Trial(host, path),
): Mend[] {
  const text = host.read(path);
  if (text === undefined) return [];
  const base = trial.check(text);
  const found = search(trial, base, finding, { limit: limitFor(text), most: OFFERED });
  return found.map((mended) => {
    const after = laidOut(trial, base, mended);
    return {
      title: mended.title ?? titleOf(base, after),
      edits: editsBetween(text, after.text).map((edit) => ({ file: path, ...edit })),
    };
  });
}

export interface MendedFile {
  text: string;
  /** Findings that were mended, in the order of mending, each with what was done. */
  mended: { finding: Finding; title: string }[];
  /** Errors and warnings that are left. */
  left: Finding[];
  /** How many texts were checked: the measure of work. */
  tries: number;
}

/** Mends a file as far as it can be: the best mend of one finding after the other, each checked. */
export function mendFile(host: SourceHost, path: string): MendedFile {
  const trial = new Trial(host, path);
  let now = trial.check(host.read(path) ?? '');
  const mended: MendedFile['mended'] = [];
  /** Findings that could not be mended, with the number of mends made by then. */
  const failed = new Map<string, number>();
  let retries = MOST_RETRIES;
  for (;;) {
    const open = causesFirst(now.findings.filter(counts));
    let finding = open.find((one) => !failed.has(keyOf(one)));
    if (!finding && retries > 0) {
      // What could not be mended before others were may be now.
      finding = open.find((one) => failed.get(keyOf(one))! < mended.length);
      retries--;
    }
    if (!finding) return { text: now.text, mended, left: now.findings.filter(counts), tries: trial.tries };
    const [best] = search(trial, now, finding, { limit: limitFor(now.text), most: Number.POSITIVE_INFINITY });
    if (!best) {
      failed.set(keyOf(finding), mended.length);
      continue;
    }
    const after = laidOut(trial, now, best);
    mended.push({ finding, title: best.title ?? titleOf(now, after) });
    now = after;
  }
}

/** What is lost with an old part is often only not put on the new one yet. */
function causesFirst(findings: readonly Finding[]): Finding[] {
  const late = ({ check }: Finding) => (check === 'thrown-away-with' ? 1 : 0);
  return [...findings].sort((a, b) => late(a) - late(b));
}

/** The new lines laid out like a file that is formatted; as they are where that changed what is wrong. */
function laidOut(trial: Trial, before: Tried, { text, left }: Mended): Tried {
  const { start, end } = changedSpan(before.text, text);
  const better = trial.check(withLineEnds(before.text, edited(text, formatRange(text, start, end))));
  return better.findings.filter(counts).length === left ? better : trial.check(text);
}

/** New lines end as the others do. */
function withLineEnds(before: string, text: string): string {
  return before.includes('\r\n') ? text.replace(/\r?\n/g, '\r\n') : text;
}

function limitFor(text: string): number {
  return Math.max(FEWEST, Math.min(LIMIT, Math.floor(MOST_READ / Math.max(1, text.length))));
}
