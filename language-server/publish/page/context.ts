/** What the parts of one page share while it is made: the document, the words, and what the page will have to hold. */
import type { ProcedureDocument, ProcedureLink, SymbolKind } from '../document/types.ts';
import { type PageWords, pageWords } from '../words/page-words.ts';
import { Conditions } from './conditions.ts';
import type { Html } from './html.ts';
import type { PictureSource } from './pictures.ts';

/** Where things of the site lie, as seen from this page; `undefined` where the site does not have them. */
export interface PageLinks {
  home?: string;
  procedure(link: Pick<ProcedureLink, 'id' | 'file'>): string | undefined;
  machine(id: string): string | undefined;
  check(name: string): string | undefined;
}

export interface PageOptions {
  pictures: PictureSource;
  links: PageLinks;
  /** Drawings that belong to the whole page, and to single steps by id; each with its own text alternative. */
  drawings?: PageDrawings;
}

export interface PageDrawings {
  /** Shown before the job: the map of the machine, the chart of stripping and rebuilding. */
  page: readonly { title: string; drawing: Html }[];
  step(id: string): readonly Html[];
}

/** A picture that could not be taken into the page. */
export interface RefusedPicture {
  file: string;
  from: string;
  line: number;
  /** Words that follow `The picture "…" `. */
  why: string;
}

export interface Context {
  readonly doc: ProcedureDocument;
  readonly words: PageWords;
  readonly options: PageOptions;
  readonly conditions: Conditions;
  /** Signs that the page refers to. */
  readonly signs: Set<SymbolKind>;
  readonly refused: RefusedPicture[];
  /** Numbers of steps and tasks by id, for links between them. */
  readonly numbers: ReadonlyMap<string, string>;
}

export function contextOf(doc: ProcedureDocument, options: PageOptions): Context {
  return {
    doc,
    words: pageWords(doc.language),
    options,
    conditions: new Conditions(doc.appliesTo.axes),
    signs: new Set(),
    refused: [],
    numbers: numbersOf(doc),
  };
}

/**
 * The anchor of a task, step or record: letters, digits, hyphens and underscores. Names have no underscores, so what is
 * written with one cannot be the anchor of another.
 */
export function anchor(id: string): string {
  return `s-${id.replace(/[^\p{Letter}\p{Number}-]/gu, (char) => (char === '.' ? '_' : `_${char.codePointAt(0)!.toString(16)}_`))}`;
}

function numbersOf(doc: ProcedureDocument): Map<string, string> {
  const numbers = new Map<string, string>();
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(visit);
    else if (typeof value === 'object' && value !== null) {
      const { id, number, kind } = value as { id?: unknown; number?: unknown; kind?: unknown };
      if (typeof id === 'string' && typeof number === 'string' && typeof kind === 'string')
        numbers.set(id, number);
      for (const part of ['items', 'ways', 'rows', 'measurement', 'otherwise'])
        visit((value as Record<string, unknown>)[part]);
    }
  };
  visit(doc.flow);
  return numbers;
}
