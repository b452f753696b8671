/**
 * Results of earlier runs, so that a file is checked again only when it, or something it uses, is another one. One text
 * file in a folder of its own, an entry a line, each with its own sum: an entry that is damaged counts as not there. It
 * is replaced in one go, so several runs at once do no harm; what the last one writes holds. Nothing here is ever
 * needed: without it everything is checked, with the same result.
 *
 * A file is known by its content. Its size, time and number on the disk save the reading where they are as before and
 * the time is older than the cache itself; a file written in the same moment as the cache is read again.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readText } from './read.ts';
import { type Failure, refusedWriting, writeText } from './replace.ts';

/** Two seconds: what the coarsest file systems in use round times to. */
const COARSE = 2_000_000_000n;

/** Goes up when the form of the entries changes. */
const FORM = 1;
/** Where these are the same, so is the rest. */
const EQUAL = ['stamp', 'hash', 'house'] as const;

interface Entry {
  path: string;
  stamp: string;
  hash: string;
  /** What the house has agreed on for it, summed up. */
  house: string;
  /** What was read for it besides: names and hashes; an empty hash: it was not there. */
  uses: [string, string][];
  result: unknown;
}

export class ResultCache {
  private readonly entries: Map<string, Entry>;
  private readonly fresh = new Map<string, Entry>();
  private readonly hashes = new Map<string, string>();
  private readonly file: string;
  private readonly key: string;
  private readonly writtenAt: bigint;

  /** Results of another version of the program are not taken. */
  constructor(folder: string, version: string) {
    this.file = join(folder, 'results');
    this.key = sum(`${FORM} ${version}`);
    const { entries, writtenAt } = entriesIn(this.file, this.key);
    this.entries = entries;
    this.writtenAt = writtenAt;
  }

  /**
   * The result of an earlier run for exactly this file, what it uses and what the house has agreed on for it; undefined
   * where there is none.
   */
  result(path: string, house: string): unknown {
    const entry = this.entries.get(path);
    if (!entry || entry.house !== sum(house) || this.hashOf(path) !== entry.hash) return undefined;
    if (entry.uses.some(([used, hash]) => this.hashOf(used) !== hash)) return undefined;
    this.fresh.set(path, { ...entry, stamp: stampOf(path) ?? '' });
    return entry.result;
  }

  /** Remembers a result together with everything that was read for it. */
  keep(path: string, house: string, uses: readonly string[], result: unknown): void {
    const stamp = stampOf(path);
    if (stamp === undefined) return;
    const used = uses.filter((one) => one !== path).map((one): [string, string] => [one, this.hashOf(one)]);
    this.fresh.set(path, { path, stamp, hash: this.hashOf(path), house: sum(house), uses: used, result });
  }

  /** Writes what this run knows, and what others know of files that this run did not look at. */
  save(): Failure | undefined {
    try {
      mkdirSync(join(this.file, '..'), { recursive: true });
    } catch (error) {
      const { reason } = refusedWriting(error as NodeJS.ErrnoException);
      return { reason, remedy: 'Name another folder with --cache.' };
    }
    const { entries } = entriesIn(this.file, this.key);
    const all = [...new Map([...entries, ...this.fresh]).values()];
    const known = (one: Entry) => {
      const before = entries.get(one.path);
      return before !== undefined && EQUAL.every((field) => before[field] === one[field]);
    };
    if (entries.size === all.length && all.every(known)) return undefined;
    const lines = all.map((entry) => {
      const text = JSON.stringify(entry);
      return `${sum(text)} ${text}`;
    });
    return writeText(this.file, `${this.key}\n${lines.join('\n')}\n`);
  }

  /** The hash of a file's content; empty where it cannot be had. */
  private hashOf(path: string): string {
    const known = this.hashes.get(path);
    if (known !== undefined) return known;
    const hash = this.unread(path) ?? readHash(path);
    this.hashes.set(path, hash);
    return hash;
  }

  /** The hash that is known without reading. */
  private unread(path: string): string | undefined {
    const entry = this.entries.get(path);
    const stamp = entry && stampOf(path);
    if (!entry || stamp === undefined || stamp !== entry.stamp) return undefined;
    const time = BigInt(stamp.split(' ')[1]!);
    return time + COARSE < this.writtenAt ? entry.hash : undefined;
  }
}

function entriesIn(file: string, key: string): { entries: Map<string, Entry>; writtenAt: bigint } {
  const entries = new Map<string, Entry>();
  let writtenAt = 0n;
  let text = '';
  try {
    text = readFileSync(file, 'utf8');
    writtenAt = statSync(file, { bigint: true }).mtimeNs;
  } catch {
    return { entries, writtenAt };
  }
  const lines = text.split('\n');
  if (lines[0] !== key) return { entries, writtenAt };
  for (const line of lines.slice(1)) {
    const entry = entryOf(line);
    if (entry) entries.set(entry.path, entry);
  }
  return { entries, writtenAt };
}

function entryOf(line: string): Entry | undefined {
  const blank = line.indexOf(' ');
  const text = line.slice(blank + 1);
  if (blank < 0 || line.slice(0, blank) !== sum(text)) return undefined;
  try {
    // Its sum is right, so this program wrote it, in this form.
    return JSON.parse(text) as Entry;
  } catch {
    return undefined;
  }
}

function readHash(path: string): string {
  const read = readText(path);
  return 'text' in read ? sum(read.text) : '';
}

/** Size, time of last change (nanoseconds) and number on the disk. */
function stampOf(path: string): string | undefined {
  const stat = statSync(path, { bigint: true, throwIfNoEntry: false });
  return stat?.isFile() ? `${stat.size} ${stat.mtimeNs} ${stat.ino}` : undefined;
}

/** SHA-256 (FIPS 180-4), the first 128 bits: no two texts share it by chance. */
function sum(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 32);
}
