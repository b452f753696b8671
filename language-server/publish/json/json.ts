/**
 * Published procedures for programs: the whole document as JSON, one file each. procedure.schema.json says what may
 * stand in it; it is made from the types (`npm run -s reference`). Keys are a promise: new ones may come, none goes
 * without a new `version`.
 */
import type { ProcedureDocument } from '../document/types.ts';

/** One file. */
export interface PublishedProcedure {
  /** What kind of file it is. */
  dowel: 'procedure';
  procedure: ProcedureDocument;
}

/** Path to text, one file for each procedure: `brake-discs.json`. Procedures of one name get a number behind it. */
export function jsonFiles(documents: readonly ProcedureDocument[]): Map<string, string> {
  const files = new Map<string, string>();
  for (const procedure of documents) {
    const file: PublishedProcedure = { dowel: 'procedure', procedure };
    files.set(freePath(files, procedure.id, '.json'), `${JSON.stringify(file, undefined, 2)}\n`);
  }
  return files;
}

/** `name.ext`, or `name-2.ext` where that is taken. Names of the language are fit for files. */
export function freePath(taken: ReadonlyMap<string, unknown>, name: string, ext: string): string {
  const stem = name === '' ? 'procedure' : name;
  let path = `${stem}${ext}`;
  for (let number = 2; taken.has(path); number++) path = `${stem}-${number}${ext}`;
  return path;
}
