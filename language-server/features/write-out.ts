/**
 * A procedure with every `reverse`, `do` and `for each` written out: the steps themselves stand where the short form
 * stood, so that it can be read, printed and changed step by step. The rest is the author's own text, comments and all.
 * Pure: text in, text out; works on half a file and leaves alone what it cannot write out.
 */
import { formatText } from '../../grammar/format/format.ts';
import type { Header, Procedure } from '../../grammar/syntax/tree.ts';
import { buildModel } from '../model/build.ts';
import type { Model } from '../model/model.ts';
import { findMachine, type LoadedFile, Loader } from '../model/names.ts';
import type { SourceHost } from '../project/project.ts';
import { type Edit, spliced } from './write-out-edits.ts';
import { StepWriter } from './write-out-steps.ts';

/**
 * The text of the file with its procedures written out, in the one layout. Undefined where the file cannot be had. It
 * checks as the file does: what a short form names is bound, positions are filled in. What a `reverse` cannot turn round
 * is told in a comment; a procedure that is printed elsewhere, or leads back to itself, stays `do`.
 */
export function writeOut(host: SourceHost, path: string): string | undefined {
  const loader = new Loader(host);
  const file = loader.load(path);
  if (!file) return undefined;
  const visible = loader.visible(file);
  const edits: Edit[] = [];
  for (const procedure of file.procedures) {
    if (!procedure.body) continue;
    const steps = new StepWriter(modelOf(procedure, visible, loader), visible, { procedure, file });
    const written = steps.edits();
    edits.push(...headersWith(procedure, file, steps.used), ...written);
  }
  return formatText(spliced(file.text, { start: 0, end: file.text.length }, edits));
}

function modelOf(procedure: Procedure, visible: readonly LoadedFile[], loader: Loader): Model | undefined {
  const header = procedure.headers.find((one) => one.header === 'for');
  const name = header?.header === 'for' ? header.refs[0]?.name.text : undefined;
  const found = name === undefined ? undefined : findMachine(visible, name);
  return found && buildModel(found.machine, found.file, loader.visible(found.file)).model;
}

/** The tools, clothing and supplies of the procedures that are written into this one, each procedure counted once. */
function headersWith(
  procedure: Procedure,
  file: LoadedFile,
  used: readonly { procedure: Procedure; file: LoadedFile }[],
): Edit[] {
  const edits: Edit[] = [];
  for (const word of ['tools', 'wear', 'supplies'] as const) {
    const own = procedure.headers.find((header) => header.header === word);
    const known = new Set(own ? entriesOf(own, file.text).map(({ name }) => name) : []);
    const more: string[] = [];
    for (const one of used) {
      const header = one.procedure.headers.find((other) => other.header === word);
      for (const { name, text } of header ? entriesOf(header, one.file.text) : []) {
        if (word !== 'supplies' && known.has(name)) continue;
        known.add(name);
        more.push(text);
      }
    }
    if (more.length === 0) continue;
    const at = own?.end ?? procedure.headers.at(-1)?.end ?? procedure.body!.start;
    const text = own ? `, ${more.join(', ')}` : `\n${word} ${more.join(', ')}\n`;
    edits.push({ start: at, end: at, text });
  }
  return edits;
}

function entriesOf(header: Header, text: string): { name: string; text: string }[] {
  const entry = (name: string, start: number, end: number) => ({ name, text: text.slice(start, end) });
  switch (header.header) {
    case 'tools':
      return header.refs.map((ref) => entry(ref.name.text, ref.start, ref.end));
    case 'wear':
      return header.names.map((name) => entry(name.text, name.start, name.end));
    case 'supplies':
      return [
        ...header.refs.map((ref) => entry(ref.name.text, ref.start, ref.end)),
        ...header.fluids.map(({ quantity, fluid }) =>
          entry(fluid?.name.text ?? '', quantity.start, fluid?.end ?? quantity.end),
        ),
      ];
    default:
      return [];
  }
}
