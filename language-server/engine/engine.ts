/**
 * Checks texts that are being edited: each edit costs what it touches. Pure: texts are put in, findings come out,
 * always those that a check of the same texts from scratch gives. A file that was not put in is asked of the host.
 *
 * Places in findings are those of the file's `LineSpace`; `plain` turns them into offsets, `positionOf` into lines.
 */
import { ProjectCheck } from '../checks/project-check.ts';
import { type LoadedFile, linkUses, loadedFile, visibleFrom } from '../model/names.ts';
import type { House, SourceHost } from '../project/project.ts';
import { type Finding, inReadingOrder, type Place } from '../report/finding.ts';
import { type CheckingWork, KeptWork } from './kept-work.ts';
import type { LinePosition } from './line-space.ts';
import { ParsedText, type ReadingWork } from './parsed-text.ts';

/** Statements gone through from which on the limits of the execution may be met: there nothing is taken over. */
const MANY_FOLLOWED = 400_000;

export interface EngineWork extends CheckingWork, ReadingWork {}

export class Engine {
  private readonly texts = new Map<string, ParsedText>();
  /** Paths that the host has no text for. */
  private readonly missing = new Set<string>();
  private readonly kept = new KeptWork();
  private readonly host: SourceHost;
  private files = new Map<string, LoadedFile>();
  /** By what holds everywhere. */
  private visibleFrom = new Map<string, Map<LoadedFile, LoadedFile[]>>();
  private readonly read: ReadingWork = { texts: 0, nodes: 0 };
  constructor(host: SourceHost) {
    this.host = host;
  }

  /** What was done since the beginning. */
  get work(): EngineWork {
    const sum = { ...this.kept.work, ...this.read };
    for (const { work } of this.texts.values()) {
      sum.texts += work.texts;
      sum.nodes += work.nodes;
    }
    return sum;
  }

  /** Puts in a text, in the place of the one that was there. */
  put(path: string, text: string): void {
    const known = this.texts.get(path);
    if (known?.text === text) return;
    if (known) known.replace(text);
    else this.texts.set(path, new ParsedText(text));
    this.changed(path);
  }

  /** Edits a text that was put in. */
  edit(path: string, start: LinePosition, end: LinePosition, text: string): void {
    const known = this.texts.get(path);
    if (!known) return;
    const before = known.parsed;
    known.edit(start, end, text);
    if (known.parsed !== before) this.changed(path);
  }

  /** Forgets a text: the host is asked for it again. */
  drop(path: string): void {
    const known = this.texts.get(path);
    if (known) {
      this.read.texts += known.work.texts;
      this.read.nodes += known.work.nodes;
    }
    this.texts.delete(path);
    this.changed(path);
  }

  has(path: string): boolean {
    return this.textAt(path) !== undefined;
  }

  text(path: string): string | undefined {
    return this.textAt(path)?.text;
  }

  /** The files that are known, whether put in or asked for. */
  get paths(): string[] {
    return [...this.texts.keys()];
  }

  /** The files that the file uses, through others too, and itself. */
  uses(path: string): string[] {
    const file = this.load(path);
    return file ? this.visible(file, this.host.houseOf?.(path)).map((one) => one.path) : [];
  }

  /** What is wrong in one file, in reading order; places are those of the files' lines. */
  check(path: string): Finding[] {
    const file = this.load(path);
    if (!file) return [];
    const house = this.host.houseOf?.(path);
    const loader = { visible: (one: LoadedFile) => this.visible(one, house) };
    const round = this.kept.for(loader.visible, [JSON.stringify(house)]);
    let checker = new ProjectCheck(loader, new Map(), house, round);
    checker.file(file);
    checker.finish();
    round.done();
    if (checker.followed > MANY_FOLLOWED) {
      checker = new ProjectCheck(loader, new Map(), house);
      checker.file(file);
      checker.finish();
    }
    return inReadingOrder(checker.findings);
  }

  /** What the text of a file shows by itself, without its meaning. */
  readingFaults(path: string): Finding[] {
    const file = this.load(path);
    if (!file) return [];
    const checker = new ProjectCheck({ visible: () => [file] }, new Map(), this.host.houseOf?.(path));
    checker.reading(file);
    return inReadingOrder(checker.findings);
  }

  /** A line of a text without its line end. */
  line(path: string, index: number): string {
    const space = this.textAt(path)?.space;
    const text = space && index >= 0 && index < space.count ? space.line(index) : '';
    let end = text.length;
    while (text[end - 1] === '\n' || text[end - 1] === '\r') end--;
    return text.slice(0, end);
  }

  positionOf(path: string, place: number): LinePosition {
    return this.textAt(path)?.space.positionAt(place) ?? { line: 0, column: 0 };
  }

  /** Findings in one text that somebody else found, by offsets, with places of its lines. */
  placed(path: string, findings: readonly Finding[]): Finding[] {
    const place = this.textAt(path)?.space.placing() ?? ((offset: number) => offset);
    const moved = <At extends Place>(at: At): At =>
      at.file === path ? { ...at, start: place(at.start), end: place(at.end) } : at;
    return findings.map((finding) => ({ ...moved(finding), related: finding.related.map(moved) }));
  }

  /** The findings with offsets in the texts. */
  plain(findings: readonly Finding[]): Finding[] {
    const offsets = new Map<string, (place: number) => number>();
    const offset = (path: string) => {
      let of = offsets.get(path);
      if (!of) {
        of = this.textAt(path)?.space.offsets() ?? ((place: number) => place);
        offsets.set(path, of);
      }
      return of;
    };
    const moved = <At extends Place>(at: At): At => {
      const of = offset(at.file);
      return { ...at, start: of(at.start), end: of(at.end) };
    };
    return findings.map((finding) => ({
      ...moved(finding),
      related: finding.related.map(moved),
      ...(finding.mends
        ? { mends: finding.mends.map((mend) => ({ ...mend, edits: mend.edits.map(moved) })) }
        : {}),
    }));
  }

  // ------------------------------------------------------------ files as they stand now

  private textAt(path: string): ParsedText | undefined {
    const known = this.texts.get(path);
    if (known || this.missing.has(path)) return known;
    const text = this.host.read(path);
    if (text === undefined) {
      this.missing.add(path);
      return undefined;
    }
    const parsed = new ParsedText(text);
    this.texts.set(path, parsed);
    return parsed;
  }

  private changed(path: string): void {
    this.missing.delete(path);
    // What uses what is worked out again when it is asked for: that costs little, and nothing can be stale.
    this.files = new Map();
    this.visibleFrom = new Map();
  }

  private load(path: string): LoadedFile | undefined {
    const known = this.files.get(path);
    if (known) return known;
    const text = this.textAt(path);
    if (!text) return undefined;
    const file = loadedFile({
      path,
      // Only the tree and what it was written as are asked for.
      get text() {
        return text.text;
      },
      written: text.space,
      parsed: text.parsed,
    });
    this.files.set(path, file);
    linkUses(file, { resolve: (from, target) => this.host.resolve(from, target) }, (target) =>
      this.load(target),
    );
    return file;
  }

  private visible(file: LoadedFile, house: House | undefined): LoadedFile[] {
    const everywhere = house?.ruleFiles ?? [];
    const key = everywhere.join('\n');
    const known = this.visibleFrom.get(key) ?? new Map<LoadedFile, LoadedFile[]>();
    this.visibleFrom.set(key, known);
    let result = known.get(file);
    if (!result) {
      result = visibleFrom(
        file,
        everywhere.flatMap((path) => this.load(path) ?? []),
      );
      known.set(file, result);
    }
    return result;
  }
}
